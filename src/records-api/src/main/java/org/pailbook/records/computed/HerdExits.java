package org.pailbook.records.computed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.culling.ExitExperience;
import org.pailbook.lactation.culling.ExitExperience.Stretch;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;

/**
 * A herd's own exits over cow-months, of the year to a day. Unplanned are cows that died or were put down, and those that went for their
 * health; sales, moves, and cows that went for milk, fertility or age are chosen, or are what the value of a cow decides itself (ours).
 */
@ApplicationScoped
class HerdExits {
    private static final int YEAR_DAYS = 365;
    private static final List<String> MOVED = List.of("sale", "transfer");
    /** Of the ICAR departure reason list. */
    private static final List<String> OF_HEALTH =
            List.of("Health", "Mastitis", "LegOrClaw", "Parturition", "Nutrition");

    private final Events events;

    @Inject
    HerdExits(Events events) {
        this.events = events;
    }

    /**
     * @param cows the herd's animals, also those that left
     * @return empty if no departure of the year is recorded: that is not recorded, and not none
     */
    Optional<ExitExperience> of(HerdRow herd, List<CowOnDay> cows, LocalDate asOf) {
        LocalDate from = asOf.minusDays(YEAR_DAYS - 1L);
        Map<String, List<DepartureRow>> departures = events.byAnimal(DepartureRow.class, herd, asOf);
        boolean isAnyOfTheYear =
                departures.values().stream().flatMap(List::stream).anyMatch(row -> !row.date.isBefore(from));
        if (!isAnyOfTheYear) {
            return Optional.empty();
        }
        List<Stretch> stretches = new ArrayList<>();
        for (CowOnDay cow : cows) {
            addStretches(cow, departures.getOrDefault(cow.animal(), List.of()), asOf, stretches);
        }
        return Optional.of(ExitExperience.of(stretches, from, asOf));
    }

    private static void addStretches(
            CowOnDay cow, List<DepartureRow> departures, LocalDate asOf, List<Stretch> stretches) {
        List<Lactation> lactations = cow.lactations().lactations().stream()
                .map(one -> one.lactation())
                .toList();
        for (int i = 0; i < lactations.size(); i++) {
            LocalDate calving = lactations.get(i).calvingDate();
            LocalDate next = i + 1 < lactations.size() ? lactations.get(i + 1).calvingDate() : asOf.plusDays(1);
            Optional<DepartureRow> left = departures.stream()
                    .filter(row -> !row.date.isBefore(calving) && row.date.isBefore(next))
                    .findFirst();
            stretches.add(new Stretch(
                    lactations.get(i).parity(),
                    calving,
                    left.map(row -> row.date).orElse(next),
                    left.filter(HerdExits::isUnplanned).isPresent()));
        }
    }

    private static boolean isUnplanned(DepartureRow row) {
        return row.isDeath() || !MOVED.contains(row.kind) && OF_HEALTH.contains(row.reason);
    }
}
