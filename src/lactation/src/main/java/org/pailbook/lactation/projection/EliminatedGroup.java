package org.pailbook.lactation.projection;

import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.MeanUncertainty;

/**
 * What a breed and parity adds to the equations of the coefficients common to the herd, once its own coefficients are eliminated: with A its
 * fingerprint, S its shapes, G their prior variance, {@code A - A_s (A_ss + G^-1)^-1 A_s'} on the left and likewise on the right. It does not depend on
 * the cow that is left out, so that it is worked out once for all cows of the other groups.
 *
 * @see "Absorption of equations in mixed models, textbook: the Schur complement of the group's block"
 */
final class EliminatedGroup {
    private static final int SHAPES = MeanUncertainty.SHAPES;
    private static final int COLUMNS = LactationFingerprint.COLUMNS;

    private final double[][] left = new double[COLUMNS][COLUMNS];
    private final double[] right = new double[COLUMNS];

    private EliminatedGroup() {}

    static EliminatedGroup of(LactationFingerprint print, HerdStandards.Rules rules) {
        double[] groupSd = rules.groupSd();
        double[] own = new double[SHAPES * (SHAPES + 1) / 2];
        for (int i = 0; i < SHAPES; i++) {
            for (int j = 0; j <= i; j++) {
                own[Cholesky.at(i, j)] = print.shapes[i][j];
            }
            own[Cholesky.at(i, i)] += 1 / (groupSd[i] * groupSd[i]);
        }
        Cholesky factor = Cholesky.factorInPlace(own, SHAPES);
        double[][] halves = new double[COLUMNS][SHAPES];
        for (int k = 0; k < COLUMNS; k++) {
            System.arraycopy(print.shapes[k], 0, halves[k], 0, SHAPES);
            factor.forwardInPlace(halves[k]);
        }
        double[] ofRight = new double[SHAPES];
        System.arraycopy(print.deviation, 0, ofRight, 0, SHAPES);
        factor.forwardInPlace(ofRight);
        EliminatedGroup group = new EliminatedGroup();
        for (int k = 0; k < COLUMNS; k++) {
            group.right[k] = print.deviation[k] - product(halves[k], ofRight);
            for (int l = 0; l < COLUMNS; l++) {
                group.left[k][l] = print.shapes[k][l] - product(halves[k], halves[l]);
            }
        }
        return group;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < SHAPES; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Adds it to a lower triangle and a right hand side whose first equations are the common ones. */
    void addTo(double[] lower, double[] rightHandSide, int common) {
        for (int k = 0; k < common; k++) {
            rightHandSide[k] += right[k];
            for (int l = 0; l <= k; l++) {
                lower[Cholesky.at(k, l)] += left[k][l];
            }
        }
    }
}
