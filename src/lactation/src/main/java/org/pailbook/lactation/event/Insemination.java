package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A service: an insemination, or a natural one that was seen.
 *
 * @param date the day
 * @param sireBreed breed of the bull, ICAR code or name; empty text if not recorded
 */
public record Insemination(LocalDate date, String sireBreed) {
    public Insemination {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(sireBreed, "sireBreed");
    }

    /** By a bull of unknown breed. */
    public static Insemination on(LocalDate date) {
        return new Insemination(date, "");
    }
}
