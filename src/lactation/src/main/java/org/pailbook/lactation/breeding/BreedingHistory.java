package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.pailbook.lactation.event.Abortion;
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
 * @param doNotBreedFrom first day on which the farm will not have her served; empty while it will
 */
public record BreedingHistory(
        String breed,
        List<Calving> calvings,
        List<Insemination> inseminations,
        List<PregnancyCheck> checks,
        List<Abortion> abortions,
        List<DryOff> dryOffs,
        List<Departure> departures,
        Optional<LocalDate> doNotBreedFrom) {

    /** Nothing on record. */
    public static final BreedingHistory NONE =
            new BreedingHistory("", List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), Optional.empty());

    public BreedingHistory {
        Objects.requireNonNull(breed, "breed");
        Objects.requireNonNull(doNotBreedFrom, "doNotBreedFrom");
        calvings = sorted(calvings, Calving::date);
        inseminations = sorted(inseminations, Insemination::date);
        checks = sorted(checks, PregnancyCheck::date);
        abortions = sorted(abortions, Abortion::date);
        dryOffs = sorted(dryOffs, DryOff::date);
        departures = sorted(departures, Departure::date);
    }

    private static <E> List<E> sorted(List<E> events, Function<E, LocalDate> date) {
        return events.stream()
                .distinct()
                .sorted(Comparator.comparing(date).thenComparing(Object::toString))
                .toList();
    }

    private static <E> List<E> upTo(LocalDate day, List<E> events, Function<E, LocalDate> date) {
        return events.stream().filter(event -> !date.apply(event).isAfter(day)).toList();
    }

    /** What was on record on that day, by the days of the events. */
    public BreedingHistory asOf(LocalDate day) {
        return new BreedingHistory(
                breed,
                upTo(day, calvings, Calving::date),
                upTo(day, inseminations, Insemination::date),
                upTo(day, checks, PregnancyCheck::date),
                upTo(day, abortions, Abortion::date),
                upTo(day, dryOffs, DryOff::date),
                upTo(day, departures, Departure::date),
                doNotBreedFrom.filter(from -> !from.isAfter(day)));
    }

    public BreedingHistory withBreed(String name) {
        return new BreedingHistory(
                name, calvings, inseminations, checks, abortions, dryOffs, departures, doNotBreedFrom);
    }

    public BreedingHistory withCalvings(List<Calving> all) {
        return new BreedingHistory(breed, all, inseminations, checks, abortions, dryOffs, departures, doNotBreedFrom);
    }

    public BreedingHistory withInseminations(List<Insemination> all) {
        return new BreedingHistory(breed, calvings, all, checks, abortions, dryOffs, departures, doNotBreedFrom);
    }

    public BreedingHistory withChecks(List<PregnancyCheck> all) {
        return new BreedingHistory(breed, calvings, inseminations, all, abortions, dryOffs, departures, doNotBreedFrom);
    }

    public BreedingHistory withAbortions(List<Abortion> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, all, dryOffs, departures, doNotBreedFrom);
    }

    public BreedingHistory withDryOffs(List<DryOff> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, abortions, all, departures, doNotBreedFrom);
    }

    public BreedingHistory withDepartures(List<Departure> all) {
        return new BreedingHistory(breed, calvings, inseminations, checks, abortions, dryOffs, all, doNotBreedFrom);
    }

    /** The farm will not have her served from that day on. */
    public BreedingHistory withDoNotBreedFrom(LocalDate day) {
        return new BreedingHistory(
                breed, calvings, inseminations, checks, abortions, dryOffs, departures, Optional.of(day));
    }
}
