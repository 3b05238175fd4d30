package org.pailbook.lactation.event;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Objects;
import java.util.Optional;

/**
 * When withheld milk may go in the tank again, as the user entered it from the label or the veterinarian. It is never worked out.
 *
 * @param date the day
 * @param time the time on it; empty if only a day was entered, then that whole day is still withheld
 */
public record WithholdingEnd(LocalDate date, Optional<LocalTime> time) {
    public WithholdingEnd {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(time, "time");
    }

    /** Withheld through that day. */
    public static WithholdingEnd through(LocalDate date) {
        return new WithholdingEnd(date, Optional.empty());
    }

    /** Withheld up to that moment. */
    public static WithholdingEnd at(LocalDateTime moment) {
        return new WithholdingEnd(moment.toLocalDate(), Optional.of(moment.toLocalTime()));
    }

    /** Whether the time entered is over at that moment; the moment itself is. */
    public boolean isOver(LocalDateTime moment) {
        return !moment.isBefore(over());
    }

    /** The first moment that is not withheld any more. */
    public LocalDateTime over() {
        return time.map(date::atTime).orElseGet(() -> date.plusDays(1).atStartOfDay());
    }

    /** As entered: a day, or a day and a time. */
    public String text() {
        return time.map(clock -> date + " " + clock).orElse(date.toString());
    }
}
