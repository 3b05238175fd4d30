package org.pailbook.lactation.curve;

/** From one day in milk to another, both included. */
final class DaySpan {
    private DaySpan() {}

    static void require(int fromDaysInMilk, int toDaysInMilk) {
        if (fromDaysInMilk < 1) {
            throw new IllegalArgumentException("fromDaysInMilk (" + fromDaysInMilk + ") must be at least 1");
        }
        if (toDaysInMilk < fromDaysInMilk) {
            throw new IllegalArgumentException(
                    "toDaysInMilk (" + toDaysInMilk + ") must be at least fromDaysInMilk (" + fromDaysInMilk + ")");
        }
    }

    static int count(int fromDaysInMilk, int toDaysInMilk) {
        return toDaysInMilk - fromDaysInMilk + 1;
    }

    /** Sum of the day numbers; 46,665 for days 1 to 305. */
    static double sumOfDays(int fromDaysInMilk, int toDaysInMilk) {
        return ((double) fromDaysInMilk + toDaysInMilk) * count(fromDaysInMilk, toDaysInMilk) / 2;
    }

    /** Sum of {@code exp(-rate t)} over the days: a geometric series. */
    static double sumOfDecay(double ratePerDay, int fromDaysInMilk, int toDaysInMilk) {
        int count = count(fromDaysInMilk, toDaysInMilk);
        // expm1 keeps the digits when the rate is small, where 1 - exp(-rate) would lose them
        return ratePerDay == 0
                ? count
                : Math.exp(-ratePerDay * fromDaysInMilk) * Math.expm1(-ratePerDay * count) / Math.expm1(-ratePerDay);
    }
}
