package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The end of milking in a lactation.
 *
 * @param date the last day on which she was milked
 */
public record DryOff(LocalDate date) {
    public DryOff {
        Objects.requireNonNull(date, "date");
    }
}
