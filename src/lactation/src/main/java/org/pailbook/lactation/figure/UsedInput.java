package org.pailbook.lactation.figure;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * One input a figure was made from, or one that was looked at and left out.
 *
 * @param kind what it is, by its wire name: {@code test-day}, {@code calving}
 * @param date its day
 * @param whyLeftOut why it took no part; empty when it was used
 */
public record UsedInput(String kind, LocalDate date, Optional<String> whyLeftOut) {

    public UsedInput {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(whyLeftOut, "whyLeftOut");
    }

    public static UsedInput used(String kind, LocalDate date) {
        return new UsedInput(kind, date, Optional.empty());
    }

    public static UsedInput leftOut(String kind, LocalDate date, String why) {
        return new UsedInput(kind, date, Optional.of(why));
    }

    public boolean isUsed() {
        return whyLeftOut.isEmpty();
    }
}
