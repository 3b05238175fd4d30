package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.pailbook.lactation.day.UpTo;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.BreedingDecision;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;

/**
 * Everything on record of one animal that tells of breeding. Kept sorted by day, and what was entered twice is there once, so the order
 * of entry and a record sent again change nothing.
 *
 * @param breed ICAR code or name; empty text if not recorded
 * @param decisions of the farm, whether she is to be served
 */
public record BreedingHistory(
        String breed,
        List<Calving> calvings,
        List<Insemination> inseminations,
        List<PregnancyCheck> checks,
        List<Abortion> abortions,
        List<DryOff> dryOffs,
        List<Departure> departures,
        List<BreedingDecision> decisions) {

    /** Nothing on record. */
    public static final BreedingHistory NONE =
            new BreedingHistory("", List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    public BreedingHistory {
        Objects.requireNonNull(breed, "breed");
        calvings = sorted(calvings, Calving::date);
        inseminations = sorted(inseminations, Insemination::date);
        checks = sorted(checks, PregnancyCheck::date);
        abortions = sorted(abortions, Abortion::date);
        dryOffs = sorted(dryOffs, DryOff::date);
        departures = sorted(departures, Departure::date);
        decisions = sorted(decisions, BreedingDecision::date);
    }

    private static <E> List<E> sorted(List<E> events, Function<E, LocalDate> date) {
        if (events.size() < 2) {
            return List.copyOf(events);
        }
        return events.stream()
                .distinct()
                .sorted(Comparator.comparing(date).thenComparing(Object::toString))
                .toList();
    }

    /** What was on record on that day, by the days of the events. */
    public BreedingHistory asOf(LocalDate day) {
        return new BreedingHistory(
                breed,
                UpTo.day(day, calvings, Calving::date),
                UpTo.day(day, inseminations, Insemination::date),
                UpTo.day(day, checks, PregnancyCheck::date),
                UpTo.day(day, abortions, Abortion::date),
                UpTo.day(day, dryOffs, DryOff::date),
                UpTo.day(day, departures, Departure::date),
                UpTo.day(day, decisions, BreedingDecision::date));
    }

    public BreedingHistory withBreed(String name) {
        return new BreedingHistory(name, calvings, inseminations, checks, abortions, dryOffs, departures, decisions);
    }

    public BreedingHistory withCalvings(List<Calving> all) {
        return new BreedingHistory(breed, all, inseminations, checks, abortions, dryOffs, departures, decisions);
    }

    public BreedingHistory withInseminations(List<Insemination> all) {
        return new BreedingHistory(breed, calvings, all, checks, abortions, dryOffs, departures, decisions);
    }

    public BreedingHistory withChecks(List<PregnancyCheck> all) {
        return new BreedingHistory(breed, calvings, inseminations, all, abortions, dryOffs, departures, decisions);
    }

    public BreedingHistory withAbortions(List<Abortion> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, all, dryOffs, departures, decisions);
    }

    public BreedingHistory withDryOffs(List<DryOff> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, abortions, all, departures, decisions);
    }

    public BreedingHistory withDepartures(List<Departure> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, abortions, dryOffs, all, decisions);
    }

    public BreedingHistory withDecisions(List<BreedingDecision> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, abortions, dryOffs, departures, all);
    }
}
