package org.pailbook.lactation.curve;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Normalized Legendre polynomials of one order over a stated range of days: linear, so exact least squares without start.
 *
 * <p>The range changes the coefficients and not the curve.
 *
 * @see LegendreCurve
 */
public final class LegendreModel extends LeastSquaresModel {
    private static final Citation CITATION = new Citation(
            "Kirkpatrick, M., Lofsvold, D. and Bulmer, M.", 1990, "Genetics 124:979-993", HowKnown.FROM_MEMORY);

    private final int order;
    private final double firstDay;
    private final double lastDay;

    /**
     * @param order of the polynomial, 1 or more
     * @param firstDay day in milk at which the reduced time is -1
     * @param lastDay day in milk at which it is 1, after the first
     */
    public LegendreModel(int order, double firstDay, double lastDay) {
        super("legendre-" + order, CITATION, order + 1);
        if (order < 1) {
            throw new IllegalArgumentException("order (" + order + ") must be at least 1");
        }
        if (!(lastDay > firstDay)) {
            throw new IllegalArgumentException("lastDay (" + lastDay + ") must be after firstDay (" + firstDay + ")");
        }
        this.order = order;
        this.firstDay = firstDay;
        this.lastDay = lastDay;
    }

    /** The day in milk at which the reduced time is -1. */
    public double firstDay() {
        return firstDay;
    }

    /** The day in milk at which the reduced time is 1. */
    public double lastDay() {
        return lastDay;
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        return LinearFit.estimate(
                this,
                daysInMilk,
                milkKg,
                new LegendreCurve(firstDay, lastDay, new double[order + 1]),
                c -> new LegendreCurve(firstDay, lastDay, c));
    }
}
