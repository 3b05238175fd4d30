package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * A pregnancy lost. Whether it starts a lactation is for the farm to say, or for its national rule.
 *
 * @param date the day
 * @param daysPregnant days since conception, if known
 * @param startsLactation she is milked from then on as after a calving, and the farm says so
 */
public record Abortion(LocalDate date, OptionalInt daysPregnant, boolean startsLactation) {
    public Abortion {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(daysPregnant, "daysPregnant");
        if (daysPregnant.orElse(0) < 0) {
            throw new IllegalArgumentException("daysPregnant (" + daysPregnant.getAsInt() + ") must not be negative");
        }
    }
}
