package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Cobby and Le Du's curve, {@code y(t) = a - b t - a exp(-c t)}: a straight decline, with a rise from nothing at calving.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, 0 or later. Peaks at {@code ln(a c / b) / c} if {@code a c > b > 0}.
 *
 * @param a where the decline would have started, kg per day
 * @param b decline, kg per day per day
 * @param c how fast the rise is done, per day; above 0
 * @see "Cobby, J. M. and Le Du, Y. L. P. (1978). Anim. Prod. 26:127-133 (from memory, check before quoting)"
 */
public record CobbyLeDuCurve(double a, double b, double c) implements LactationCurve {
    public CobbyLeDuCurve {
        if (!(c > 0)) {
            throw new IllegalArgumentException("c (" + c + ") must be above 0");
        }
    }

    @Override
    public double milkKgPerDay(double daysInMilk) {
        return -a * Math.expm1(-c * daysInMilk) - b * daysInMilk;
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        return a * c * Math.exp(-c * daysInMilk) - b;
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return shape() == CurveShape.STANDARD ? OptionalDouble.of(Math.log(a * c / b) / c) : OptionalDouble.empty();
    }

    @Override
    public CurveShape shape() {
        return CurveShape.of(a * c > b, b <= 0);
    }

    /** The sum of the days in closed form. */
    @Override
    public double totalKg(int fromDaysInMilk, int toDaysInMilk) {
        DaySpan.require(fromDaysInMilk, toDaysInMilk);
        return a * DaySpan.count(fromDaysInMilk, toDaysInMilk)
                - b * DaySpan.sumOfDays(fromDaysInMilk, toDaysInMilk)
                - a * DaySpan.sumOfDecay(c, fromDaysInMilk, toDaysInMilk);
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "kg/d"),
                CurveParameter.given("b", b, "kg/d/d"),
                CurveParameter.given("c", c, "1/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        return new double[] {-Math.expm1(-c * daysInMilk), -daysInMilk, a * daysInMilk * Math.exp(-c * daysInMilk)};
    }
}
