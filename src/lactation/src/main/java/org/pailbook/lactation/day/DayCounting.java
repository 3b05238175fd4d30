package org.pailbook.lactation.day;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** Which number the calving day bears. Published tables differ, so every figure names the one used. */
public enum DayCounting {
    /** The day after calving is day 1. Used throughout this library; ICAR's test interval example needs it. */
    CALVING_DAY_IS_0(0),
    /** The calving day itself is day 1. Only for reading tables that count so. */
    CALVING_DAY_IS_1(1);

    private final int calvingDayNumber;

    DayCounting(int calvingDayNumber) {
        this.calvingDayNumber = calvingDayNumber;
    }

    /** The number of {@code date} in a lactation that began on {@code calvingDate}; below the calving day's own before it. */
    public int dayNumber(LocalDate calvingDate, LocalDate date) {
        return Math.toIntExact(ChronoUnit.DAYS.between(calvingDate, date)) + calvingDayNumber;
    }
}
