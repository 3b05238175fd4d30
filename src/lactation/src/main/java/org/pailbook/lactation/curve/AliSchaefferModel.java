package org.pailbook.lactation.curve;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Ali and Schaeffer's regression: linear in its five parameters, so exact least squares without start.
 *
 * @see AliSchaefferCurve
 */
public final class AliSchaefferModel extends LeastSquaresModel {
    private static final Citation CITATION = new Citation(
            "Ali, T. E. and Schaeffer, L. R.",
            1987,
            "Canadian Journal of Animal Science 67:637-644",
            HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 5;

    AliSchaefferModel() {
        super("ali-schaeffer-1987", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        return LinearFit.estimate(
                this,
                daysInMilk,
                milkKg,
                new AliSchaefferCurve(0, 0, 0, 0, 0),
                p -> new AliSchaefferCurve(p[0], p[1], p[2], p[3], p[4]));
    }
}
