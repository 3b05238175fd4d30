package org.pailbook.lactation.internal;

/** A small dense system of equations, by elimination with partial pivoting. */
final class SmallLinearSystem {
    private SmallLinearSystem() {}

    /**
     * Solves {@code A x = b}; both are overwritten.
     *
     * @return b, now x
     * @throws IllegalArgumentException if the matrix is singular
     */
    static double[] solveInPlace(double[][] a, double[] b) {
        int n = b.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (Math.abs(a[row][column]) > Math.abs(a[pivot][column])) {
                    pivot = row;
                }
            }
            if (!(Math.abs(a[pivot][column]) > 0)) {
                throw new IllegalArgumentException("the equations are singular in column " + column);
            }
            double[] swappedRow = a[column];
            a[column] = a[pivot];
            a[pivot] = swappedRow;
            double swapped = b[column];
            b[column] = b[pivot];
            b[pivot] = swapped;
            for (int row = column + 1; row < n; row++) {
                double factor = a[row][column] / a[column][column];
                if (factor != 0) {
                    for (int k = column; k < n; k++) {
                        a[row][k] -= factor * a[column][k];
                    }
                    b[row] -= factor * b[column];
                }
            }
        }
        for (int row = n - 1; row >= 0; row--) {
            double sum = b[row];
            for (int k = row + 1; k < n; k++) {
                sum -= a[row][k] * b[k];
            }
            b[row] = sum / a[row][row];
        }
        return b;
    }
}
