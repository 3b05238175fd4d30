package org.pailbook.lactation.curve;

import org.pailbook.lactation.internal.LinearLeastSquares;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Wood's curve fitted by straight regression of {@code ln y} on {@code ln t} and {@code t}, as the paper did by hand.
 *
 * <p>It minimises squared errors of logarithms, so small yields weigh as much as large ones and the peak comes out other than
 * with {@link WoodModel}. Residuals, their spread and the criteria are given in kg all the same, so that the two can be compared;
 * standard errors are those of the regression on logarithms.
 *
 * @see WoodCurve
 */
public final class WoodLogLinearModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Wood, P. D. P.", 1967, "Nature 216:164-165", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    WoodLogLinearModel() {
        super("wood-log-linear-1967", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        int tests = daysInMilk.length;
        double[] design = new double[PARAMETERS * tests];
        double[] logKg = new double[tests];
        for (int i = 0; i < tests; i++) {
            if (!(milkKg[i] > 0)) {
                return CurveEstimate.notEstimable(this, milkKg[i] + " kg, which has no logarithm");
            }
            design[i] = 1;
            design[tests + i] = Math.log(daysInMilk[i]);
            design[2 * tests + i] = -daysInMilk[i];
            logKg[i] = Math.log(milkKg[i]);
        }
        LinearLeastSquares solution = LinearLeastSquares.solve(design, PARAMETERS, logKg);
        if (solution.isSingular()) {
            return CurveEstimate.notEstimable(this, "singular normal equations");
        }
        double a = Math.exp(solution.coefficient(0));
        WoodCurve curve = new WoodCurve(a, solution.coefficient(1), solution.coefficient(2));
        double[] logResiduals = new double[tests];
        for (int i = 0; i < tests; i++) {
            logResiduals[i] = logKg[i] - Math.log(curve.milkKgPerDay(daysInMilk[i]));
        }
        // a = exp(ln a), so its standard error is a times that of ln a
        return CurveEstimate.ofTransformed(
                this, curve, daysInMilk, milkKg, solution, logResiduals, new double[] {a, 1, 1});
    }
}
