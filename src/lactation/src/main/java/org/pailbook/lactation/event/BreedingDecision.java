package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The farm's choice whether a cow is to be served, from a day on, until another one is recorded.
 *
 * @param date first day it holds
 * @param isToBeBred false: she is put aside and not to be served
 * @param reason as entered; empty text if not recorded
 */
public record BreedingDecision(LocalDate date, boolean isToBeBred, String reason) {
    public BreedingDecision {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(reason, "reason");
    }

    /** She is not to be served from that day on. */
    public static BreedingDecision notToBreed(LocalDate date, String reason) {
        return new BreedingDecision(date, false, reason);
    }

    /** She may be served again from that day on. */
    public static BreedingDecision breedAgain(LocalDate date) {
        return new BreedingDecision(date, true, "");
    }
}
