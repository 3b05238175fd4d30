package org.pailbook.records.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.MilkUseRow;
import org.pailbook.records.store.TankPickupRow;
import org.pailbook.records.store.TankReadingRow;

/** Adds up the weights of a day and lays what the tank said beside them. */
@ApplicationScoped
public class DayTotals {
    private final DayRecords days;
    private final WeighDaySheets sheets;
    private final Events events;

    @Inject
    DayTotals(DayRecords days, WeighDaySheets sheets, Events events) {
        this.days = days;
        this.sheets = sheets;
        this.events = events;
    }

    /** @param milkings how many there are a day */
    public DayTotal of(HerdRow herd, LocalDate day, int milkings) {
        Collection<Map<SheetCell, Double>> weighed = days.values(herd, day).values().stream()
                .filter(values -> values.keySet().stream().anyMatch(SheetCell::isMilk))
                .toList();
        return new DayTotal(
                sheets.countInMilk(herd, day),
                weighed.size(),
                (int) weighed.stream()
                        .filter(values -> isPart(values, milkings))
                        .count(),
                weighed.stream().mapToDouble(DayTotals::milkKg).sum(),
                events.all(MilkUseRow.class, herd, day, day).stream()
                        .filter(row -> row.milkKg != null)
                        .mapToDouble(row -> row.milkKg)
                        .sum(),
                tank(herd, day));
    }

    private static boolean isPart(Map<SheetCell, Double> values, int milkings) {
        return !values.containsKey(SheetCell.DAY)
                && values.keySet().stream().filter(SheetCell::isMilk).count() < milkings;
    }

    /** The weight of the whole day, as everywhere, goes before those of its milkings. */
    private static double milkKg(Map<SheetCell, Double> values) {
        return values.containsKey(SheetCell.DAY)
                ? values.get(SheetCell.DAY)
                : values.entrySet().stream()
                        .filter(value -> value.getKey().isMilk())
                        .mapToDouble(Map.Entry::getValue)
                        .sum();
    }

    private List<DayTotal.TankAmount> tank(HerdRow herd, LocalDate day) {
        List<DayTotal.TankAmount> amounts = new ArrayList<>();
        list(TankReadingRow.class, herd, day)
                .forEach(row -> amounts.add(new DayTotal.TankAmount(
                        false, row.tank, row.readAt, optional(row.milkKg), optional(row.milkLitres))));
        list(TankPickupRow.class, herd, day)
                .forEach(row -> amounts.add(new DayTotal.TankAmount(
                        true, row.tank, row.pickedUpAt, optional(row.milkKg), optional(row.milkLitres))));
        amounts.removeIf(
                amount -> amount.milkKg().isEmpty() && amount.milkLitres().isEmpty());
        amounts.sort(Comparator.comparing(DayTotal.TankAmount::at));
        return amounts;
    }

    private <E extends DatedRecord> List<E> list(Class<E> kind, HerdRow herd, LocalDate day) {
        return events.all(kind, herd, day, day.plusDays(1));
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
