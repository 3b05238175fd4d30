package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A cow that left the milking herd.
 *
 * @param animal she
 * @param date the day
 * @param destination where to, as recorded
 * @param died whether she died or was put down on the farm
 * @param reason the first reason, as recorded; empty text if none was
 */
public record HerdExit(String animal, LocalDate date, String destination, boolean died, String reason) {
    public HerdExit {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(destination, "destination");
        Objects.requireNonNull(reason, "reason");
    }
}
