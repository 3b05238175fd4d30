package org.pailbook.lactation.internal;

import java.util.Objects;

/**
 * Least squares for {@code y ~ link(theta0 z0 + theta1 z1 + theta2 z2)}: three coefficients behind a link, errors in {@code y}
 * itself.
 *
 * <p>Because the coefficients stand in one linear part, the exact second derivatives cost nothing more than the Gauss-Newton
 * matrix: both are sums of {@code z z'} with other weights. So every step is Newton's on closed 3 x 3 normal equations, and
 * Marquardt's damped Gauss-Newton where the curvature is not positive or the step does not help. One pass over the points a step,
 * no allocation.
 *
 * @see "Marquardt, D. W. (1963). J. Soc. Ind. Appl. Math. 11:431-441 (from memory)"
 */
public final class LinkedLeastSquares {
    /** Columns of the linear part. */
    public static final int COLUMNS = 3;

    private static final int MOST_STEPS = 200;

    /**
     * Squared change of the fitted values relative to the squared data at which a Newton step is the last one. Newton's error is
     * squared by each step, so what is left after a step of 1e-8 lies at the level of rounding.
     */
    private static final double LAST_MOVE_SQUARED = 1e-16;

    /** Below this, rounding decides which of two sums of squares is smaller; Newton's step is then the better judge. */
    private static final double ROUNDING_MOVE_SQUARED = 1e-14;

    private static final double FIRST_DAMPING = 1e-4;
    private static final double MOST_DAMPING = 1e14;

    private final Link link;
    private final double[] columns;
    private final double[] y;
    private final double sumOfSquaredY;
    private final double[] step = new double[COLUMNS];
    private Equations current = new Equations();
    private Equations trial = new Equations();

    /**
     * @param columns row after row: {@code columns[3 i + k]} is column {@code k} of point {@code i}; kept, not copied, so that a caller who
     *     profiles over a fourth coefficient may change a column and fit again
     * @param y one value a point; kept, not copied
     */
    public LinkedLeastSquares(Link link, double[] columns, double[] y) {
        this.link = Objects.requireNonNull(link, "link");
        if (columns.length != COLUMNS * y.length) {
            throw new IllegalArgumentException("columns (" + columns.length + ") must have " + COLUMNS
                    + " entries for each of " + y.length + " points");
        }
        this.columns = columns;
        this.y = y;
        double sum = 0;
        for (double value : y) {
            sum += value * value;
        }
        this.sumOfSquaredY = sum;
    }

    /**
     * Start values from the data: linear regression of {@code link^-1(y)} on the columns, weighted so that it is one Gauss-Newton
     * step from a fit through every point ({@code y^2} for the exponential, {@code y^4} for the reciprocal). Points not above
     * zero are passed over.
     *
     * @param theta overwritten
     * @return false if these points do not determine the coefficients
     */
    public boolean startFromData(double[] theta) {
        current.clear();
        for (int i = 0; i < y.length; i++) {
            if (y[i] > 0) {
                double slope = link.slope(y[i]);
                current.add(slope * slope, slope * slope, slope * slope * link.etaOf(y[i]), columns, COLUMNS * i);
            }
        }
        return current.solveNewton(theta) && Double.isFinite(theta[0] + theta[1] + theta[2]);
    }

    /**
     * Goes downhill from {@code theta} to a minimum of the sum of squares.
     *
     * @param theta start values in, the minimum out
     * @return false if there was no minimum to be found; {@code theta} is then where the search stopped
     */
    public boolean minimize(double[] theta) {
        evaluate(theta[0], theta[1], theta[2], current);
        if (!Double.isFinite(current.rss)) {
            return false;
        }
        for (int count = 0; count < MOST_STEPS; count++) {
            double moveSquared = takeStep(theta);
            if (moveSquared < 0) {
                return false;
            }
            if (moveSquared <= LAST_MOVE_SQUARED) {
                return true;
            }
        }
        return false;
    }

    /** Sum of squared residuals where the last {@link #minimize} ended. */
    public double rss() {
        return current.rss;
    }

    /** @return squared move by a Newton step, infinity after a damped one (never the last), -1 if no step goes downhill */
    private double takeStep(double[] theta) {
        if (current.solveNewton(step)) {
            double moveSquared = current.decrement(step) / sumOfSquaredY;
            tryStep(theta);
            boolean settled = moveSquared <= ROUNDING_MOVE_SQUARED && Double.isFinite(trial.rss);
            if (settled || trial.rss < current.rss) {
                accept(theta);
                return moveSquared;
            }
        }
        for (double damping = FIRST_DAMPING;
                damping < MOST_DAMPING && current.solveDamped(damping, step);
                damping *= 10) {
            tryStep(theta);
            if (trial.rss < current.rss) {
                accept(theta);
                return Double.POSITIVE_INFINITY;
            }
        }
        return -1;
    }

