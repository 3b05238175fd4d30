package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Nelder's inverse polynomial, {@code y(t) = t / (a + b t + c t^2)}: starts at nothing, peaks at {@code sqrt(a / c)}.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, above 0. Where the denominator is not above zero the value has no
 * meaning.
 *
 * @param a days per (kg per day), rules the rise; above 0 in a usual lactation
 * @param b one over (kg per day)
 * @param c one over (kg per day) and day, rules the decline; above 0 in a usual lactation
 * @see "Nelder, J. A. (1966). Biometrics 22:128-141 (from memory, check before quoting)"
 */
public record NelderCurve(double a, double b, double c) implements LactationCurve {

    @Override
    public double milkKgPerDay(double daysInMilk) {
        return daysInMilk / denominator(daysInMilk);
    }

    private double denominator(double daysInMilk) {
        return a + daysInMilk * (b + c * daysInMilk);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        double denominator = denominator(daysInMilk);
        return (a - c * daysInMilk * daysInMilk) / (denominator * denominator);
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return shape() == CurveShape.STANDARD && b + 2 * Math.sqrt(a * c) > 0
                ? OptionalDouble.of(Math.sqrt(a / c))
                : OptionalDouble.empty();
    }

    /** By the signs of {@code a} and {@code c}. */
    @Override
    public CurveShape shape() {
        return CurveShape.of(a > 0, c <= 0);
    }

    /** Whether the denominator stays above zero from one day to another, so that the milk in between is finite and above zero. */
    boolean isFiniteBetween(double fromDaysInMilk, double toDaysInMilk) {
        double least = Math.min(denominator(fromDaysInMilk), denominator(toDaysInMilk));
        double vertex = -b / (2 * c);
        if (c > 0 && vertex > fromDaysInMilk && vertex < toDaysInMilk) {
            least = denominator(vertex);
        }
        return least > 0;
    }

    /**
     * Integral of the curve, kg, in closed form: with a logarithm or an arc tangent, by the sign of {@code b^2 - 4 a c}. Not the
     * sum of the days.
     *
     * @throws IllegalStateException unless {@code c > 0} and the denominator stays above zero
     */
    public double integralKg(double fromDaysInMilk, double toDaysInMilk) {
        if (!(c > 0) || !isFiniteBetween(fromDaysInMilk, toDaysInMilk)) {
            throw new IllegalStateException(
                    this + " has no closed integral from " + fromDaysInMilk + " to " + toDaysInMilk);
        }
        return antiderivative(toDaysInMilk) - antiderivative(fromDaysInMilk);
    }

    private double antiderivative(double t) {
        double discriminant = b * b - 4 * a * c;
        double root = Math.sqrt(Math.abs(discriminant));
        double line = 2 * c * t + b;
        double inner;
        if (discriminant > 0) {
            inner = Math.log(Math.abs((line - root) / (line + root))) / root;
        } else if (discriminant < 0) {
            inner = 2 * Math.atan(line / root) / root;
        } else {
            inner = -2 / line;
        }
        return Math.log(denominator(t)) / (2 * c) - b / (2 * c) * inner;
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("a", a, "d2/kg"),
                CurveParameter.given("b", b, "d/kg"),
                CurveParameter.given("c", c, "1/kg"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double milk = milkKgPerDay(daysInMilk);
        double perB = -milk * milk;
        return new double[] {perB / daysInMilk, perB, perB * daysInMilk};
    }
}
