package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One cow from a calving to the next, or a heifer to her first: her services and pregnancies in it.
 *
 * @param animal tells her from the others
 * @param parity calvings so far; 0 for a heifer
 * @param calving the calving it began with; empty for a heifer
 * @param services in order of day
 * @param pregnancies in order of day; the last may go on
 * @param nextCalving the calving that ended it
 * @param leftOn the day she left the herd in it
 * @param putAside times in it in which she was not to be served, by the farm's choice; in order of day
 */
public record BreedingPeriod(
        String animal,
        int parity,
        Optional<LocalDate> calving,
        List<CountedService> services,
        List<Pregnancy> pregnancies,
        Optional<LocalDate> nextCalving,
        Optional<LocalDate> leftOn,
        List<PutAside> putAside) {

    public BreedingPeriod {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(calving, "calving");
        services = List.copyOf(services);
        pregnancies = List.copyOf(pregnancies);
        Objects.requireNonNull(nextCalving, "nextCalving");
        Objects.requireNonNull(leftOn, "leftOn");
        putAside = List.copyOf(putAside);
    }

    /** The pregnancy that goes on. */
    public Optional<Pregnancy> goingOn() {
        return pregnancies.isEmpty()
                ? Optional.empty()
                : Optional.of(pregnancies.get(pregnancies.size() - 1)).filter(Pregnancy::goesOn);
    }

    public Optional<CountedService> lastService() {
        return services.isEmpty() ? Optional.empty() : Optional.of(services.get(services.size() - 1));
    }

    /** The farm's choice not to have her served, while it holds. */
    public Optional<PutAside> notToBeBred() {
        return putAside.isEmpty()
                ? Optional.empty()
                : Optional.of(putAside.get(putAside.size() - 1))
                        .filter(time -> time.until().isEmpty());
    }

    /** First day after the waiting period; empty for a heifer. */
    Optional<LocalDate> waitingEnd(int waitingDays) {
        return calving.map(day -> day.plusDays(waitingDays));
    }

    /** Last day on which she could have been served on purpose: the day before she left, calved or was put aside for good; empty while none of these. */
    Optional<LocalDate> lastDayAtRisk() {
        return Stream.of(nextCalving, leftOn, notToBeBred().map(PutAside::from))
                .flatMap(Optional::stream)
                .min(LocalDate::compareTo)
                .map(day -> day.minusDays(1));
    }
}
