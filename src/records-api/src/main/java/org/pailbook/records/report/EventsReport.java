package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.BreedingDecisionRow;
import org.pailbook.records.store.CalvingRow;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.DryOffRow;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.ForemilkCheckRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.store.MilkingRow;
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.store.TreatmentRow;
import org.pailbook.records.wire.AsOf;

/** What happened to the cows, as entered. */
@ApplicationScoped
class EventsReport implements Report<EventsReport.Row> {
    private final Events events;
    private final KnownAnimals animals;

    @Inject
    EventsReport(Events events, KnownAnimals animals) {
        this.events = events;
        this.animals = animals;
    }

    /**
     * @param number the parity a calving was entered with; null for other events
     * @param kind of a departure
     * @param reason of a departure or of a choice not to breed
     * @param detail what was done or found, in the codes it was entered with
     * @param milkWithheldUntil of a treatment, as entered
     */
    record Row(
            AnimalIdentifier animal,
            AnimalEvent event,
            String what,
            Integer number,
            String kind,
            String reason,
            String note,
            String detail,
            LocalDate milkWithheldUntil) {}

    /** What a kind of event has to tell. */
    private record Told(
            Integer number, String kind, String reason, String note, String detail, LocalDate milkWithheldUntil) {
        static Told detail(String detail, String note) {
            return new Told(null, null, null, note, detail, null);
        }
    }

    @Override
    public String name() {
        return "events";
    }

    @Override
    public String meaning() {
        return "One event, as entered; calvings first, then dry-offs, departures, services, pregnancy checks, breeding decisions,"
                + " treatments, foremilk checks and milkings, each by date. Withholding days are those entered; none entered does not"
                + " say that the milk is safe";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(Row::animal),
                CowColumns.id(Row::animal),
                Column.date("date", "Day of the event, in the herd's zone", row -> Optional.of(row.event().date)),
                Column.text(
                        "event",
                        "calving, dry-off, departure, service, pregnancy-check, breeding-decision, treatment, foremilk-check, milking",
                        Row::what),
                Column.count("parity", "", "Of a calving, if it was entered", Row::number),
                Column.text("kind", "Of a departure: sale, slaughter, death, cullOnFarm, transfer, other", Row::kind),
                Column.text("reason", "Of a departure or breeding decision, as entered", Row::reason),
                Column.text("note", "As entered", Row::note),
                Column.text(
                        "detail",
                        "Method of a service, result of a check, decision, product and diagnosis, milking, quarter and finding, or kg milked",
                        Row::detail),
                Column.date(
                        "milk_withheld_until",
                        "Of a treatment, as entered from the label or the veterinarian; never computed",
                        row -> Optional.ofNullable(row.milkWithheldUntil())));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        walk(CalvingRow.class, "calving", herd, asOf, each, row -> new Told(row.parity, null, null, null, null, null));
        walk(DryOffRow.class, "dry-off", herd, asOf, each, row -> Told.detail(null, null));
        walk(
                DepartureRow.class,
                "departure",
                herd,
                asOf,
                each,
                row -> new Told(null, row.kind, row.reason, row.note, null, null));
        walk(ServiceRow.class, "service", herd, asOf, each, row -> Told.detail(words(row.method, row.sire), row.note));
        walk(
                PregnancyCheckRow.class,
                "pregnancy-check",
                herd,
                asOf,
                each,
                row -> Told.detail(words(row.result, row.method), row.note));
        walk(
                BreedingDecisionRow.class,
                "breeding-decision",
                herd,
                asOf,
                each,
                row -> new Told(null, null, row.reason, row.note, row.decision, null));
        walk(
                TreatmentRow.class,
                "treatment",
                herd,
                asOf,
                each,
                row -> new Told(
                        null, null, null, row.note, words(row.productName, row.diagnosis), row.milkWithheldUntil));
        walk(
                ForemilkCheckRow.class,
                "foremilk-check",
                herd,
                asOf,
                each,
                row -> Told.detail(words(row.milkingOfDay, row.quarter, row.finding, row.action), row.note));
        walk(
                MilkingRow.class,
                "milking",
                herd,
                asOf,
                each,
                row -> Told.detail(words(row.milkingOfDay, row.milkKg == null ? null : row.milkKg + " kg"), null));
    }

    private static String words(String... parts) {
        return Stream.of(parts).filter(Objects::nonNull).collect(Collectors.joining(", "));
    }

    private <E extends AnimalEvent> void walk(
            Class<E> kind, String what, HerdRow herd, AsOf asOf, Consumer<Row> each, Function<E, Told> told) {
        events.inParts(kind, herd, asOf.day(), some -> {
            Map<String, AnimalIdentifier> names = animals.shownIdentifiers(
                    herd, some.stream().map(event -> event.animalId).distinct().toList());
            for (E event : some) {
                Told of = told.apply(event);
                each.accept(new Row(
                        names.get(event.animalId),
                        event,
                        what,
                        of.number(),
                        of.kind(),
                        of.reason(),
                        of.note(),
                        of.detail(),
                        of.milkWithheldUntil()));
            }
        });
    }
}
