package org.pailbook.benchmarks.curve;

import java.util.Locale;
import java.util.Random;
import org.pailbook.lactation.curve.LactationCurves;

/**
 * Invented lactations of ten monthly tests: a Wood curve of its own for each cow, and noise of 1.2 kg. Usual parameters, fixed
 * seed.
 */
public final class WoodSeries {
    static final int COWS = 64;
    static final int TESTS = 10;
    private static final long SEED = 1967;
    private static final double NOISE_KG = 1.2;

    final double[][] daysInMilk = new double[COWS][TESTS];
    final double[][] milkKg = new double[COWS][TESTS];

    WoodSeries() {
        Random random = new Random(SEED);
        for (int cow = 0; cow < COWS; cow++) {
            double a = 13 + 9 * random.nextDouble();
            double b = 0.15 + 0.10 * random.nextDouble();
            double c = 0.0025 + 0.0025 * random.nextDouble();
            for (int i = 0; i < TESTS; i++) {
                double day = 5 + random.nextInt(25) + 30 * i;
                double kg = a * Math.exp(b * Math.log(day) - c * day) + NOISE_KG * random.nextGaussian();
                daysInMilk[cow][i] = day;
                milkKg[cow][i] = Math.round(10 * kg) / 10.0;
            }
        }
    }

    /** Prints {@code cow,day,kg}, so that other programs can be timed on the same points. */
    public static void main(String[] args) {
        WoodSeries series = new WoodSeries();
        StringBuilder text = new StringBuilder("cow,day,kg\n");
        for (int cow = 0; cow < COWS; cow++) {
            for (int i = 0; i < TESTS; i++) {
                text.append(String.format(
                        Locale.ROOT, "%d,%.0f,%.1f%n", cow, series.daysInMilk[cow][i], series.milkKg[cow][i]));
            }
        }
        System.out.print(text);
    }

    /** Over all cows, by our fit, kg squared: other programs should come to the same. */
    double sumOfResidualSquares() {
        double sum = 0;
        for (int cow = 0; cow < COWS; cow++) {
            sum += LactationCurves.WOOD
                    .estimate(daysInMilk[cow], milkKg[cow])
                    .rssKg2()
                    .orElseThrow();
        }
        return sum;
    }
}
