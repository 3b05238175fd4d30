package org.pailbook.lactation.curve;

import org.pailbook.lactation.internal.Link;
import org.pailbook.lactation.internal.LinkedLeastSquares;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Wood's curve fitted by least squares on the milk weights themselves.
 *
 * <p>Start values are the log-linear fit weighted by the squared weights, then Newton steps on {@code (ln a, b, c)} to the last
 * digits. Parameters are not held inside any range: a lactation that falls from the first test on gets its {@code b < 0}, and
 * {@link CurveFit} says that the curve is atypical. Fits on logarithms ({@link WoodLogLinearModel}) differ a lot when late yields
 * are small.
 *
 * @see WoodCurve
 */
public final class WoodModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Wood, P. D. P.", 1967, "Nature 216:164-165", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    /** The rise of a usual curve, from which the second start is made. Ours. */
    private static final double USUAL_B = 0.2;

    WoodModel() {
        super("wood-1967", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        int tests = daysInMilk.length;
        double[] columns = columns(daysInMilk);
        LinkedLeastSquares solver = new LinkedLeastSquares(Link.EXPONENTIAL, columns, milkKg);
        double[] theta = new double[PARAMETERS];
        boolean found = solver.startFromData(theta) && solver.minimize(theta);
        if (!found) {
            found = startFromPeak(daysInMilk, milkKg, theta) && solver.minimize(theta);
        }
        if (!found) {
            return CurveEstimate.notEstimable(this, "no minimum of the squared residuals");
        }
        return withSpread(new WoodCurve(Math.exp(theta[0]), theta[1], theta[2]), columns, milkKg);
    }

    /**
     * Residuals and derivatives at the tests from the logarithms already taken. The plain form asks the curve for its milk and
     * its gradient on each day; this one makes the whole fit a fifth faster (CurveFitBenchmark).
     */
    private CurveEstimate withSpread(WoodCurve curve, double[] columns, double[] milkKg) {
        int tests = milkKg.length;
        double[] design = new double[PARAMETERS * tests];
        double[] residuals = new double[tests];
        for (int i = 0; i < tests; i++) {
            double log = columns[PARAMETERS * i + 1];
            double minusDay = columns[PARAMETERS * i + 2];
            double perA = Math.exp(curve.b() * log + curve.c() * minusDay);
            double milk = curve.a() * perA;
            design[i] = perA;
            design[tests + i] = milk * log;
            design[2 * tests + i] = milk * minusDay;
            residuals[i] = milkKg[i] - milk;
        }
        return CurveEstimate.ofDesign(this, curve, design, residuals);
    }

    /** {@code ln y = ln a + b ln t - c t}: the columns of {@code (ln a, b, c)}. */
    static double[] columns(double[] daysInMilk) {
        double[] columns = new double[PARAMETERS * daysInMilk.length];
        for (int i = 0; i < daysInMilk.length; i++) {
            columns[PARAMETERS * i] = 1;
            columns[PARAMETERS * i + 1] = Math.log(daysInMilk[i]);
            columns[PARAMETERS * i + 2] = -daysInMilk[i];
        }
        return columns;
    }

    /** A usual curve with its peak at the highest test. */
    private static boolean startFromPeak(double[] daysInMilk, double[] milkKg, double[] theta) {
        int highest = 0;
        for (int i = 1; i < milkKg.length; i++) {
            if (milkKg[i] > milkKg[highest]) {
                highest = i;
            }
        }
        double peakDay = daysInMilk[highest];
        theta[1] = USUAL_B;
        theta[2] = USUAL_B / peakDay;
        theta[0] = Math.log(milkKg[highest]) - USUAL_B * Math.log(peakDay) + USUAL_B;
        return milkKg[highest] > 0;
    }
}
