package org.pailbook.lactation.curve;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Guo and Swalve's mixed log curve: linear in its parameters, so exact least squares without start.
 *
 * @see GuoSwalveCurve
 */
public final class GuoSwalveModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Guo, Z. and Swalve, H. H.", 1995, "Interbull Bulletin 11:4-7", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    GuoSwalveModel() {
        super("guo-swalve-1995", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        return LinearFit.estimate(
                this, daysInMilk, milkKg, new GuoSwalveCurve(0, 0, 0), c -> new GuoSwalveCurve(c[0], c[1], c[2]));
    }
}
