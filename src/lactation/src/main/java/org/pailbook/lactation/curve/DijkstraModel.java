package org.pailbook.lactation.curve;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.pailbook.lactation.internal.ProfileSearch;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Dijkstra's curve fitted by least squares: for each {@code c} the rest is a log-linear model, so the best {@code c} is searched
 * alone.
 *
 * <p>From monthly tests {@code c} is often not to be had: the sum of squares falls all the way to one end. Then there is no least
 * squares solution, and the fit is refused as not estimable; what an optimiser happened to stop at is not an answer.
 *
 * @see DijkstraCurve
 */
public final class DijkstraModel extends LeastSquaresModel {
    private static final Citation CITATION = new Citation(
            "Dijkstra, J. and others", 1997, "Journal of Dairy Science 80:2340-2354", HowKnown.FROM_MEMORY);
    private static final int PARAMETERS = 4;

    /** Values of {@code c} looked at, per day, from growth that never ends to growth done within days. Ours. */
    private static final double LEAST_C = 1e-4;

    private static final double MOST_C = 1;
    private static final int GRID_POINTS = 93;

    DijkstraModel() {
        super("dijkstra-1997", CITATION, PARAMETERS);
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        double firstDay = Arrays.stream(daysInMilk).min().orElseThrow();
        DijkstraProfile profile = new DijkstraProfile(daysInMilk, milkKg, firstDay);
        OptionalDouble best = ProfileSearch.innerMinimum(LEAST_C, MOST_C, GRID_POINTS, profile);
        if (best.isEmpty()) {
            return CurveEstimate.notEstimable(this, "no inner minimum over c");
        }
        DijkstraCurve curve = profile.curveAt(best.getAsDouble());
        return curve.a() > 0 && Double.isFinite(curve.a()) && Double.isFinite(curve.b())
                ? CurveEstimate.ofMinimum(this, curve, daysInMilk, milkKg)
                : CurveEstimate.notEstimable(this, "parameters beyond all numbers");
    }
}
