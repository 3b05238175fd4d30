package org.pailbook.lactation.internal;

/**
 * Linear least squares by Householder reflections, with what a statistician asks afterwards: covariances, leverages, condition.
 *
 * <p>Columns are scaled to length one first, so that the condition number tells of near-collinear columns and not of units.
 *
 * @see "Golub, G. H. and Van Loan, C. F., Matrix Computations, Householder QR and least squares (from memory)"
 */
public final class LinearLeastSquares {
    /** A diagonal entry of R below this share of its column's length has lost all its digits. */
    private static final double ROUNDING = 1e-13;

    private final int rows;
    private final int columns;
    private final double[] scale;
    private final double[] coefficients;
    private final double[] inverseR;
    private final double[] leverages;
    private final double conditionNumber;
    private final boolean isSingular;

    private LinearLeastSquares(double[] design, int columns, double[] y) {
        this.rows = y.length;
        this.columns = columns;
        this.scale = new double[columns];
        double[] q = design.clone();
        double[] right = y.clone();
        scaleColumns(q);
        double[] diagonal = new double[columns];
        boolean singular = !reflect(q, right, diagonal);
        this.isSingular = singular;
        this.coefficients = new double[columns];
        this.inverseR = new double[columns * columns];
        this.leverages = new double[rows];
        if (singular) {
            this.conditionNumber = Double.POSITIVE_INFINITY;
            return;
        }
        invertTriangle(q, diagonal);
        for (int k = 0; k < columns; k++) {
            double sum = 0;
            for (int j = k; j < columns; j++) {
                sum += inverseR[k * columns + j] * right[j];
            }
            coefficients[k] = sum / scale[k];
        }
        this.conditionNumber = norm(q, diagonal) * norm(inverseR);
        fillLeverages(design);
    }

    /**
     * Fits {@code y ~ X beta}.
     *
     * @param design column after column: {@code design[k n + i]} is column {@code k} of point {@code i}; not changed
     * @param columns number of coefficients
     * @param y one value a point, at least as many as coefficients; not changed
     */
    public static LinearLeastSquares solve(double[] design, int columns, double[] y) {
        if (columns < 1 || y.length < columns || design.length != columns * y.length) {
            throw new IllegalArgumentException("design (" + design.length + ") must hold " + columns + " columns of "
                    + y.length + " points, and at least as many points as columns");
        }
        return new LinearLeastSquares(design, columns, y);
    }

    private void scaleColumns(double[] q) {
        for (int k = 0; k < columns; k++) {
            double sum = 0;
            for (int i = 0; i < rows; i++) {
                sum += q[k * rows + i] * q[k * rows + i];
            }
            double length = Math.sqrt(sum);
            scale[k] = length > 0 ? length : 1;
            for (int i = 0; i < rows; i++) {
                q[k * rows + i] /= scale[k];
            }
        }
    }

    /** Leaves R above the diagonal of {@code q}, its diagonal apart, and Q'y in {@code right}. @return false if singular */
    private boolean reflect(double[] q, double[] right, double[] diagonal) {
        for (int k = 0; k < columns; k++) {
            int column = k * rows;
            double sum = 0;
            for (int i = k; i < rows; i++) {
                sum += q[column + i] * q[column + i];
            }
            double length = Math.sqrt(sum);
            if (!(length > ROUNDING)) {
                return false;
            }
            double head = q[column + k];
            double alpha = head > 0 ? -length : length;
            diagonal[k] = alpha;
            q[column + k] = head - alpha;
            double half = length * (length + Math.abs(head));
            for (int j = k + 1; j < columns; j++) {
                reflectOne(q, column, k, q, j * rows, half);
            }
            reflectOne(q, column, k, right, 0, half);
        }
        return true;
    }

    private void reflectOne(double[] v, int vAt, int from, double[] x, int xAt, double half) {
        double dot = 0;
        for (int i = from; i < rows; i++) {
            dot += v[vAt + i] * x[xAt + i];
        }
        double times = dot / half;
        for (int i = from; i < rows; i++) {
            x[xAt + i] -= times * v[vAt + i];
        }
    }

    private void invertTriangle(double[] q, double[] diagonal) {
        for (int j = 0; j < columns; j++) {
            inverseR[j * columns + j] = 1 / diagonal[j];
            for (int k = j - 1; k >= 0; k--) {
                double sum = 0;
                for (int m = k + 1; m <= j; m++) {
                    sum += q[m * rows + k] * inverseR[m * columns + j];
                }
                inverseR[k * columns + j] = -sum / diagonal[k];
            }
        }
    }

    private double norm(double[] q, double[] diagonal) {
        double sum = 0;
        for (int j = 0; j < columns; j++) {
            sum += diagonal[j] * diagonal[j];
            for (int k = 0; k < j; k++) {
                sum += q[j * rows + k] * q[j * rows + k];
            }
        }
        return Math.sqrt(sum);
    }

    private static double norm(double[] matrix) {
        double sum = 0;
        for (double entry : matrix) {
            sum += entry * entry;
        }
        return Math.sqrt(sum);
    }

    private void fillLeverages(double[] design) {
        for (int i = 0; i < rows; i++) {
            double leverage = 0;
            for (int j = 0; j < columns; j++) {
                double entry = 0;
                for (int k = 0; k <= j; k++) {
                    entry += design[k * rows + i] / scale[k] * inverseR[k * columns + j];
                }
                leverage += entry * entry;
            }
            leverages[i] = leverage;
        }
    }

    /** True if the columns do not determine the coefficients; all else is then meaningless. */
    public boolean isSingular() {
        return isSingular;
    }

    /** Frobenius condition number of the design with columns of length one; 1 per column at best, infinite if singular. */
    public double conditionNumber() {
        return conditionNumber;
    }

    public double coefficient(int k) {
        return coefficients[k];
    }

    public double[] coefficients() {
        return coefficients.clone();
    }

    /** Diagonal of the hat matrix: how much of point {@code i}'s fitted value comes from its own {@code y}, 0 to 1. */
    public double leverage(int i) {
        return leverages[i];
    }

    /** Entry of {@code (X'X)^-1}; times the residual variance it is the covariance of two coefficients. */
    public double inverseNormal(int k, int m) {
        double sum = 0;
        for (int j = Math.max(k, m); j < columns; j++) {
            sum += inverseR[k * columns + j] * inverseR[m * columns + j];
        }
        return sum / (scale[k] * scale[m]);
    }
}
