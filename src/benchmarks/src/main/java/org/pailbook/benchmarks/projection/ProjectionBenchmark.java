package org.pailbook.benchmarks.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * Best prediction from ten tests, lactations a second, one thread: from recorded test days to the 305-day milk with its standard error; the same as
 * an explained figure; milk, fat, protein and score as figures. The peer solves the tests' covariances with Commons Math's Cholesky, given the covariances
 * of each test with the total ready made. Answers are compared before anything is timed.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class ProjectionBenchmark {
    private static final int COWS = 256;
    private static final int TESTS = 10;
    private static final int DAYS = 305;
    private static final long SEED = 1997;
    private static final double AGREEMENT = 1e-10;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);
    private static final LocalDate AS_OF = CALVING.plusDays(310);

    private final BestPrediction method = new BestPrediction();
    private final LactationStandard milk = LactationStandards.refinedForCow("HOL", 2, LactationTrait.MILK);
    private final TraitStandards traits = LactationStandards.refinedTraitsForCow("HOL", 2);
    private final List<Lactation> lactations = new ArrayList<>();
    private int cow;

    @Setup
    public void answersMustAgree() {
        Random random = new Random(SEED);
        for (int i = 0; i < COWS; i++) {
            List<TestDay> tests = new ArrayList<>();
            for (int k = 0; k < TESTS; k++) {
                tests.add(
                        TestDay.ofMilk(CALVING.plusDays(8 + 29 * k + random.nextInt(20)), 15 + 25 * random.nextDouble())
                                .withFatPct(3.5 + random.nextDouble())
                                .withProteinPct(3 + random.nextDouble())
                                .withSccThousandPerMl(20 + 300 * random.nextDouble()));
            }
            lactations.add(Lactation.inMilk(2, CALVING, tests));
            double ours = method.project(lactations.get(i), milk, AS_OF).milk305Kg();
            double peer = byCommonsMath(lactations.get(i));
            if (!(Math.abs(ours - peer) <= AGREEMENT * ours)) {
                throw new IllegalStateException("cow " + i + ": " + ours + " and " + peer);
            }
        }
    }

    private Lactation next() {
        cow = cow + 1 == COWS ? 0 : cow + 1;
        return lactations.get(cow);
    }

    private double byCommonsMath(Lactation lactation) {
        DailySpread spread = milk.spread();
        RealMatrix v = new Array2DRowRealMatrix(TESTS, TESTS);
        RealVector c = new ArrayRealVector(TESTS);
        RealVector d = new ArrayRealVector(TESTS);
        for (int i = 0; i < TESTS; i++) {
            TestDay test = lactation.testDays().get(i);
            int day = lactation.daysInMilk(test.date());
            d.setEntry(i, test.milkKg().orElseThrow() - milk.meanKg(day));
            c.setEntry(i, spread.covarianceWithTotal(day, DAYS));
            for (int j = 0; j < TESTS; j++) {
                int other = lactation.daysInMilk(lactation.testDays().get(j).date());
                v.setEntry(i, j, spread.covariance(day, other));
            }
        }
        RealVector w = new CholeskyDecomposition(v, 1e-12, 1e-12).getSolver().solve(c);
        double variance = spread.varianceOfTotal(DAYS) - w.dotProduct(c);
        return variance < 0 ? Double.NaN : milk.meanTotalKg(DAYS) + w.dotProduct(d);
    }

    @Benchmark
    public double milkWithStandardError() {
        Projection305 projection = method.project(next(), milk, AS_OF);
        return projection.milk305Kg() + projection.standardErrorKg();
    }

    @Benchmark
    public double byCommonsMath() {
        return byCommonsMath(next());
    }

    @Benchmark
    public Object milkAsExplainedFigure() {
        return method.project(next(), milk, AS_OF).milk305();
    }

    /** Milk with its standard error, reliabilities of fat and protein from all that was measured; the score is made ready. */
    @Benchmark
    public double fourTraits() {
        Projection305 projection = method.project(next(), traits, AS_OF);
        return projection.milk305Kg()
                + projection.standardErrorKg()
                + projection.reliabilityShare(LactationTrait.FAT).orElseThrow()
                + projection.reliabilityShare(LactationTrait.PROTEIN).orElseThrow();
    }

    @Benchmark
    public Object fourTraitsAsExplainedFigures() {
        Projection305 projection = method.project(next(), traits, AS_OF);
        return List.of(projection.milk305(), projection.fat305(), projection.protein305(), projection.cellScore305());
    }
}
