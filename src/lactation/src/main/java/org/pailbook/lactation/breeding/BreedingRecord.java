package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.finding.Finding;

/**
 * One animal's breeding on a day: her periods between calvings, and where she stands now.
 *
 * @param animal tells her from the others of the herd; any text
 * @param asOf later events took no part
 * @param breed ICAR code or name; empty text if not recorded
 * @param periods in order of day; the last is the present one
 * @param isDry dried off since her last calving
 * @param findings what is contradictory or had to be worked out
 */
public record BreedingRecord(
        String animal,
        LocalDate asOf,
        String breed,
        List<BreedingPeriod> periods,
        boolean isDry,
        List<Finding> findings) {

    /** Calvings nearer than this are one, entered twice; as for lactations. */
    private static final int SAME_CALVING_DAYS = 30;

    /** Where she stands. */
    public enum State {
        LEFT,
        PREGNANT,
        /** Served, and not known whether she took. */
        SERVED,
        OPEN
    }

    private record Start(LocalDate day, OptionalInt parity, boolean calved) {}

    public BreedingRecord {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(asOf, "asOf");
        Objects.requireNonNull(breed, "breed");
        periods = List.copyOf(periods);
        findings = List.copyOf(findings);
        if (periods.isEmpty()) {
            throw new IllegalArgumentException(
                    "periods must not be empty: a heifer has the one before her first calving");
        }
    }

    /** Puts her events together as they stood on a day. */
    public static BreedingRecord of(String animal, BreedingHistory history, LocalDate asOf) {
        BreedingHistory known = history.asOf(asOf);
        List<Start> starts = starts(known);
        List<Finding> findings = new ArrayList<>();
        List<BreedingPeriod> periods = new ArrayList<>();
        int parity = 0;
        for (int i = -1; i < starts.size(); i++) {
            Optional<Start> from = i < 0 ? Optional.empty() : Optional.of(starts.get(i));
            Optional<Start> to = i + 1 < starts.size() ? Optional.of(starts.get(i + 1)) : Optional.empty();
            parity = from.isPresent() ? from.get().parity().orElse(parity + 1) : 0;
            periods.add(period(animal, known, from, to, parity, findings));
        }
        LocalDate lastStart =
                starts.isEmpty() ? LocalDate.MIN : starts.get(starts.size() - 1).day();
        boolean dry = known.dryOffs().stream()
                .map(DryOff::date)
                .anyMatch(day -> !starts.isEmpty() && !day.isBefore(lastStart));
        return new BreedingRecord(animal, asOf, known.breed(), periods, dry, findings);
    }

    private static List<Start> starts(BreedingHistory known) {
        List<Start> all = Stream.concat(
                        known.calvings().stream().map(calving -> new Start(calving.date(), calving.parity(), true)),
                        known.abortions().stream()
                                .filter(Abortion::startsLactation)
                                .map(abortion -> new Start(abortion.date(), OptionalInt.empty(), false)))
                .sorted(Comparator.comparing(Start::day))
                .toList();
        List<Start> starts = new ArrayList<>();
        for (Start start : all) {
            if (starts.isEmpty()
                    || ChronoUnit.DAYS.between(starts.get(starts.size() - 1).day(), start.day()) >= SAME_CALVING_DAYS) {
                starts.add(start);
            }
        }
        return starts;
    }

    private record Step(LocalDate day, int order, Runnable what) {}

    private static BreedingPeriod period(
            String animal,
            BreedingHistory known,
            Optional<Start> from,
            Optional<Start> to,
            int parity,
            List<Finding> findings) {
        PeriodWalk walk = new PeriodWalk();
        List<Step> steps = new ArrayList<>();
        // on one day: what was found, then what was lost, then what was done about it
        known.checks()
                .forEach(check -> steps.add(new Step(check.date(), 0, () -> {
                    switch (check.result()) {
                        case PREGNANT -> walk.foundPregnant(check.date(), check.daysPregnant());
                        case OPEN -> walk.foundOpen(check.date());
                        case DOUBTFUL -> {}
                    }
                })));
        known.abortions()
                .forEach(abortion -> steps.add(
                        new Step(abortion.date(), 1, () -> walk.aborted(abortion.date(), abortion.daysPregnant()))));
        known.inseminations().forEach(service -> steps.add(new Step(service.date(), 2, () -> walk.served(service))));
        steps.stream()
                .filter(step -> from.isEmpty() || step.day().isAfter(from.get().day()))
                .filter(step -> to.isEmpty() || !step.day().isAfter(to.get().day()))
                // on the day of the calving itself only what belongs to the pregnancy it ended
                .filter(step -> to.isEmpty()
                        || step.order() < 2
                        || step.day().isBefore(to.get().day()))
                .sorted(Comparator.comparing(Step::day).thenComparing(Step::order))
                .forEach(step -> step.what().run());
        // how a heifer without services came in calf is of no use to anybody
        to.filter(start ->
                        start.calved() && (from.isPresent() || !walk.services().isEmpty()))
                .ifPresent(calving -> walk.calved(
                        calving.day(), GestationLength.NORMAN_2009.expectedDays(known.breed(), "", parity == 0)));
        findings.addAll(walk.findings());
        return new BreedingPeriod(
                animal,
                parity,
                from.map(Start::day),
                walk.services(),
                walk.pregnancies(),
                to.map(Start::day),
                within(known.departures().stream().map(Departure::date), from, to),
                PutAside.of(known.decisions()).stream()
                        .flatMap(time -> time.within(from.map(Start::day), to.map(Start::day)).stream())
                        .toList());
    }

    private static Optional<LocalDate> within(Stream<LocalDate> days, Optional<Start> from, Optional<Start> to) {
        return days.filter(day -> from.isEmpty() || !day.isBefore(from.get().day()))
                .filter(day -> to.isEmpty() || day.isBefore(to.get().day()))
                .max(Comparator.naturalOrder());
    }

    /** The period she is in. */
    public BreedingPeriod now() {
        return periods.get(periods.size() - 1);
    }

    public State state() {
        if (now().leftOn().isPresent()) {
            return State.LEFT;
        }
        if (now().goingOn().isPresent()) {
            return State.PREGNANT;
        }
        return now().lastService()
                .filter(service -> service.outcome() == CountedService.Outcome.UNKNOWN)
                .map(service -> State.SERVED)
                .orElse(State.OPEN);
    }

    /** Days in milk, or since calving if she is dry; empty for a heifer. */
    public OptionalInt daysSinceCalving() {
        return now().calving().isPresent()
                ? OptionalInt.of(
                        Math.toIntExact(ChronoUnit.DAYS.between(now().calving().get(), asOf)))
                : OptionalInt.empty();
    }

    /** Days since she was last served in this period. */
    public OptionalInt daysSinceService() {
        return now().lastService().isPresent()
                ? OptionalInt.of(Math.toIntExact(
                        ChronoUnit.DAYS.between(now().lastService().get().date(), asOf)))
                : OptionalInt.empty();
    }

    /** Her next calving, while she is pregnant and it is known since when. */
    public Optional<ExpectedCalving> expectedCalving() {
        return state() == State.PREGNANT
                ? now().goingOn().flatMap(pregnancy -> ExpectedCalving.of(pregnancy, breed, now().parity() == 0))
                : Optional.empty();
    }
}
