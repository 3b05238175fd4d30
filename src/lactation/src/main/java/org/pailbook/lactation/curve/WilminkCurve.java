package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Wilmink's curve, {@code y(t) = a + b exp(-k t) + c t}: a straight decline less what is missing at the start.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk; {@code y(0) = a + b}. With {@code b < 0} and {@code c < 0} it rises to a
 * peak at {@code t = -ln(c / (k b)) / k}, provided that is a day after calving.
 *
 * @param a level, kg per day
 * @param b shortfall at the start (negative), kg per day
 * @param c change after the rise, kg per day per day; negative when it declines
 * @param k how fast the start is made up, per day; Wilmink's value is {@value #USUAL_K}
 * @see "Wilmink, J. B. M. (1987). Livest. Prod. Sci. 16:335-348 (from memory, check before quoting)"
 */
public record WilminkCurve(double a, double b, double c, double k) implements LactationCurve {
    /** Wilmink's {@code k}, per day; from memory. */
    public static final double USUAL_K = 0.05;

    public WilminkCurve {
        if (!(k > 0)) {
            throw new IllegalArgumentException("k (" + k + ") must be above 0");
        }
    }

    /** With the usual {@code k}. */
    public WilminkCurve(double a, double b, double c) {
        this(a, b, c, USUAL_K);
    }

    @Override
    public double milkKgPerDay(double daysInMilk) {
        return a + b * Math.exp(-k * daysInMilk) + c * daysInMilk;
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        return -k * b * Math.exp(-k * daysInMilk) + c;
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        if (shape() != CurveShape.STANDARD) {
            return OptionalDouble.empty();
        }
        double peak = -Math.log(c / (k * b)) / k;
        return peak > 0 ? OptionalDouble.of(peak) : OptionalDouble.empty();
    }

    /** By the signs of {@code b} and {@code c}. */
    @Override
    public CurveShape shape() {
        return CurveShape.of(b < 0, c >= 0);
    }

    /** The sum of the days in closed form: a constant, an arithmetic and a geometric series. */
    @Override
    public double totalKg(int fromDaysInMilk, int toDaysInMilk) {
        DaySpan.require(fromDaysInMilk, toDaysInMilk);
        return a * DaySpan.count(fromDaysInMilk, toDaysInMilk)
                + b * DaySpan.sumOfDecay(k, fromDaysInMilk, toDaysInMilk)
                + c * DaySpan.sumOfDays(fromDaysInMilk, toDaysInMilk);
    }

    /** Integral of the curve from one moment to another, kg. Not the sum of the days; see {@link #totalKg}. */
    public double integralKg(double fromDaysInMilk, double toDaysInMilk) {
        return a * (toDaysInMilk - fromDaysInMilk)
                + b * (Math.exp(-k * fromDaysInMilk) - Math.exp(-k * toDaysInMilk)) / k
                + c * (toDaysInMilk * toDaysInMilk - fromDaysInMilk * fromDaysInMilk) / 2;
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "kg/d"),
                CurveParameter.given("b", b, "kg/d"),
                CurveParameter.given("c", c, "kg/d/d"),
                CurveParameter.given("k", k, "1/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double decay = Math.exp(-k * daysInMilk);
        return new double[] {1, decay, daysInMilk, -b * daysInMilk * decay};
    }
}
