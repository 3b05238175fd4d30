package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Random;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Against Commons Math 3.6.1 (ordinary least squares by QR, singular values) on random designs. */
class LinearLeastSquaresPeerTest {
    private static final long SEED = 42;

    @Test
    void coefficientsCovariancesAndLeveragesAreThoseOfCommonsMath() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 300; draw++) {
            int columns = 1 + random.nextInt(5);
            int rows = columns + 1 + random.nextInt(10);
            double[][] x = new double[rows][columns];
            double[] design = new double[rows * columns];
            double[] y = new double[rows];
            for (int i = 0; i < rows; i++) {
                for (int k = 0; k < columns; k++) {
                    // columns of very different size, as days and their logarithms are
                    x[i][k] = random.nextGaussian() * Math.pow(10, 2 * k);
                    design[k * rows + i] = x[i][k];
                }
                y[i] = 20 + 5 * random.nextGaussian();
            }
            OLSMultipleLinearRegression peer = new OLSMultipleLinearRegression();
            peer.setNoIntercept(true);
            peer.newSampleData(y, x);

            LinearLeastSquares ours = LinearLeastSquares.solve(design, columns, y);

            String where = "seed " + SEED + " draw " + draw;
            RealMatrix inverse = MatrixUtils.createRealMatrix(peer.estimateRegressionParametersVariance())
                    .scalarMultiply(1.0);
            RealMatrix hat = peer.calculateHat();
            assertThat(ours.isSingular()).as(where).isFalse();
            for (int k = 0; k < columns; k++) {
                double beta = peer.estimateRegressionParameters()[k];
                assertThat(ours.coefficient(k))
                        .as(where)
                        .isCloseTo(beta, Offset.offset(1e-9 * (1e-6 + Math.abs(beta))));
                assertThat(ours.coefficients()[k]).isEqualTo(ours.coefficient(k));
                for (int m = 0; m < columns; m++) {
                    double entry = inverse.getEntry(k, m);
                    double scale = Math.sqrt(inverse.getEntry(k, k) * inverse.getEntry(m, m));
                    assertThat(ours.inverseNormal(k, m)).as(where).isCloseTo(entry, Offset.offset(1e-8 * scale));
                }
            }
            for (int i = 0; i < rows; i++) {
                assertThat(ours.leverage(i)).as(where).isCloseTo(hat.getEntry(i, i), Offset.offset(1e-10));
            }
        }
    }

    @Test
    void theConditionNumberLiesBetweenTheSpectralOneAndColumnsTimesThat() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 100; draw++) {
            int columns = 3;
            int rows = 8;
            double[][] scaled = new double[rows][columns];
            double[] design = new double[rows * columns];
            for (int k = 0; k < columns; k++) {
                double length = 0;
                for (int i = 0; i < rows; i++) {
                    design[k * rows + i] = 1 + 0.3 * random.nextGaussian();
                    length += design[k * rows + i] * design[k * rows + i];
                }
                for (int i = 0; i < rows; i++) {
                    scaled[i][k] = design[k * rows + i] / Math.sqrt(length);
                }
            }
            double spectral = new SingularValueDecomposition(MatrixUtils.createRealMatrix(scaled)).getConditionNumber();

            double ours =
                    LinearLeastSquares.solve(design, columns, new double[rows]).conditionNumber();

            assertThat(ours).as("seed %d draw %d", SEED, draw).isBetween(spectral, columns * spectral);
        }
    }

    // two columns at 60 degrees: R = (1, cos; 0, sin), so the product of the Frobenius norms of R and its inverse is 2
    // / sin 60
    @Test
    void theConditionNumberOfTwoColumnsIsTwoOverTheSineOfTheirAngleWhateverTheirUnits() {
        double cos = Math.cos(Math.PI / 3);
        double sin = Math.sin(Math.PI / 3);
        double[] y = {1, 2, 3};

        assertThat(LinearLeastSquares.solve(new double[] {1, 0, 0, cos, sin, 0}, 2, y)
                        .conditionNumber())
                .isCloseTo(2 / sin, Offset.offset(1e-13));
        assertThat(LinearLeastSquares.solve(new double[] {1e6, 0, 0, 1e-3 * cos, 1e-3 * sin, 0}, 2, y)
                        .conditionNumber())
                .isCloseTo(2 / sin, Offset.offset(1e-13));
        assertThat(LinearLeastSquares.solve(new double[] {5, 0, 0, 0, 7, 0, 0, 0, 9}, 3, y)
                        .conditionNumber())
                .isCloseTo(3, Offset.offset(1e-13));
    }

    @Test
    void equalColumnsAndAColumnOfZerosAreSingular() {
        double[] y = {1, 2, 3, 5};

        LinearLeastSquares twice = LinearLeastSquares.solve(new double[] {1, 2, 3, 4, 2, 4, 6, 8}, 2, y);
        LinearLeastSquares zeros = LinearLeastSquares.solve(new double[] {1, 2, 3, 4, 0, 0, 0, 0}, 2, y);

        assertThat(twice.isSingular()).isTrue();
        assertThat(twice.conditionNumber()).isInfinite();
        assertThat(zeros.isSingular()).isTrue();
    }

    @Test
    void asManyPointsAsColumnsAreMetExactly() {
        // 3 x + 2 z = 8, x - z = 1
        LinearLeastSquares exact = LinearLeastSquares.solve(new double[] {3, 1, 2, -1}, 2, new double[] {8, 1});

        assertThat(exact.coefficient(0)).isCloseTo(2, Offset.offset(1e-14));
        assertThat(exact.coefficient(1)).isCloseTo(1, Offset.offset(1e-14));
        assertThat(exact.leverage(0)).isCloseTo(1, Offset.offset(1e-14));
    }

    @Test
    void theArgumentsStayAsTheyWere() {
        double[] design = {1, 1, 1, 2, 3, 5};
        double[] y = {1, 2, 4};

        LinearLeastSquares.solve(design, 2, y);

        assertThat(design).containsExactly(1, 1, 1, 2, 3, 5);
        assertThat(y).containsExactly(1, 2, 4);
    }

    @Test
    void designsThatCannotBeAreProgrammingErrors() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LinearLeastSquares.solve(new double[3], 2, new double[2]));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LinearLeastSquares.solve(new double[2], 2, new double[1]));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LinearLeastSquares.solve(new double[0], 0, new double[2]));
    }
}
