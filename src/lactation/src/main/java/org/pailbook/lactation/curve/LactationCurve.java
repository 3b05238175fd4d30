package org.pailbook.lactation.curve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A lactation curve with known parameters: how much milk a cow gives on each day after calving.
 *
 * <p>A curve is arithmetic. It answers for any day, also for days on which it means nothing; which of its figures may be shown is
 * decided by {@link CurveFit}. Implementations are immutable, and equal when their parameters are.
 */
public interface LactationCurve {
    /**
     * Milk of the 24 hours of one day.
     *
     * @param daysInMilk day 1 or later; parts of days are allowed
     * @return kg; may be negative far from the days the curve was made for
     */
    double milkKgPerDay(double daysInMilk);

    /** How fast the daily milk changes on that day, kg per day per day: positive while it rises. */
    double slopeKgPerDayPerDay(double daysInMilk);

    /**
     * The day of the highest milk, if the curve has an inner peak. Curves with a closed form give it wherever it lies, also
     * before day 1 or far after drying off; the others look for the highest point of days 1 to 305 and give nothing if that is
     * day 1 or day 305.
     */
    OptionalDouble peakDaysInMilk();

    /** Milk on the {@link #peakDaysInMilk()}, kg per day. */
    default OptionalDouble peakMilkKgPerDay() {
        OptionalDouble day = peakDaysInMilk();
        return day.isPresent() ? OptionalDouble.of(milkKgPerDay(day.getAsDouble())) : day;
    }

    /** Whether it rises to a peak and falls, or does something else. */
    CurveShape shape();

    /**
     * Expected milk from one day to another, both included.
     *
     * @param fromDaysInMilk first day, 1 or later
     * @param toDaysInMilk last day, not before the first
     * @return kg; the sum of the daily values, not the integral (the two differ by about half of first plus last day)
     * @throws IllegalArgumentException if the days are out of order or below 1
     */
    default double totalKg(int fromDaysInMilk, int toDaysInMilk) {
        DaySpan.require(fromDaysInMilk, toDaysInMilk);
        double sum = 0;
        for (int day = fromDaysInMilk; day <= toDaysInMilk; day++) {
            sum += milkKgPerDay(day);
        }
        return sum;
    }

    /** The parameters, named and ordered as in the paper; one that fits hold fixed comes last. */
    List<CurveParameter> parameters();

    /**
     * How the milk of one day changes with each parameter: the row of that day in a least squares design.
     *
     * @param daysInMilk day 1 or later
     * @return kg per day per unit of the parameter, in the order of {@link #parameters()}; a fresh array
     */
    double[] gradient(double daysInMilk);
}