    private void tryStep(double[] theta) {
        evaluate(theta[0] + step[0], theta[1] + step[1], theta[2] + step[2], trial);
    }

    private void accept(double[] theta) {
        theta[0] += step[0];
        theta[1] += step[1];
        theta[2] += step[2];
        Equations before = current;
        current = trial;
        trial = before;
    }

    private void evaluate(double theta0, double theta1, double theta2, Equations equations) {
        equations.clear();
        double rss = 0;
        for (int i = 0, at = 0; i < y.length; i++, at += COLUMNS) {
            double f = link.value(theta0 * columns[at] + theta1 * columns[at + 1] + theta2 * columns[at + 2]);
            double slope = link.slope(f);
            double residual = y[i] - f;
            rss += residual * residual;
            double gaussNewton = slope * slope;
            equations.add(gaussNewton, gaussNewton - residual * link.bend(f), residual * slope, columns, at);
        }
        equations.rss = rss;
    }

    /** Normal equations at one point: right side, and the lower triangles with Gauss-Newton and with Newton weights. */
    private static final class Equations {
        private double rss;
        private double right0;
        private double right1;
        private double right2;
        private double gauss00;
        private double gauss10;
        private double gauss11;
        private double gauss20;
        private double gauss21;
        private double gauss22;
        private double newton00;
        private double newton10;
        private double newton11;
        private double newton20;
        private double newton21;
        private double newton22;

        void clear() {
            right0 = right1 = right2 = 0;
            gauss00 = gauss10 = gauss11 = gauss20 = gauss21 = gauss22 = 0;
            newton00 = newton10 = newton11 = newton20 = newton21 = newton22 = 0;
        }

        void add(double gauss, double newton, double right, double[] z, int at) {
            double z0 = z[at];
            double z1 = z[at + 1];
            double z2 = z[at + 2];
            right0 += right * z0;
            right1 += right * z1;
            right2 += right * z2;
            double z00 = z0 * z0;
            double z10 = z1 * z0;
            double z11 = z1 * z1;
            double z20 = z2 * z0;
            double z21 = z2 * z1;
            double z22 = z2 * z2;
            gauss00 += gauss * z00;
            gauss10 += gauss * z10;
            gauss11 += gauss * z11;
            gauss20 += gauss * z20;
            gauss21 += gauss * z21;
            gauss22 += gauss * z22;
            newton00 += newton * z00;
            newton10 += newton * z10;
            newton11 += newton * z11;
            newton20 += newton * z20;
            newton21 += newton * z21;
            newton22 += newton * z22;
        }

        /** {@code step' A step} of a Newton step, which is the squared change of the fitted values to first order. */
        double decrement(double[] step) {
            return right0 * step[0] + right1 * step[1] + right2 * step[2];
        }

        boolean solveNewton(double[] x) {
            return solve(newton00, newton10, newton11, newton20, newton21, newton22, x);
        }

        boolean solveDamped(double damping, double[] x) {
            double grown = 1 + damping;
            return solve(gauss00 * grown, gauss10, gauss11 * grown, gauss20, gauss21, gauss22 * grown, x);
        }

        /** Cholesky of a 3 x 3 matrix by its lower triangle. @return false if it is not positive definite */
        private boolean solve(double a00, double a10, double a11, double a20, double a21, double a22, double[] x) {
            double l10 = a10 / a00;
            double l20 = a20 / a00;
            double d1 = a11 - l10 * a10;
            double c21 = a21 - l20 * a10;
            double l21 = c21 / d1;
            double d2 = a22 - l20 * a20 - l21 * c21;
            // written so that NaN fails; a pivot that has lost all its digits counts as zero
            if (!(a00 > 0 && d1 > PIVOT_ROUNDING * a11 && d2 > PIVOT_ROUNDING * a22)) {
                return false;
            }
            double r1 = right1 - l10 * right0;
            double r2 = right2 - l20 * right0 - l21 * r1;
            double x2 = r2 / d2;
            double x1 = r1 / d1 - l21 * x2;
            x[2] = x2;
            x[1] = x1;
            x[0] = right0 / a00 - l10 * x1 - l20 * x2;
            return true;
        }

        private static final double PIVOT_ROUNDING = 1e-15;
    }
}
