package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * A pregnancy check, by hand, ultrasound or a test of blood or milk.
 *
 * @param date the day
 * @param result what was found
 * @param daysPregnant age of the pregnancy as the veterinarian put it, if so; it outranks the dates of services
 */
public record PregnancyCheck(LocalDate date, Result result, OptionalInt daysPregnant) {

    /** What was found. */
    public enum Result {
        PREGNANT,
        OPEN,
        /** To be looked at again; it changes nothing. */
        DOUBTFUL
    }

    public PregnancyCheck {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(result, "result");
        Objects.requireNonNull(daysPregnant, "daysPregnant");
        if (daysPregnant.orElse(0) < 0) {
            throw new IllegalArgumentException("daysPregnant (" + daysPregnant.getAsInt() + ") must not be negative");
        }
    }

    public static PregnancyCheck of(LocalDate date, Result result) {
        return new PregnancyCheck(date, result, OptionalInt.empty());
    }
}
