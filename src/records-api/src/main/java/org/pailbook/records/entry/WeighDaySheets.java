package org.pailbook.records.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.lactation.projection.DayExpectation;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;

/** Makes the sheet of a day: who is in milk, in the chosen order, and what each is expected to give. */
@ApplicationScoped
public class WeighDaySheets {
    /** A cow in milk, with her last weigh day before the day of the sheet. */
    private record InMilk(CowRecord record, Optional<LocalDate> lastTest) {
        String tag() {
            return record.shownIdentifier().id();
        }

        String name() {
            return record.name().orElse("");
        }
    }

    private final CowRecords records;
    private final HerdLearning learning;
    private final DayRecords days;

    @Inject
    WeighDaySheets(CowRecords records, HerdLearning learning, DayRecords days) {
        this.records = records;
        this.learning = learning;
        this.days = days;
    }

    /** @param part number of the part to be shown, from 1; the last one if there are fewer */
    public Sheet of(HerdRow herd, LocalDate day, EntryChoice choice, int part) {
        List<InMilk> cows = ordered(inMilk(herd, day), herd, choice);
        int parts = Math.max(1, (cows.size() + Sheet.ROWS - 1) / Sheet.ROWS);
        int shown = Math.min(part, parts);
        List<InMilk> some = cows.subList((shown - 1) * Sheet.ROWS, Math.min(cows.size(), shown * Sheet.ROWS));
        return new Sheet(cows.size(), shown, parts, rows(herd, day, some));
    }

    /** The cows in milk in the chosen order, by our id, each with the identifier by which she is shown. */
    public List<SheetRow> order(HerdRow herd, LocalDate day, EntryChoice choice) {
        return ordered(inMilk(herd, day), herd, choice).stream()
                .map(cow -> row(cow, Optional.empty(), Map.of()))
                .toList();
    }

    /** How many cows are in milk. */
    int countInMilk(HerdRow herd, LocalDate day) {
        return inMilk(herd, day).size();
    }

    private List<InMilk> inMilk(HerdRow herd, LocalDate day) {
        List<InMilk> cows = new ArrayList<>();
        records.inParts(
                herd,
                day,
                (animals, some) -> some.stream()
                        .filter(cow -> cow.isBornBy(day) && cow.onDay(day).state() == CowState.IN_MILK)
                        .forEach(cow -> cows.add(new InMilk(cow, lastTest(cow, day)))));
        return cows;
    }

    private static Optional<LocalDate> lastTest(CowRecord cow, LocalDate day) {
        return cow.history().testDays().stream()
                .map(TestDay::date)
                .filter(date -> date.isBefore(day))
                .max(Comparator.naturalOrder());
    }

    private List<InMilk> ordered(List<InMilk> cows, HerdRow herd, EntryChoice choice) {
        Comparator<InMilk> byTag = Comparator.comparing(InMilk::tag, TagOrder.BY_NUMBERS);
        Comparator<InMilk> order = switch (choice.order()) {
            case TAG -> byTag;
            case NAME ->
                Comparator.comparing((InMilk cow) -> cow.name().isEmpty())
                        .thenComparing(InMilk::name, TagOrder.BY_NUMBERS)
                        .thenComparing(byTag);
            case LAST -> byPlace(lastOrder(cows, herd)).thenComparing(byTag);
            case OWN -> byPlace(choice.own()).thenComparing(byTag);
        };
        return cows.stream().sorted(order).toList();
    }

    /** Cows without a place come last. */
    private static Comparator<InMilk> byPlace(List<String> order) {
        Map<String, Integer> places = new HashMap<>();
        order.forEach(id -> places.putIfAbsent(id, places.size()));
        return Comparator.comparingInt(cow -> places.getOrDefault(cow.record().id(), Integer.MAX_VALUE));
    }

    private List<String> lastOrder(List<InMilk> cows, HerdRow herd) {
        return cows.stream()
                .flatMap(cow -> cow.lastTest().stream())
                .max(Comparator.naturalOrder())
                .map(last -> days.writingOrder(herd, last))
                .orElse(List.of());
    }

    private List<SheetRow> rows(HerdRow herd, LocalDate day, List<InMilk> cows) {
        if (cows.isEmpty()) {
            return List.of();
        }
        Map<String, Map<SheetCell, Double>> values = days.values(herd, day);
        LocalDate before = day.minusDays(1);
        HerdKnowledge knowledge = learning.of(herd, before);
        return cows.stream()
                .map(cow -> row(
                        cow,
                        expected(cow.record(), knowledge, before, day),
                        values.getOrDefault(cow.record().id(), Map.of())))
                .toList();
    }

    /** By what was known the day before: a weight must not be what it is held against. */
    private static Optional<DayExpectation> expected(
            CowRecord cow, HerdKnowledge knowledge, LocalDate before, LocalDate day) {
        CowOnDay known = cow.onDay(before).withHerd(knowledge);
        return known.lactations()
                .latest()
                .filter(latest -> latest.end() == AssembledLactation.End.IN_MILK)
                .flatMap(latest -> known.milkProjection(latest).onDate(day));
    }

    private static SheetRow row(InMilk cow, Optional<DayExpectation> expected, Map<SheetCell, Double> values) {
        return new SheetRow(cow.record().id(), cow.record().shownIdentifier(), cow.name(), expected, values);
    }
}
