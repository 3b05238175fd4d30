package org.pailbook.lactation.curve;

import java.util.OptionalDouble;
import org.pailbook.lactation.internal.ProfileSearch;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Cobby and Le Du's curve fitted by least squares: for each {@code c} the rest is linear, so the best {@code c} is searched
 * alone.
 *
 * <p>Refused when the sum of squares has no inner minimum between 0.005 and 1 per day, as with cows that are
 * already at their height at the first test.
 *
 * @see CobbyLeDuCurve
 */
public final class CobbyLeDuModel extends LeastSquaresModel {
    private static final Citation CITATION = new Citation(
            "Cobby, J. M. and Le Du, Y. L. P.", 1978, "Animal Production 26:127-133", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 3;

    /** Rates looked at, per day. Ours. */
    private static final double LEAST_RATE = 0.005;

    private static final double MOST_RATE = 1.0;
    private static final int GRID_POINTS = 60;

    CobbyLeDuModel() {
        super("cobby-le-du-1978", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        SeparableProfile profile = new SeparableProfile(
                daysInMilk,
                milkKg,
                2,
                (c, day, row) -> {
                    row[0] = -Math.expm1(-c * day);
                    row[1] = -day;
                },
                (c, day, linear) -> linear[0] * day * Math.exp(-c * day));
        OptionalDouble rate = ProfileSearch.innerMinimum(LEAST_RATE, MOST_RATE, GRID_POINTS, profile);
        if (rate.isEmpty()) {
            return CurveEstimate.notEstimable(this, "no inner minimum over c");
        }
        double c = rate.getAsDouble();
        double[] linear = profile.coefficientsAt(c);
        return CurveEstimate.ofMinimum(this, new CobbyLeDuCurve(linear[0], linear[1], c), daysInMilk, milkKg);
    }
}
