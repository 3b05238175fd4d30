package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The milkings of one cow on one day that were weighed, of those there were.
 *
 * @param date the day
 * @param milkingsPerDay how often she was milked that day, 1 or more
 * @param milkings those weighed, at most one a session
 * @param daysInMilk day of her lactation, if known
 */
public record MilkedDay(LocalDate date, int milkingsPerDay, List<Milking> milkings, OptionalInt daysInMilk) {

    public MilkedDay {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(daysInMilk, "daysInMilk");
        milkings = List.copyOf(milkings);
        if (milkingsPerDay < 1 || milkings.size() > milkingsPerDay) {
            throw new IllegalArgumentException("milkingsPerDay (" + milkingsPerDay
                    + ") must be at least 1 and at least the milkings weighed (" + milkings.size() + ")");
        }
        if (milkings.stream().map(Milking::session).distinct().count() < milkings.size()) {
            throw new IllegalArgumentException("milkings (" + milkings + ") must not hold a session twice");
        }
    }

    public boolean isWeighedWhole() {
        return milkings.size() == milkingsPerDay;
    }

    public Optional<Milking> milking(Milking.Session session) {
        return milkings.stream().filter(milking -> milking.session() == session).findFirst();
    }
}
