package org.pailbook.records.event;

import java.time.LocalDate;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.intake.ValueChecks;
import org.pailbook.records.store.AnimalEvent;

/** Holds the days from a dry-off to the next calving against the usual ones, whichever of the two was entered later. */
final class DryPeriod {
    private DryPeriod() {}

    /**
     * Does nothing if she calved in between, so that the two have nothing to do with each other.
     *
     * @param replacedId the calving that is being replaced; null for none
     */
    static void check(
            Posted<? extends AnimalEvent> posted,
            String dayMember,
            LocalDate driedOff,
            LocalDate calved,
            String replacedId,
            Surroundings surroundings) {
        boolean isBroken = surroundings
                .calvingOnOrBefore(posted.record().animalId, calved.minusDays(1), replacedId)
                .filter(between -> between.isAfter(driedOff))
                .isPresent();
        if (!isBroken) {
            ValueChecks.warn(
                    posted,
                    "dryPeriodDays",
                    dayMember,
                    DaysInMilk.on(driedOff, calved),
                    "makes an unusual dry period, from " + driedOff + " to " + calved);
        }
    }
}
