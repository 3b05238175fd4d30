package org.pailbook.lactation.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Normalized Legendre polynomials of days in milk: {@code y(t) = sum c_j sqrt((2j+1)/2) P_j(x)}, {@code x = -1 + 2 (t - first) /
 * (last - first)}.
 *
 * <p>{@code y} in kg per day, {@code t} in days in milk. Any polynomial does poorly at and beyond the ends of the tests it was
 * fitted to. The same curve has other coefficients over another range of days, so the range belongs to it.
 *
 * @see "Kirkpatrick, M., Lofsvold, D. and Bulmer, M. (1990). Genetics 124:979-993, normalized Legendre polynomials (from memory)"
 * @see "Pool, M. H. and Meuwissen, T. H. E. (1999). J. Dairy Sci. 82:1555-1564, for test days (abstract)"
 */
public final class LegendreCurve implements LactationCurve {
    private final double firstDay;
    private final double lastDay;
    private final double[] coefficients;

    /**
     * @param firstDay day in milk at which {@code x = -1}
     * @param lastDay day in milk at which {@code x = 1}, after the first
     * @param coefficients {@code c_0} and on, kg per day; one more than the order
     */
    public LegendreCurve(double firstDay, double lastDay, double... coefficients) {
        if (!(lastDay > firstDay)) {
            throw new IllegalArgumentException("lastDay (" + lastDay + ") must be after firstDay (" + firstDay + ")");
        }
        if (coefficients.length == 0) {
            throw new IllegalArgumentException("coefficients must not be empty");
        }
        this.firstDay = firstDay;
        this.lastDay = lastDay;
        this.coefficients = coefficients.clone();
    }

    public int order() {
        return coefficients.length - 1;
    }

    @Override
    public double milkKgPerDay(double daysInMilk) {
        double x = reduced(daysInMilk);
        double before = 0;
        double polynomial = 1;
        double sum = 0;
        for (int j = 0; j < coefficients.length; j++) {
            sum += coefficients[j] * norm(j) * polynomial;
            double next = ((2 * j + 1) * x * polynomial - j * before) / (j + 1);
            before = polynomial;
            polynomial = next;
        }
        return sum;
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        double x = reduced(daysInMilk);
        double before = 0;
        double polynomial = 1;
        double slopeBefore = 0;
        double slope = 0;
        double sum = 0;
        for (int j = 0; j < coefficients.length; j++) {
            sum += coefficients[j] * norm(j) * slope;
            // P'_(j+1) = P'_(j-1) + (2 j + 1) P_j
            double nextSlope = slopeBefore + (2 * j + 1) * polynomial;
            double next = ((2 * j + 1) * x * polynomial - j * before) / (j + 1);
            slopeBefore = slope;
            slope = nextSlope;
            before = polynomial;
            polynomial = next;
        }
        return sum * 2 / (lastDay - firstDay);
    }

    private double reduced(double daysInMilk) {
        return -1 + 2 * (daysInMilk - firstDay) / (lastDay - firstDay);
    }

    private static double norm(int j) {
        return Math.sqrt((2 * j + 1) / 2.0);
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
        List<CurveParameter> parameters = new ArrayList<>();
        for (int j = 0; j < coefficients.length; j++) {
            parameters.add(CurveParameter.given("c" + j, coefficients[j], "kg/d"));
        }
        return List.copyOf(parameters);
    }

    /** The normalized polynomials themselves, {@code phi_0} and on. */
    @Override
    public double[] gradient(double daysInMilk) {
        double x = reduced(daysInMilk);
        double[] phi = new double[coefficients.length];
        double before = 0;
        double polynomial = 1;
        for (int j = 0; j < phi.length; j++) {
            phi[j] = norm(j) * polynomial;
            double next = ((2 * j + 1) * x * polynomial - j * before) / (j + 1);
            before = polynomial;
            polynomial = next;
        }
        return phi;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LegendreCurve curve
                && firstDay == curve.firstDay
                && lastDay == curve.lastDay
                && Arrays.equals(coefficients, curve.coefficients);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Double.hashCode(firstDay) + Double.hashCode(lastDay)) + Arrays.hashCode(coefficients);
    }

    @Override
    public String toString() {
        return "LegendreCurve[days " + firstDay + " to " + lastDay + ", " + Arrays.toString(coefficients) + "]";
    }
}
