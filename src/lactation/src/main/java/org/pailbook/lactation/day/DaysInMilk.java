package org.pailbook.lactation.day;

import java.time.LocalDate;

/** Days in milk: whole days since calving, the calving day being day 0. */
public final class DaysInMilk {
    /** The last day of a standard lactation; the standard since 1935 (Cole, Null and VanRaden 2009, abstract). */
    public static final int STANDARD_LACTATION_DAYS = 305;

    /** The first day whose milk counts as milk and not colostrum; ICAR's lower limit for a first recording, from memory. */
    public static final int FIRST_DAY_AFTER_COLOSTRUM = 5;

    private DaysInMilk() {}

    /** @return days in milk on that date; 0 on the calving day, negative before it */
    public static int on(LocalDate calvingDate, LocalDate date) {
        return DayCounting.CALVING_DAY_IS_0.dayNumber(calvingDate, date);
    }

    /** The date of that day in milk. */
    public static LocalDate dateOf(LocalDate calvingDate, int daysInMilk) {
        return calvingDate.plusDays(daysInMilk);
    }
}
