package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The days on which a cow could have become pregnant on purpose: from the end of the waiting period to her conception, and again from the
 * day after a loss; up to the day before she left, calved or was put aside. Days on which she was put aside for a time count nowhere.
 */
final class DaysAtRisk {
    /**
     * A run of such days.
     *
     * @param from first day
     * @param to last day; of a run that ended in a conception the day of it
     * @param conceived whether it ended so
     */
    record Run(LocalDate from, LocalDate to, boolean conceived) {}

    private final List<Run> runs;
    private final LocalDate lastDay;
    private final boolean conceivedEarly;
    private final List<PutAside> putAside;

    private DaysAtRisk(List<Run> runs, LocalDate lastDay, boolean conceivedEarly, List<PutAside> putAside) {
        this.runs = runs;
        this.lastDay = lastDay;
        this.conceivedEarly = conceivedEarly;
        this.putAside = putAside;
    }

    /** Of one period up to a day; none for a heifer, who has no waiting period. */
    static DaysAtRisk of(BreedingPeriod period, int waitingDays, LocalDate upTo) {
        LocalDate lastDay =
                period.lastDayAtRisk().filter(day -> day.isBefore(upTo)).orElse(upTo);
        List<Run> runs = new ArrayList<>();
        boolean before = false;
        Optional<LocalDate> from = period.waitingEnd(waitingDays);
        for (Pregnancy pregnancy : period.pregnancies()) {
            if (from.isEmpty()) {
                break;
            }
            Optional<LocalDate> conception = pregnancy.conception();
            if (conception.isPresent()) {
                boolean early = conception.get().isBefore(from.get());
                before |= early;
                if (!early && !conception.get().isAfter(lastDay)) {
                    boolean onPurpose = period.putAside().stream().noneMatch(time -> time.holdsOn(conception.get()));
                    runs.add(new Run(from.get(), conception.get(), onPurpose));
                } else if (!early && !from.get().isAfter(lastDay)) {
                    runs.add(new Run(from.get(), lastDay, false));
                }
            }
            // without a known conception it is not known how long she was at risk: those days count nowhere
            LocalDate waitingEnd = from.get();
            from = pregnancy
                    .lostOn()
                    .map(lost -> lost.plusDays(1))
                    .map(day -> day.isBefore(waitingEnd) ? waitingEnd : day);
        }
        from.filter(day -> !day.isAfter(lastDay)).ifPresent(day -> runs.add(new Run(day, lastDay, false)));
        return new DaysAtRisk(runs, lastDay, before, period.putAside());
    }

    /** Whether a pregnancy of the period began before the waiting period ended. */
    boolean conceivedEarly() {
        return conceivedEarly;
    }

    List<Run> runs() {
        return runs;
    }

    /** The first run, cut off where she was put aside; empty if she was so when it began. */
    Optional<Run> first() {
        if (runs.isEmpty()) {
            return Optional.empty();
        }
        Run run = runs.get(0);
        return putAside.stream()
                .filter(time -> time.days(run.from(), run.to()) > 0)
                .findFirst()
                .map(time -> Optional.of(new Run(run.from(), time.from().minusDays(1), false))
                        .filter(cut -> !cut.to().isBefore(cut.from())))
                .orElse(Optional.of(run));
    }

    private long days(LocalDate first, LocalDate last) {
        long aside = 0;
        for (PutAside time : putAside) {
            aside += time.days(first, last);
        }
        return Math.max(0, ChronoUnit.DAYS.between(first, last) + 1) - aside;
    }

    /** Days at risk in a cycle, her own conception in it not shortening them. */
    int inCycle(LocalDate first, LocalDate last) {
        LocalDate end = last.isBefore(lastDay) ? last : lastDay;
        for (Run run : runs) {
            if (!run.from().isAfter(end) && !run.to().isBefore(first)) {
                LocalDate from = run.from().isAfter(first) ? run.from() : first;
                LocalDate to = run.conceived() ? end : run.to().isBefore(end) ? run.to() : end;
                return Math.toIntExact(days(from, to));
            }
        }
        return 0;
    }

    /** Days at risk from one day to another, the day of conception the last. */
    int between(LocalDate first, LocalDate last) {
        long days = 0;
        for (Run run : runs) {
            LocalDate from = run.from().isAfter(first) ? run.from() : first;
            LocalDate to = run.to().isBefore(last) ? run.to() : last;
            days += days(from, to);
        }
        return Math.toIntExact(days);
    }

    /** Conceptions at risk from one day to another. */
    int conceptions(LocalDate first, LocalDate last) {
        int count = 0;
        for (Run run : runs) {
            count += run.conceived() && !run.to().isBefore(first) && !run.to().isAfter(last) ? 1 : 0;
        }
        return count;
    }
}
