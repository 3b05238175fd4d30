package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The cow left the herd: sold, slaughtered, died.
 *
 * @param date the day she left
 */
public record Departure(LocalDate date) {
    public Departure {
        Objects.requireNonNull(date, "date");
    }
}
