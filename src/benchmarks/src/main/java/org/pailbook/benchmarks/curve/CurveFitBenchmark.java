package org.pailbook.benchmarks.curve;

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
import org.pailbook.lactation.curve.CurveEstimate;
import org.pailbook.lactation.curve.CurveParameter;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.curve.WoodCurve;

/**
 * Wood's curve on ten tests: our fit, with standard errors and leverages, against the bare parameters by Commons Math. Fits a
 * second, one thread.
 *
 * <p>Commons Math is given its start values for nothing in two lines (the answer of the log-linear fit, made beforehand) and
 * usual values in the third. Before anything is timed the answers must agree for every cow: the fitted milk of each test to 1e-8,
 * the parameters to 1e-7, relative. The rest is Commons Math's: it judges by the sum of squares alone, which no longer changes in
 * its last digit from there on.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class CurveFitBenchmark {
    private static final double MILK_AGREEMENT = 1e-8;
    private static final double PARAMETER_AGREEMENT = 1e-7;
    private static final double[] USUAL = {16, 0.2, 0.0035};

    private final WoodSeries series = new WoodSeries();
    private final double[][] logLinear = new double[WoodSeries.COWS][];
    private int cow;

    @Setup
    public void answersMustAgree() {
        for (int i = 0; i < WoodSeries.COWS; i++) {
            double[] days = series.daysInMilk[i];
            double[] kg = series.milkKg[i];
            logLinear[i] = parameters(LactationCurves.WOOD_LOG_LINEAR.estimate(days, kg));
            double[] ours = parameters(LactationCurves.WOOD.estimate(days, kg));
            requireEqual(i, ours, CommonsMathWood.fit(CommonsMathWood.TIGHT, days, kg, logLinear[i]));
            requireEqual(i, ours, CommonsMathWood.fit(CommonsMathWood.TIGHT, days, kg, USUAL));
        }
    }

    private static double[] parameters(CurveEstimate fit) {
        return fit.parameters().stream().mapToDouble(CurveParameter::value).toArray();
    }

    private void requireEqual(int cow, double[] ours, double[] theirs) {
        for (int k = 0; k < ours.length; k++) {
            requireClose(cow, "parameter " + k, ours[k], theirs[k], PARAMETER_AGREEMENT);
        }
        WoodCurve curve = new WoodCurve(ours[0], ours[1], ours[2]);
        WoodCurve peer = new WoodCurve(theirs[0], theirs[1], theirs[2]);
        for (double day : series.daysInMilk[cow]) {
            requireClose(cow, "day " + day, curve.milkKgPerDay(day), peer.milkKgPerDay(day), MILK_AGREEMENT);
        }
    }

    private static void requireClose(int cow, String what, double ours, double theirs, double relative) {
        if (!(Math.abs(ours - theirs) <= relative * Math.abs(ours))) {
            throw new IllegalStateException("cow " + cow + " " + what + ": ours " + ours + ", Commons Math " + theirs);
        }
    }

    private int next() {
        cow = cow + 1 == WoodSeries.COWS ? 0 : cow + 1;
        return cow;
    }

    @Benchmark
    public CurveEstimate wood() {
        int i = next();
        return LactationCurves.WOOD.estimate(series.daysInMilk[i], series.milkKg[i]);
    }

    @Benchmark
    public double[] woodByCommonsMathFromGivenStart() {
        int i = next();
        return CommonsMathWood.fit(CommonsMathWood.TIGHT, series.daysInMilk[i], series.milkKg[i], logLinear[i]);
    }

    @Benchmark
    public double[] woodByCommonsMathAsItComes() {
        int i = next();
        return CommonsMathWood.fit(CommonsMathWood.AS_IT_COMES, series.daysInMilk[i], series.milkKg[i], logLinear[i]);
    }

    @Benchmark
    public double[] woodByCommonsMathFromUsualValues() {
        int i = next();
        return CommonsMathWood.fit(CommonsMathWood.TIGHT, series.daysInMilk[i], series.milkKg[i], USUAL);
    }

    @Benchmark
    public CurveEstimate wilmink() {
        int i = next();
        return LactationCurves.WILMINK.estimate(series.daysInMilk[i], series.milkKg[i]);
    }

    @Benchmark
    public CurveEstimate dijkstra() {
        int i = next();
        return LactationCurves.DIJKSTRA.estimate(series.daysInMilk[i], series.milkKg[i]);
    }
}
