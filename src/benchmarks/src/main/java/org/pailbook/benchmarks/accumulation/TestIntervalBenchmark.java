package org.pailbook.benchmarks.accumulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
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
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * The test interval method on ten tests a lactation: the bare sum, the peer's piecewise linear function integrated piece by piece, and the whole
 * explained figure with milk, fat and protein. Lactations a second, one thread. Answers of all three are compared before anything is timed.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class TestIntervalBenchmark {
    private static final int COWS = 256;
    private static final int TESTS = 10;
    private static final long SEED = 1968;
    private static final double AGREEMENT = 1e-12;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);
    private static final LocalDate AS_OF = CALVING.plusDays(300);

    private final double[][] daysInMilk = new double[COWS][TESTS];
    private final double[][] milkKg = new double[COWS][TESTS];
    private final Lactation[] lactations = new Lactation[COWS];
    private int cow;

    @Setup
    public void answersMustAgree() {
        Random random = new Random(SEED);
        for (int i = 0; i < COWS; i++) {
            List<TestDay> tests = new ArrayList<>();
            for (int k = 0; k < TESTS; k++) {
                daysInMilk[i][k] = 10 + 29 * k + random.nextInt(9);
                milkKg[i][k] = 10 + 30 * random.nextDouble();
                tests.add(TestDay.ofMilk(CALVING.plusDays((long) daysInMilk[i][k]), milkKg[i][k])
                        .withFatPct(3.5 + random.nextDouble())
                        .withProteinPct(3 + random.nextDouble()));
            }
            lactations[i] = Lactation.inMilk(2, CALVING, tests);
            double ours = sum(i);
            require(i, ours, byCommonsMath(i));
            require(i, ours, figures(i).milk().orThrow());
        }
    }

    private static void require(int cow, double ours, double other) {
        if (!(Math.abs(ours - other) <= AGREEMENT * ours)) {
            throw new IllegalStateException("cow " + cow + ": " + ours + " and " + other);
        }
    }

    private int next() {
        cow = cow + 1 == COWS ? 0 : cow + 1;
        return cow;
    }

    private double sum(int i) {
        return TestIntervalMethod.sumKg(daysInMilk[i], milkKg[i], TESTS, daysInMilk[i][TESTS - 1]);
    }

    /** Straight lines by the peer, each integrated exactly, and the flat days before the first test. */
    private double byCommonsMath(int i) {
        PolynomialSplineFunction lines = new LinearInterpolator().interpolate(daysInMilk[i], milkKg[i]);
        double[] knots = lines.getKnots();
        PolynomialFunction[] pieces = lines.getPolynomials();
        double sum = knots[0] * milkKg[i][0];
        for (int k = 0; k < pieces.length; k++) {
            double width = knots[k + 1] - knots[k];
            double[] coefficients = pieces[k].getCoefficients();
            double slope = coefficients.length > 1 ? coefficients[1] : 0;
            sum += width * (coefficients[0] + slope * width / 2);
        }
        return sum;
    }

    private AccumulatedYield figures(int i) {
        return TestIntervalMethod.STANDARD_305.accumulate(lactations[i], AS_OF);
    }

    @Benchmark
    public double bareSum() {
        return sum(next());
    }

    @Benchmark
    public double byCommonsMath() {
        return byCommonsMath(next());
    }

    @Benchmark
    public AccumulatedYield explainedFigures() {
        return figures(next());
    }
}
