package org.pailbook.lactation.curve;

import java.util.OptionalDouble;
import org.pailbook.lactation.internal.ProfileSearch;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Wilmink's curve with {@code k} fitted as well: for each {@code k} the rest is linear, so the best {@code k} is searched alone.
 *
 * <p>For means of many cows, or a cow weighed daily. From monthly tests {@code k} is seldom to be had: the fit is refused when
 * the sum of squares has no inner minimum between 0.005 and 0.5 per day. {@link WilminkModel} holds {@code k}.
 *
 * @see WilminkCurve
 */
public final class WilminkFreeRateModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Wilmink, J. B. M.", 1987, "Livestock Production Science 16:335-348", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 4;

    /** Rates looked at, per day. Ours. */
    private static final double LEAST_RATE = 0.005;

    private static final double MOST_RATE = 0.5;
    private static final int GRID_POINTS = 60;

    WilminkFreeRateModel() {
        super("wilmink-free-rate-1987", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        SeparableProfile profile = new SeparableProfile(
                daysInMilk,
                milkKg,
                3,
                (k, day, row) -> {
                    row[0] = 1;
                    row[1] = Math.exp(-k * day);
                    row[2] = day;
                },
                (k, day, c) -> -c[1] * day * Math.exp(-k * day));
        OptionalDouble rate = ProfileSearch.innerMinimum(LEAST_RATE, MOST_RATE, GRID_POINTS, profile);
        if (rate.isEmpty()) {
            return CurveEstimate.notEstimable(this, "no inner minimum over k");
        }
        double k = rate.getAsDouble();
        double[] c = profile.coefficientsAt(k);
        return CurveEstimate.ofMinimum(this, new WilminkCurve(c[0], c[1], c[2], k), daysInMilk, milkKg);
    }
}
