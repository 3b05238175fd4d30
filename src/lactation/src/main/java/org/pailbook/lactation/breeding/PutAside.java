package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.event.BreedingDecision;

/**
 * A time in which a cow was not to be served, by the farm's choice.
 *
 * @param from first day
 * @param until first day on which she may be served again; empty while none is recorded
 * @param reason of the choice as entered; empty text if not recorded
 */
public record PutAside(LocalDate from, Optional<LocalDate> until, String reason) {
    public PutAside {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(until, "until");
        Objects.requireNonNull(reason, "reason");
        if (until.isPresent() && !until.get().isAfter(from)) {
            throw new IllegalArgumentException("until (" + until.get() + ") must be after from (" + from + ")");
        }
    }

    /** @param decisions in order of day; of several on one day the last holds */
    static List<PutAside> of(List<BreedingDecision> decisions) {
        List<PutAside> times = new ArrayList<>();
        Optional<BreedingDecision> since = Optional.empty();
        for (BreedingDecision decision : decisions) {
            if (since.isPresent() && decision.isToBeBred()) {
                if (decision.date().isAfter(since.get().date())) {
                    times.add(new PutAside(
                            since.get().date(),
                            Optional.of(decision.date()),
                            since.get().reason()));
                }
                since = Optional.empty();
            } else if (since.isEmpty() && !decision.isToBeBred()) {
                since = Optional.of(decision);
            }
        }
        since.ifPresent(last -> times.add(new PutAside(last.date(), Optional.empty(), last.reason())));
        return times;
    }

    /** The part of it from one day to before another; empty if there is none. */
    Optional<PutAside> within(Optional<LocalDate> start, Optional<LocalDate> end) {
        LocalDate first = start.filter(day -> day.isAfter(from)).orElse(from);
        boolean isOutside = until.filter(day -> !day.isAfter(first)).isPresent()
                || end.filter(day -> !day.isAfter(first)).isPresent();
        return isOutside ? Optional.empty() : Optional.of(new PutAside(first, until, reason));
    }

    /** Days of it from one day to another, both included. */
    long days(LocalDate first, LocalDate last) {
        LocalDate start = from.isAfter(first) ? from : first;
        LocalDate afterLast = last.plusDays(1);
        LocalDate end = until.filter(day -> day.isBefore(afterLast)).orElse(afterLast);
        return Math.max(0, ChronoUnit.DAYS.between(start, end));
    }

    boolean holdsOn(LocalDate day) {
        return days(day, day) == 1;
    }
}
