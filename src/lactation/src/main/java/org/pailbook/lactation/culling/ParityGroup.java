package org.pailbook.lactation.culling;

import java.util.Objects;

/**
 * What cows of one parity do in a herd.
 *
 * @param milk what a mean cow gives in each month
 * @param bodyWeightKg live weight
 * @param unplannedExitSharePerMonth chance to die or have to leave within a month, from month 3 on
 * @param pregnancyRate21DayShare chance of an open, eligible cow to conceive within 21 days
 */
public record ParityGroup(
        MilkByMonth milk, double bodyWeightKg, double unplannedExitSharePerMonth, double pregnancyRate21DayShare) {
    private static final double CYCLE_DAYS = 21;

    public ParityGroup {
        Objects.requireNonNull(milk, "milk");
        if (!(bodyWeightKg > 0 && bodyWeightKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("bodyWeightKg (" + bodyWeightKg + ") must be above 0");
        }
        Shares.require("unplannedExitSharePerMonth", unplannedExitSharePerMonth);
        Shares.require("pregnancyRate21DayShare", pregnancyRate21DayShare);
    }

    /** Chance to conceive within a month of 30.4375 days: {@code 1 - (1 - rate)^(30.4375/21)}. */
    public double conceptionSharePerMonth() {
        return 1 - Math.pow(1 - pregnancyRate21DayShare, StageGrid.DAYS_PER_MONTH / CYCLE_DAYS);
    }
}
