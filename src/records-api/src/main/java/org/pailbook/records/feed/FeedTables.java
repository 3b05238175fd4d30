package org.pailbook.records.feed;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.exchange.CsvTable;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CalvingRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.AsOf;

/** Writes the tables; columns are only ever added before the tail that every table ends with. */
@ApplicationScoped
class FeedTables {
    private static final int PAGE_ROWS = 1_000;
    private static final List<String> ANIMAL = List.of("animal_scheme", "animal_id");
    private static final List<String> TAIL = List.of("as_of", "method", "method_version", "warnings");

    private final KnownAnimals animals;
    private final Events events;
    private final CowRecords records;
    private final HerdLearning learning;

    @Inject
    FeedTables(KnownAnimals animals, Events events, CowRecords records, HerdLearning learning) {
        this.animals = animals;
        this.events = events;
        this.records = records;
        this.learning = learning;
    }

    void write(FeedReport report, HerdRow herd, AsOf asOf, OutputStream out, boolean semicolon) throws IOException {
        switch (report) {
            case ANIMALS -> animals(herd, asOf, begin(out, semicolon, "name", "breed", "sex", "birth_date"));
            case TEST_DAYS ->
                testDays(
                        herd,
                        asOf,
                        begin(
                                out,
                                semicolon,
                                "date",
                                "days_in_milk",
                                "milk_kg",
                                "fat_pct",
                                "protein_pct",
                                "lactose_pct",
                                "scc_thousand_per_ml"));
            case LACTATIONS ->
                lactations(
                        herd,
                        asOf,
                        begin(
                                out,
                                semicolon,
                                "parity",
                                "calved_on",
                                "ended_on",
                                "days_in_milk",
                                "tests",
                                "milk_kg",
                                "fat_kg",
                                "protein_kg"));
            case PROJECTIONS ->
                projections(
                        herd,
                        asOf,
                        begin(
                                out,
                                semicolon,
                                "parity",
                                "calved_on",
                                "days_in_milk",
                                "tests",
                                "projected_305_kg",
                                "projected_305_low_kg",
                                "projected_305_high_kg",
                                "projected_305_low95_kg",
                                "projected_305_high95_kg"));
        }
    }

    private static CsvTable begin(OutputStream out, boolean semicolon, String... columns) throws IOException {
        List<String> all = new ArrayList<>(ANIMAL);
        all.addAll(List.of(columns));
        all.addAll(TAIL);
        return new CsvTable(out, semicolon, all);
    }

    private void animals(HerdRow herd, AsOf asOf, CsvTable table) throws IOException {
        String after = "";
        for (List<AnimalRow> page = animals.page(herd, after, PAGE_ROWS, false); !page.isEmpty(); ) {
            for (AnimalRow animal : page) {
                AnimalIdentifier shown = animal.identifiers.isEmpty()
                        ? new AnimalIdentifier("id", animal.id)
                        : animal.identifiers.get(0);
                table.text(shown.scheme())
                        .text(shown.id())
                        .text(animal.name)
                        .text(animal.breed)
                        .text(animal.sex)
                        .date(animal.birthDate);
                endPlain(table, asOf);
            }
            after = page.get(page.size() - 1).id;
            page = animals.page(herd, after, PAGE_ROWS, false);
        }
        table.end();
    }

    private void testDays(HerdRow herd, AsOf asOf, CsvTable table) throws IOException {
        Map<String, TreeSet<LocalDate>> calvings = new HashMap<>();
        eachEvent(
                CalvingRow.class,
                herd,
                asOf,
                page -> page.forEach(calving -> calvings.computeIfAbsent(calving.animalId, unknown -> new TreeSet<>())
                        .add(calving.date)));
        eachEvent(TestDayRow.class, herd, asOf, page -> {
            Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(
                    herd, page.stream().map(test -> test.animalId).distinct().toList());
            for (TestDayRow test : page) {
                AnimalIdentifier animal = shown.getOrDefault(test.animalId, new AnimalIdentifier("id", test.animalId));
                LocalDate calved =
                        calvings.getOrDefault(test.animalId, new TreeSet<>()).floor(test.date);
                table.text(animal.scheme())
                        .text(animal.id())
                        .date(test.date)
                        .whole(calved == null ? null : DaysInMilk.on(calved, test.date))
                        .number(test.milkKg)
                        .number(test.fatPct)
                        .number(test.proteinPct)
                        .number(test.lactosePct)
                        .number(test.sccThousandPerMl);
                endPlain(table, asOf);
            }
        });
        table.end();
    }

