package org.pailbook.benchmarks.curve;

import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * The peer: Commons Math 3.6.1, Levenberg and Marquardt with exact derivatives, as its guide shows it; arrays are handed over
 * without copies.
 */
final class CommonsMathWood {
    /** Its own tolerances, 1e-10. */
    static final LevenbergMarquardtOptimizer AS_IT_COMES = new LevenbergMarquardtOptimizer();

    /**
     * Tolerances at which the fitted milk agrees with ours to 1e-8. Tighter ones only take longer: it stops at the rounding of
     * the cost.
     */
    static final LevenbergMarquardtOptimizer TIGHT =
            new LevenbergMarquardtOptimizer().withCostRelativeTolerance(1e-13).withParameterRelativeTolerance(1e-13);

    private CommonsMathWood() {}

    /** @return a, b, c */
    static double[] fit(LevenbergMarquardtOptimizer optimizer, double[] daysInMilk, double[] milkKg, double[] start) {
        return optimizer.optimize(problem(daysInMilk, milkKg, start)).getPoint().toArray();
    }

    private static LeastSquaresProblem problem(double[] daysInMilk, double[] milkKg, double[] start) {
        MultivariateJacobianFunction wood = point -> values(point, daysInMilk);
        return new LeastSquaresBuilder()
                .start(start)
                .target(milkKg)
                .model(wood)
                .lazyEvaluation(false)
                .maxEvaluations(1000)
                .maxIterations(1000)
                .build();
    }

    private static Pair<RealVector, RealMatrix> values(RealVector point, double[] daysInMilk) {
        double a = point.getEntry(0);
        double b = point.getEntry(1);
        double c = point.getEntry(2);
        double[] milk = new double[daysInMilk.length];
        double[][] jacobian = new double[daysInMilk.length][3];
        for (int i = 0; i < milk.length; i++) {
            double log = Math.log(daysInMilk[i]);
            double perA = Math.exp(b * log - c * daysInMilk[i]);
            milk[i] = a * perA;
            jacobian[i][0] = perA;
            jacobian[i][1] = milk[i] * log;
            jacobian[i][2] = -milk[i] * daysInMilk[i];
        }
        return new Pair<>(new ArrayRealVector(milk, false), new Array2DRowRealMatrix(jacobian, false));
    }
}
