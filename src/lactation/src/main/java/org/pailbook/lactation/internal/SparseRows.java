package org.pailbook.lactation.internal;

import java.util.Arrays;

/**
 * Rows of a large matrix that is mostly zero: from each state to the few states that may follow.
 *
 * <p>Filled row by row, in any order of rows, then only read.
 */
public final class SparseRows {
    final int[] start;
    final int[] end;
    int[] target;
    double[] weight;
    private int size;
    private int open = -1;

    /** @param expectedEntries room to begin with; it grows */
    public SparseRows(int rows, int expectedEntries) {
        this.start = new int[rows];
        this.end = new int[rows];
        this.target = new int[Math.max(1, expectedEntries)];
        this.weight = new double[Math.max(1, expectedEntries)];
    }

    /** Begins a row; a row never begun is empty, one begun again starts anew. */
    public void begin(int row) {
        open = row;
        start[row] = size;
        end[row] = size;
    }

    /** Adds an entry to the row begun last; zero is left out. The same column twice adds up. */
    public void add(int column, double amount) {
        if (amount == 0) {
            return;
        }
        if (size == target.length) {
            target = Arrays.copyOf(target, 2 * size);
            weight = Arrays.copyOf(weight, 2 * size);
        }
        target[size] = column;
        weight[size] = amount;
        size++;
        end[open] = size;
    }

    public int rows() {
        return start.length;
    }

    /** Number of entries of a row. */
    public int count(int row) {
        return end[row] - start[row];
    }

    /** Column of entry {@code n} of a row. */
    public int column(int row, int n) {
        return target[start[row] + n];
    }

    /** Amount of entry {@code n} of a row. */
    public double amount(int row, int n) {
        return weight[start[row] + n];
    }

    /** The row times a column vector. */
    public double times(int row, double[] vector) {
        double sum = 0;
        for (int e = start[row]; e < end[row]; e++) {
            sum += weight[e] * vector[target[e]];
        }
        return sum;
    }

    /** Marks every column that is reached from its own row or a later one. */
    void markReachedFromBehind(boolean[] marks) {
        for (int row = 0; row < start.length; row++) {
            for (int e = start[row]; e < end[row]; e++) {
                if (target[e] <= row) {
                    marks[target[e]] = true;
                }
            }
        }
    }
}
