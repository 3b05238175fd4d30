package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.Objects;
import org.pailbook.lactation.figure.Interval;

/**
 * What a cow is expected to give on one day, as it would be weighed.
 *
 * @param date the day
 * @param daysInMilk the calving day being 0
 * @param milkKg expected milk of 24 hours, kg
 * @param interval80 of the weight, kg
 * @param interval95 of the weight, kg
 */
public record DayExpectation(LocalDate date, int daysInMilk, double milkKg, Interval interval80, Interval interval95) {
    public DayExpectation {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(interval80, "interval80");
        Objects.requireNonNull(interval95, "interval95");
    }
}
