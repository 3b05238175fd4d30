package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.internal.IncompleteGamma;

/**
 * Wood's curve, {@code y(t) = a t^b exp(-c t)}: rises to a peak at {@code t = b / c} and falls off.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, above 0. For {@code b <= 0} or {@code c <= 0} there is no peak. Fitted
 * by {@link WoodModel} on kg and by {@link WoodLogLinearModel} on logarithms; the two differ.
 *
 * @param a level, kg per day; above 0
 * @param b how steeply it rises, a pure number
 * @param c how fast it declines, per day
 * @see "Wood, P. D. P. (1967). Nature 216:164-165 (volume and page from memory, check before quoting)"
 */
public record WoodCurve(double a, double b, double c) implements LactationCurve {

    @Override
    public double milkKgPerDay(double daysInMilk) {
        // exp(b ln t - c t) and not pow times exp: the same to rounding, and half the time
        return a * Math.exp(b * Math.log(daysInMilk) - c * daysInMilk);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        return milkKgPerDay(daysInMilk) * (b / daysInMilk - c);
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return shape() == CurveShape.STANDARD ? OptionalDouble.of(b / c) : OptionalDouble.empty();
    }

    /** By the signs of {@code b} and {@code c}. */
    @Override
    public CurveShape shape() {
        return CurveShape.of(b > 0, c <= 0);
    }

    /**
     * Integral of the curve from day 0, kg: {@code a c^-(b+1) gamma(b+1, c T)} with the lower incomplete gamma function. Not the
     * sum of the days; see {@link #totalKg}.
     *
     * @param toDaysInMilk where it ends, 0 or later
     * @throws IllegalStateException unless {@code b > -1} and {@code c > 0}: otherwise the form does not hold
     */
    public double integralKg(double toDaysInMilk) {
        if (!(b > -1 && c > 0)) {
            throw new IllegalStateException(
                    "b (" + b + ") must be above -1 and c (" + c + ") above 0 for the closed form");
        }
        return a * Math.pow(c, -(b + 1)) * IncompleteGamma.lower(b + 1, c * toDaysInMilk);
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "kg/d"),
                CurveParameter.given("b", b, "1"),
                CurveParameter.given("c", c, "1/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double log = Math.log(daysInMilk);
        double perA = Math.exp(b * log - c * daysInMilk);
        double milk = a * perA;
        return new double[] {perA, milk * log, -milk * daysInMilk};
    }
}
