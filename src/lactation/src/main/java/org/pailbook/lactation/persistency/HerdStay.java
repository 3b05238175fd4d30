package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.testday.Lactation;

/**
 * One cow's time in the milking herd.
 *
 * @param entryDate the day she came: her first calving, or her purchase as a cow; counted
 * @param exitDate the day she left; not counted. Empty while she is there
 * @param lactations those she had there, any order
 */
public record HerdStay(LocalDate entryDate, Optional<LocalDate> exitDate, List<Lactation> lactations) {

    public HerdStay {
        Objects.requireNonNull(entryDate, "entryDate");
        Objects.requireNonNull(exitDate, "exitDate");
        lactations = List.copyOf(lactations);
        if (exitDate.isPresent() && exitDate.get().isBefore(entryDate)) {
            throw new IllegalArgumentException(
                    "exitDate (" + exitDate.get() + ") must not be before entryDate (" + entryDate + ")");
        }
    }

    /** Days she was there from one day to another, both included; the day of entry counts, the day of exit does not. */
    public long cowDays(LocalDate fromDate, LocalDate toDate) {
        LocalDate from = entryDate.isAfter(fromDate) ? entryDate : fromDate;
        LocalDate afterLast = toDate.plusDays(1);
        LocalDate until = exitDate.filter(exit -> exit.isBefore(afterLast)).orElse(afterLast);
        return Math.max(0, ChronoUnit.DAYS.between(from, until));
    }
}
