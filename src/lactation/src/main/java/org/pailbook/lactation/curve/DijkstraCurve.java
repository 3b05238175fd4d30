package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Dijkstra's mechanistic curve, {@code y(t) = a exp(b (1 - exp(-c t)) / c - d t)}: milk-making cells grow at a rate that dies
 * away, and die.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, 0 or later. Peaks at {@code ln(b / d) / c} if {@code b > d > 0}.
 *
 * @param a milk at calving, kg per day; above 0
 * @param b rate of growth at calving, per day
 * @param c how fast growth dies away, per day; above 0
 * @param d rate of loss, per day
 * @see "Dijkstra, J. et al. (1997). J. Dairy Sci. 80:2340-2354 (from memory, check before quoting)"
 */
public record DijkstraCurve(double a, double b, double c, double d) implements LactationCurve {
    public DijkstraCurve {
        if (!(c > 0)) {
            throw new IllegalArgumentException("c (" + c + ") must be above 0");
        }
    }

    @Override
    public double milkKgPerDay(double daysInMilk) {
        return a * Math.exp(-b * Math.expm1(-c * daysInMilk) / c - d * daysInMilk);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        return milkKgPerDay(daysInMilk) * (b * Math.exp(-c * daysInMilk) - d);
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return shape() == CurveShape.STANDARD ? OptionalDouble.of(Math.log(b / d) / c) : OptionalDouble.empty();
    }

    @Override
    public CurveShape shape() {
        return CurveShape.of(b > d, d <= 0);
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "kg/d"),
                CurveParameter.given("b", b, "1/d"),
                CurveParameter.given("c", c, "1/d"),
                CurveParameter.given("d", d, "1/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double decay = Math.exp(-c * daysInMilk);
        double grown = -Math.expm1(-c * daysInMilk) / c;
        double perA = Math.exp(b * grown - d * daysInMilk);
        double milk = a * perA;
        return new double[] {perA, milk * grown, milk * b * (daysInMilk * decay - grown) / c, -milk * daysInMilk};
    }
}
