package org.pailbook.records.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.store.TestDayRow;

/** What is recorded of one day: of the herd, or of one cow. */
@ApplicationScoped
public class DayRecords {
    /**
     * Of one cow.
     *
     * @param test hers; empty without one
     * @param milkings hers
     */
    record OfCow(Optional<TestDayRow> test, List<MilkingRow> milkings) {
        /** The milking of that part of the day; the first if there are several. */
        Optional<MilkingRow> milking(SheetCell cell) {
            return milkings.stream().filter(cell::isOf).findFirst();
        }

        Map<SheetCell, Double> values() {
            Map<SheetCell, Double> values = new EnumMap<>(SheetCell.class);
            for (SheetCell cell : SheetCell.values()) {
                Double value = cell.isMilking()
                        ? milking(cell).map(milking -> milking.milkKg).orElse(null)
                        : test.map(cell::in).orElse(null);
                if (value != null) {
                    values.put(cell, value);
                }
            }
            return values;
        }
    }

    private final Events events;

    @Inject
    DayRecords(Events events) {
        this.events = events;
    }

    OfCow ofCow(HerdRow herd, String animalId, LocalDate day) {
        return new OfCow(
                events.allOf(animalId, TestDayRow.class, herd, day, day).stream()
                        .findFirst(),
                events.allOf(animalId, MilkingRow.class, herd, day, day));
    }

    /** What is recorded of every cow, by our id of her. */
    public Map<String, Map<SheetCell, Double>> values(HerdRow herd, LocalDate day) {
        Map<String, TestDayRow> tests = new HashMap<>();
        events.all(TestDayRow.class, herd, day, day).forEach(test -> tests.put(test.animalId, test));
        Map<String, List<MilkingRow>> milkings = new HashMap<>();
        events.all(MilkingRow.class, herd, day, day)
                .forEach(milking -> milkings.computeIfAbsent(milking.animalId, any -> new ArrayList<>())
                        .add(milking));
        Map<String, Map<SheetCell, Double>> values = new HashMap<>();
        tests.forEach((animal, test) ->
                values.put(animal, new OfCow(Optional.of(test), milkings.getOrDefault(animal, List.of())).values()));
        milkings.forEach((animal, hers) ->
                values.computeIfAbsent(animal, any -> new OfCow(Optional.empty(), hers).values()));
        return values;
    }

    /** The cows weighed on a day, in the order in which that was first written down. */
    List<String> writingOrder(HerdRow herd, LocalDate day) {
        List<AnimalEvent> all = new ArrayList<>(events.all(TestDayRow.class, herd, day, day));
        all.addAll(events.all(MilkingRow.class, herd, day, day));
        // ids rise with the time of the first version, whatever was corrected later
        return all.stream()
                .sorted(Comparator.comparing(event -> event.id))
                .map(event -> event.animalId)
                .distinct()
                .toList();
    }
}
