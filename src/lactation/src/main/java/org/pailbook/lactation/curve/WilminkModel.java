package org.pailbook.lactation.curve;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Wilmink's curve with {@code k} held at {@value WilminkCurve#USUAL_K} per day: linear in its parameters, so exact least squares
 * without start.
 *
 * <p>{@code k} of a single cow is not to be had from monthly tests, of which one or two lie on the rise; {@link
 * WilminkFreeRateModel} tries.
 *
 * @see WilminkCurve
 */
public final class WilminkModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Wilmink, J. B. M.", 1987, "Livestock Production Science 16:335-348", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    WilminkModel() {
        super("wilmink-1987", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        return LinearFit.estimate(
                this, daysInMilk, milkKg, new WilminkCurve(0, 0, 0), c -> new WilminkCurve(c[0], c[1], c[2]));
    }
}
