package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Against the LU decomposition of Commons Math. */
class CholeskyPeerTest {
    private static final long SEED = 20240311;

    @Test
    void solutionsEqualThoseOfAnotherDecomposition() {
        Random random = new Random(SEED);
        for (int size : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 47, 48, 49, 120}) {
            RealMatrix root = new Array2DRowRealMatrix(size, size);
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    root.setEntry(i, j, random.nextGaussian());
                }
            }
            RealMatrix full = root.multiply(root.transpose()).add(MatrixUtils.createRealIdentityMatrix(size));
            double[] lower = new double[size * (size + 1) / 2];
            for (int i = 0; i < size; i++) {
                for (int j = 0; j <= i; j++) {
                    lower[Cholesky.at(i, j)] = full.getEntry(i, j);
                }
            }
            double[] right = random.doubles(size).toArray();
            RealVector expected = new LUDecomposition(full).getSolver().solve(MatrixUtils.createRealVector(right));

            Cholesky factor = Cholesky.factorInPlace(lower, size);
            double[] solved = right.clone();
            factor.solveInPlace(solved);
            assertThat(solved).as("seed %d, size %d", SEED, size).containsExactly(expected.toArray(), within(1e-11));

            double[] half = right.clone();
            factor.forwardInPlace(half);
            double quadratic = 0;
            for (double part : half) {
                quadratic += part * part;
            }
            assertThat(quadratic).isCloseTo(expected.dotProduct(MatrixUtils.createRealVector(right)), within(1e-11));
        }
    }

    /** The factor of the first rows and columns is the first part of the factor, to the last bit. */
    @Test
    void smallAndLargeMatricesAreFactoredAlike() {
        int size = 90;
        double[] days = new Random(SEED)
                .ints(size, 1, 306)
                .sorted()
                .mapToDouble(day -> day)
                .toArray();
        double[] lower = new double[size * (size + 1) / 2];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                lower[Cholesky.at(i, j)] = 0.82 * Math.pow(0.998, days[i] - days[j]) + (i == j ? 0.18 : 0);
            }
        }
        int few = 40;
        double[] first = Arrays.copyOf(lower, few * (few + 1) / 2);
        Cholesky.factorInPlace(first, few);
        Cholesky.factorInPlace(lower, size);
        assertThat(Arrays.copyOf(lower, first.length)).containsExactly(first);
    }

    @Test
    void largeMatrixThatIsNotPositiveDefiniteIsRefused() {
        int size = 60;
        double[] lower = new double[size * (size + 1) / 2];
        for (int i = 0; i < size; i++) {
            lower[Cholesky.at(i, i)] = i == 55 ? -1 : 1;
        }
        assertThatThrownBy(() -> Cholesky.factorInPlace(lower, size))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("pivot 55");
    }

    @Test
    void matrixThatIsNotPositiveDefiniteIsRefused() {
        assertThatThrownBy(() -> Cholesky.factorInPlace(new double[] {1, 2, 1}, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("not positive definite");
    }
}