    private <E extends AnimalEvent> void eachEvent(
            Class<E> kind, HerdRow herd, AsOf asOf, java.util.function.Consumer<List<E>> take) {
        Events.Position after = null;
        List<E> page;
        do {
            page = events.list(kind, herd, new Events.Selection(null, null, asOf.day(), after, false), PAGE_ROWS);
            take.accept(page);
            if (!page.isEmpty()) {
                E last = page.get(page.size() - 1);
                after = new Events.Position(last.date, last.id);
            }
        } while (page.size() == PAGE_ROWS);
    }

    private void lactations(HerdRow herd, AsOf asOf, CsvTable table) throws IOException {
        for (CowRecord record : records.ofHerd(herd, asOf.day())) {
            CowOnDay cow = record.onDay(asOf.day());
            for (AssembledLactation one : cow.lactations().lactations()) {
                AccumulatedYield yield = cow.accumulated(one);
                begin(table, record, one);
                LocalDate end = one.lactation().endDate().orElse(null);
                table.date(end)
                        .whole(DaysInMilk.on(one.lactation().calvingDate(), end == null ? asOf.day() : end))
                        .whole(one.lactation().testDays().size())
                        .number(yield.milk().value(), 1)
                        .number(yield.fat().value(), 1)
                        .number(yield.protein().value(), 1);
                endComputed(table, asOf, yield.milk(), one.findings());
            }
        }
        table.end();
    }

    private void projections(HerdRow herd, AsOf asOf, CsvTable table) throws IOException {
        List<CowRecord> all = records.ofHerd(herd, asOf.day());
        List<CowOnDay> cows = learning.teach(
                herd,
                asOf.day(),
                all.stream().map(record -> record.onDay(asOf.day())).toList());
        for (int i = 0; i < cows.size(); i++) {
            CowOnDay cow = cows.get(i);
            if (cow.state() == CowState.IN_MILK) {
                AssembledLactation latest = cow.lactations().latest().orElseThrow();
                Projection305 projection = cow.milkProjection(latest);
                Figure milk = projection.milk305();
                begin(table, all.get(i), latest);
                table.whole(cow.daysInMilk().orElseThrow())
                        .whole(projection.tests())
                        .number(milk.value(), 0);
                for (Coverage coverage : List.of(Coverage.EIGHTY_PERCENT, Coverage.NINETY_FIVE_PERCENT)) {
                    var interval = milk.interval(coverage.share());
                    table.number(optional(interval.map(Interval::low).orElse(null)), 0)
                            .number(optional(interval.map(Interval::high).orElse(null)), 0);
                }
                endComputed(table, asOf, milk, latest.findings());
            }
        }
        table.end();
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static void begin(CsvTable table, CowRecord record, AssembledLactation lactation) {
        table.text(record.shownIdentifier().scheme())
                .text(record.shownIdentifier().id())
                .whole(lactation.lactation().parity())
                .date(lactation.lactation().calvingDate());
    }

    private static void endPlain(CsvTable table, AsOf asOf) {
        table.date(asOf.day()).text(null).text(null).text(null).endRow();
    }

    private static void endComputed(CsvTable table, AsOf asOf, Figure figure, List<Finding> more) {
        table.date(asOf.day())
                .text(figure.method().id())
                .whole(figure.method().version())
                .text(Stream.concat(more.stream(), figure.findings().stream())
                        .map(finding -> finding.code().code())
                        .distinct()
                        .collect(Collectors.joining(" ")))
                .endRow();
    }
}
