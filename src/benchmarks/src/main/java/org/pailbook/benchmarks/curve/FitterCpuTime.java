package org.pailbook.benchmarks.curve;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.IntFunction;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.pailbook.lactation.curve.CurveParameter;
import org.pailbook.lactation.curve.LactationCurves;

/**
 * Wood fits a second of processor time, ours and Commons Math's in turn. Processor time of the thread and not of the clock, so
 * that a busy machine disturbs the ratio little; {@link CurveFitBenchmark} is the same by the clock.
 */
public final class FitterCpuTime {
    private static final int ROUNDS = 12;
    private static final int WARM_UP_ROUNDS = 4;
    private static final int FITS = 1000 * WoodSeries.COWS;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /** Keeps the results alive for the compiler. */
    private static volatile Object sink;

    private FitterCpuTime() {}

    /**
     * Prints a line for each fitter: name, fits a second (median of the rounds), and for ours the sum of all residual squares.
     */
    public static void main(String[] args) {
        new CurveFitBenchmark().answersMustAgree();
        WoodSeries series = new WoodSeries();
        double[][] start = new double[WoodSeries.COWS][];
        for (int i = 0; i < start.length; i++) {
            start[i] =
                    LactationCurves.WOOD_LOG_LINEAR
                            .estimate(series.daysInMilk[i], series.milkKg[i])
                            .parameters()
                            .stream()
                            .mapToDouble(CurveParameter::value)
                            .toArray();
        }
        double[][] rates = new double[3][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            rates[0][round] = fitsPerSecond(i -> LactationCurves.WOOD.estimate(series.daysInMilk[i], series.milkKg[i]));
            rates[1][round] = fitsPerSecond(commonsMath(CommonsMathWood.TIGHT, series, start));
            rates[2][round] = fitsPerSecond(commonsMath(CommonsMathWood.AS_IT_COMES, series, start));
        }
        print("ours", rates[0], String.format(Locale.ROOT, "%.9f", series.sumOfResidualSquares()));
        print("Commons-Math-3.6.1-LM-1e-13", rates[1], "-");
        print("Commons-Math-3.6.1-LM-1e-10", rates[2], "-");
    }

    private static IntFunction<Object> commonsMath(
            LevenbergMarquardtOptimizer optimizer, WoodSeries series, double[][] start) {
        return i -> CommonsMathWood.fit(optimizer, series.daysInMilk[i], series.milkKg[i], start[i]);
    }

    private static double fitsPerSecond(IntFunction<Object> fit) {
        long before = THREADS.getCurrentThreadCpuTime();
        for (int i = 0; i < FITS; i++) {
            sink = fit.apply(i % WoodSeries.COWS);
        }
        return FITS * 1e9 / (THREADS.getCurrentThreadCpuTime() - before);
    }

    private static void print(String name, double[] rates, String rss) {
        double[] warm = Arrays.copyOfRange(rates, WARM_UP_ROUNDS, rates.length);
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT, "%s %.0f %s%n", name, warm[warm.length / 2], rss);
    }
}
