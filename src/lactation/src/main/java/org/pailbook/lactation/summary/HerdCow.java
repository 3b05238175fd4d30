package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.persistency.HerdStay;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.Lactation;

/**
 * A cow with the times she was in the milking herd: from her first calving on record to a departure, and again from a calving after it.
 * A cow bought in milk is there from the calving on record, since purchases are not known here.
 *
 * @param cow as she was on the day
 * @param stays in order; none for a heifer
 */
public record HerdCow(CowOnDay cow, List<HerdStay> stays) {
    public HerdCow {
        Objects.requireNonNull(cow, "cow");
        stays = List.copyOf(stays);
    }

    /** @param history hers; events after the cow's day take no part */
    public static HerdCow of(CowOnDay cow, CowHistory history) {
        List<Lactation> lactations = cow.lactations().lactations().stream()
                .map(AssembledLactation::lactation)
                .toList();
        List<LocalDate> departures = history.asOf(cow.asOf()).departures().stream()
                .map(Departure::date)
                .distinct()
                .sorted(Comparator.naturalOrder())
                .toList();
        List<HerdStay> stays = new ArrayList<>();
        LocalDate from = LocalDate.MIN;
        for (int i = 0; i <= departures.size(); i++) {
            Optional<LocalDate> exit = i < departures.size() ? Optional.of(departures.get(i)) : Optional.empty();
            LocalDate after = from;
            List<Lactation> during = lactations.stream()
                    .filter(one -> !one.calvingDate().isBefore(after))
                    .filter(one -> exit.isEmpty() || !one.calvingDate().isAfter(exit.get()))
                    .toList();
            if (!during.isEmpty()) {
                stays.add(new HerdStay(during.get(0).calvingDate(), exit, during));
            }
            from = exit.map(day -> day.plusDays(1)).orElse(from);
        }
        return new HerdCow(cow, stays);
    }

    /** Whether she was in the milking herd on that day; the day of a departure is not hers. */
    public boolean isThereOn(LocalDate day) {
        return stays.stream().anyMatch(stay -> stay.cowDays(day, day) == 1);
    }

    /** The lactation she was in, or dry after, on that day. */
    public Optional<Lactation> lactationOn(LocalDate day) {
        return cow.lactations().lactations().stream()
                .map(AssembledLactation::lactation)
                .filter(one -> !one.calvingDate().isAfter(day))
                .reduce((earlier, later) -> later);
    }

    /** Whether she was there and dry on that day. */
    public boolean isDryOn(LocalDate day) {
        return isThereOn(day)
                && lactationOn(day)
                        .flatMap(Lactation::endDate)
                        .filter(end -> end.isBefore(day))
                        .isPresent();
    }
}
