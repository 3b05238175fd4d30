package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Ali and Schaeffer's regression, {@code y(t) = p0 + p1 g + p2 g^2 + p3 w + p4 w^2} with {@code g = t / 305} and {@code w =
 * ln(305 / t)}.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk, above 0. Five parameters follow one cow closely and go wild outside her
 * tests: on day 1 the logarithms may give hundreds of kg. Some authors put 340 in place of 305; the parameters are then others.
 *
 * @param p0 kg per day, as are all
 * @param p1 of {@code g}
 * @param p2 of {@code g^2}
 * @param p3 of {@code w}
 * @param p4 of {@code w^2}
 * @see "Ali, T. E. and Schaeffer, L. R. (1987). Can. J. Anim. Sci. 67:637-644 (from memory, check before quoting)"
 */
public record AliSchaefferCurve(double p0, double p1, double p2, double p3, double p4) implements LactationCurve {
    /** Length of lactation in the paper's {@code g} and {@code w}, days. */
    private static final double LENGTH = 305;

    @Override
    public double milkKgPerDay(double daysInMilk) {
        double g = daysInMilk / LENGTH;
        double w = -Math.log(g);
        return p0 + g * (p1 + p2 * g) + w * (p3 + p4 * w);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        double g = daysInMilk / LENGTH;
        double w = -Math.log(g);
        return (p1 * g + 2 * p2 * g * g - p3 - 2 * p4 * w) / daysInMilk;
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return NumericPeak.of(this);
    }

    @Override
    public CurveShape shape() {
        return NumericPeak.shape(this);
    }

    @Override
    public List<CurveParameter> parameters() {
        return List.of(
                CurveParameter.given("p0", p0, "kg/d"),
                CurveParameter.given("p1", p1, "kg/d"),
                CurveParameter.given("p2", p2, "kg/d"),
                CurveParameter.given("p3", p3, "kg/d"),
                CurveParameter.given("p4", p4, "kg/d"));
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double g = daysInMilk / LENGTH;
        double w = -Math.log(g);
        return new double[] {1, g, g * g, w, w * w};
    }
}
