package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Guo and Swalve's mixed log curve, {@code y(t) = a + b sqrt(t) + c ln t}.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, above 0. Peaks at {@code (2 c / -b)^2} if {@code b < 0 < c}.
 *
 * @param a level, kg per day
 * @param b decline (negative), kg per day per root of a day
 * @param c rise, kg per day
 * @see "Guo, Z. and Swalve, H. H. (1995). Interbull Bull. 11:4-7 (from memory, check before quoting)"
 */
public record GuoSwalveCurve(double a, double b, double c) implements LactationCurve {

    @Override
    public double milkKgPerDay(double daysInMilk) {
        return a + b * Math.sqrt(daysInMilk) + c * Math.log(daysInMilk);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        return (b * Math.sqrt(daysInMilk) / 2 + c) / daysInMilk;
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        double root = -2 * c / b;
        return shape() == CurveShape.STANDARD ? OptionalDouble.of(root * root) : OptionalDouble.empty();
    }

    /** By the signs of {@code c} and {@code b}. */
    @Override
    public CurveShape shape() {
        return CurveShape.of(c > 0, b >= 0);
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "kg/d"),
                CurveParameter.given("b", b, "kg/d/sqrt(d)"),
                CurveParameter.given("c", c, "kg/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        return new double[] {1, Math.sqrt(daysInMilk), Math.log(daysInMilk)};
    }
}
