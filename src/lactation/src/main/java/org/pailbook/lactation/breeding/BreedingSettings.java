package org.pailbook.lactation.breeding;

import java.util.OptionalInt;

/**
 * How a farm breeds its cows. Nothing here is a law: every number may be set, and one that was not is said.
 *
 * @param ownWaitingDays the farm's voluntary waiting period: days after calving before a cow is served on purpose; empty if not set
 * @param checkDays days after a service from which a pregnancy check is done; 35 by hand, 28 by ultrasound
 * @param dryDays days dry before calving; 40 to 70 are usual, 60 a long-standing standard
 */
public record BreedingSettings(OptionalInt ownWaitingDays, int checkDays, int dryDays) {
    /** Used where no waiting period is set; 50 to 60 are common practice, no source. */
    public static final int WAITING_DAYS_IF_NOT_SET = 50;

    /** No waiting period set, checks by hand, 60 days dry. */
    public static final BreedingSettings USUAL = new BreedingSettings(OptionalInt.empty(), 35, 60);

    public static final int MOST_WAITING_DAYS = 300;
    public static final int FEWEST_CHECK_DAYS = 18;
    public static final int MOST_CHECK_DAYS = 120;
    public static final int MOST_DRY_DAYS = 120;

    public BreedingSettings {
        if (ownWaitingDays.orElse(0) < 0 || ownWaitingDays.orElse(0) > MOST_WAITING_DAYS) {
            throw new IllegalArgumentException(
                    "ownWaitingDays (" + ownWaitingDays.getAsInt() + ") must be 0 to " + MOST_WAITING_DAYS);
        }
        if (checkDays < FEWEST_CHECK_DAYS || checkDays > MOST_CHECK_DAYS) {
            throw new IllegalArgumentException(
                    "checkDays (" + checkDays + ") must be " + FEWEST_CHECK_DAYS + " to " + MOST_CHECK_DAYS);
        }
        if (dryDays < 0 || dryDays > MOST_DRY_DAYS) {
            throw new IllegalArgumentException("dryDays (" + dryDays + ") must be 0 to " + MOST_DRY_DAYS);
        }
    }

    public int waitingDays() {
        return ownWaitingDays.orElse(WAITING_DAYS_IF_NOT_SET);
    }

    public BreedingSettings withWaitingDays(int days) {
        return new BreedingSettings(OptionalInt.of(days), checkDays, dryDays);
    }

    public BreedingSettings withCheckDays(int days) {
        return new BreedingSettings(ownWaitingDays, days, dryDays);
    }

    public BreedingSettings withDryDays(int days) {
        return new BreedingSettings(ownWaitingDays, checkDays, days);
    }
}
