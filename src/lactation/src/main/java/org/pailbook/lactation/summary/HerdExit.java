package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

/**
 * A cow that left the milking herd.
 *
 * @param animal she
 * @param date the day
 * @param destination where to, as recorded
 * @param died whether she died or was put down on the farm
 * @param reasons as recorded, the one that counts first; none if none was
 */
public record HerdExit(String animal, LocalDate date, String destination, boolean died, List<String> reasons) {
    public HerdExit {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(destination, "destination");
        reasons = List.copyOf(reasons);
    }

    /** The first one; empty text if none was recorded. */
    String firstReason() {
        return reasons.isEmpty() ? "" : reasons.get(0);
    }
}
