package org.pailbook.benchmarks.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
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
import org.openjdk.jmh.infra.Blackhole;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * Best prediction of ten monthly tests. Projections a second, one thread: milk with its standard error; milk as the figure with both intervals, parts and
 * findings; milk, fat, protein and cell score with the figures of all four.
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
    private static final long SEED = 1997;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);
    private static final LocalDate AS_OF = CALVING.plusDays(310);

    private final Lactation[] lactations = new Lactation[COWS];
    private final BestPrediction method = HerdKnowledge.none().method();
    private final LactationStandard milk = LactationStandards.refinedForCow("HOL", 2, LactationTrait.MILK);
    private final TraitStandards fourTraits = LactationStandards.refinedTraitsForCow("HOL", 2);
    private int cow;

    @Setup
    public void makeCows() {
        Random random = new Random(SEED);
        for (int i = 0; i < COWS; i++) {
            List<TestDay> tests = new ArrayList<>();
            for (int k = 0; k < TESTS; k++) {
                tests.add(
                        TestDay.ofMilk(CALVING.plusDays(10 + 29 * k + random.nextInt(9)), 10 + 30 * random.nextDouble())
                                .withFatPct(3.5 + random.nextDouble())
                                .withProteinPct(3 + random.nextDouble())
                                .withSccThousandPerMl(20 + random.nextInt(300)));
            }
            lactations[i] = Lactation.inMilk(2, CALVING, tests);
        }
        Projection305 all = method.project(lactations[0], fourTraits, AS_OF);
        Projection305 one = method.project(lactations[0], milk, AS_OF);
        if (!(Math.abs(all.milk305Kg() - one.milk305Kg()) < 1e-6)) {
            throw new IllegalStateException(all.milk305Kg() + " and " + one.milk305Kg());
        }
    }

    private Lactation next() {
        cow = cow + 1 == COWS ? 0 : cow + 1;
        return lactations[cow];
    }

    /** 305-day milk and the standard error both intervals are multiples of. */
    @Benchmark
    public double milkWithStandardError() {
        Projection305 projection = method.project(next(), milk, AS_OF);
        return projection.milk305Kg() + projection.standardErrorKg();
    }

    @Benchmark
    public Figure milkAsExplainedFigure() {
        return method.project(next(), milk, AS_OF).milk305();
    }

    /** Totals of three yields and the milk's standard error; the cell score's weights too. */
    @Benchmark
    public double fourTraits() {
        Projection305 projection = method.project(next(), fourTraits, AS_OF);
        return projection.milk305Kg()
                + projection.standardErrorKg()
                + projection.reliabilityShare(LactationTrait.FAT).orElseThrow()
                + projection.reliabilityShare(LactationTrait.PROTEIN).orElseThrow();
    }

    @Benchmark
    public void fourTraitsAsExplainedFigures(Blackhole hole) {
        Projection305 projection = method.project(next(), fourTraits, AS_OF);
        hole.consume(projection.milk305());
        hole.consume(projection.fat305());
        hole.consume(projection.protein305());
        hole.consume(projection.cellScore305());
    }
}
