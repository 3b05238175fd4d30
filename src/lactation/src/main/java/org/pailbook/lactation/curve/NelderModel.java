package org.pailbook.lactation.curve;

import java.util.Arrays;
import org.pailbook.lactation.internal.Link;
import org.pailbook.lactation.internal.LinkedLeastSquares;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Nelder's inverse polynomial fitted by least squares on the milk weights.
 *
 * <p>{@code 1 / y} is linear in the parameters. Start values are the regression of {@code t / y} on {@code (1, t, t^2)} with
 * weights {@code y^4 / t^2}, then Newton steps. Refused when the denominator falls to zero between the first and the last test.
 *
 * @see NelderCurve
 */
public final class NelderModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Nelder, J. A.", 1966, "Biometrics 22:128-141", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    NelderModel() {
        super("nelder-1966", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        int tests = daysInMilk.length;
        double[] columns = new double[PARAMETERS * tests];
        for (int i = 0; i < tests; i++) {
            columns[PARAMETERS * i] = 1 / daysInMilk[i];
            columns[PARAMETERS * i + 1] = 1;
            columns[PARAMETERS * i + 2] = daysInMilk[i];
        }
        LinkedLeastSquares solver = new LinkedLeastSquares(Link.RECIPROCAL, columns, milkKg);
        double[] theta = new double[PARAMETERS];
        boolean found = solver.startFromData(theta) && solver.minimize(theta);
        if (!found) {
            // level milk: always above zero, so always a place to start from
            double meanKg = Arrays.stream(milkKg).average().orElseThrow();
            theta[0] = 0;
            theta[1] = 1 / meanKg;
            theta[2] = 0;
            found = meanKg > 0 && solver.minimize(theta);
        }
        if (!found) {
            return CurveEstimate.notEstimable(this, "no minimum of the squared residuals");
        }
        NelderCurve curve = new NelderCurve(theta[0], theta[1], theta[2]);
        double first = Arrays.stream(daysInMilk).min().orElseThrow();
        double last = Arrays.stream(daysInMilk).max().orElseThrow();
        return curve.isFiniteBetween(first, last)
                ? CurveEstimate.ofMinimum(this, curve, daysInMilk, milkKg)
                : CurveEstimate.notEstimable(this, "a pole between the tests");
    }
}
