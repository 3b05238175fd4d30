package org.pailbook.lactation.curve;

import java.util.function.Function;
import org.pailbook.lactation.internal.LinearLeastSquares;

/** Fits curves that are linear in their parameters: one exact solution, no start values. */
final class LinearFit {
    private LinearFit() {}

    /**
     * @param anyCurve a curve of that kind; being linear, its gradient is the design whatever its parameters are
     * @param curveOf makes the curve from its coefficients
     */
    static CurveEstimate estimate(
            LeastSquaresModel model,
            double[] daysInMilk,
            double[] milkKg,
            LactationCurve anyCurve,
            Function<double[], LactationCurve> curveOf) {
        int tests = daysInMilk.length;
        int parameters = model.parameterCount();
        double[] design = new double[tests * parameters];
        for (int i = 0; i < tests; i++) {
            double[] row = anyCurve.gradient(daysInMilk[i]);
            for (int k = 0; k < parameters; k++) {
                design[k * tests + i] = row[k];
            }
        }
        LinearLeastSquares solution = LinearLeastSquares.solve(design, parameters, milkKg);
        return solution.isSingular()
                ? CurveEstimate.notEstimable(model, "singular normal equations")
                : CurveEstimate.ofSolution(model, curveOf.apply(solution.coefficients()), daysInMilk, milkKg, solution);
    }
}
