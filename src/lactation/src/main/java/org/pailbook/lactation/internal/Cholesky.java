package org.pailbook.lactation.internal;

/**
 * Cholesky factor of a small symmetric positive definite matrix, {@code A = L L'}, and what is solved with it.
 *
 * <p>Lower triangle stored by rows without gaps: element (i, j), j &lt;= i, at {@code i (i + 1) / 2 + j}. Not for use by several
 * threads while factoring; afterwards it is only read.
 */
public final class Cholesky {
    private final double[] lower;
    private final int size;

    private Cholesky(double[] lower, int size) {
        this.lower = lower;
        this.size = size;
    }

    /** Place of element (row, column), column at most row. */
    public static int at(int row, int column) {
        return row * (row + 1) / 2 + column;
    }

    /**
     * Factors in place, taking each finished column off all that follow: the innermost steps then do not wait for each other.
     *
     * @param lowerTriangle length n (n + 1) / 2; overwritten by the factor and kept
     * @throws IllegalArgumentException if the matrix is not positive definite
     */
    public static Cholesky factorInPlace(double[] lowerTriangle, int size) {
        double[] a = lowerTriangle;
        double[] column = new double[size];
        for (int k = 0; k < size; k++) {
            double pivot = root(a[at(k, k)], k);
            a[at(k, k)] = pivot;
            for (int i = k + 1; i < size; i++) {
                int place = at(i, k);
                a[place] /= pivot;
                column[i] = a[place];
            }
            for (int i = k + 1; i < size; i++) {
                takeOff(a, at(i, 0), column, k + 1, i, column[i]);
            }
        }
        return new Cholesky(a, size);
    }

    /** Elements {@code from} to {@code to} of a row, less a multiple of the column. */
    private static void takeOff(double[] a, int row, double[] column, int from, int to, double multiple) {
        for (int j = from; j <= to; j++) {
            a[row + j] -= multiple * column[j];
        }
    }

    private static double root(double pivot, int place) {
        if (pivot > 0) {
            return Math.sqrt(pivot);
        }
        throw new IllegalArgumentException(
                "matrix is not positive definite: pivot " + place + " is " + pivot + " before its root");
    }

    public int size() {
        return size;
    }

    /** Turns b into {@code L^-1 b}; the sum of its squares is then {@code b' A^-1 b}. */
    public void forwardInPlace(double[] b) {
        for (int i = 0; i < size; i++) {
            int row = i * (i + 1) / 2;
            double sum = b[i];
            for (int k = 0; k < i; k++) {
                sum -= lower[row + k] * b[k];
            }
            b[i] = sum / lower[row + i];
        }
    }

    /** Turns b into {@code L'^-1 b}. */
    public void backwardInPlace(double[] b) {
        for (int i = size - 1; i >= 0; i--) {
            double sum = b[i];
            for (int k = i + 1; k < size; k++) {
                sum -= lower[k * (k + 1) / 2 + i] * b[k];
            }
            b[i] = sum / lower[i * (i + 1) / 2 + i];
        }
    }

    /** Turns b into {@code A^-1 b}. */
    public void solveInPlace(double[] b) {
        forwardInPlace(b);
        backwardInPlace(b);
    }
}
