package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * A calving; it starts a lactation.
 *
 * @param date the calving day, day 0 of the lactation
 * @param parity number of calvings including this one, when it was recorded
 */
public record Calving(LocalDate date, OptionalInt parity) {
    public Calving {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(parity, "parity");
        if (parity.isPresent() && parity.getAsInt() < 1) {
            throw new IllegalArgumentException("parity (" + parity.getAsInt() + ") must be at least 1");
        }
    }

    public static Calving on(LocalDate date) {
        return new Calving(date, OptionalInt.empty());
    }
}
