package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.CalvingRow;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.DryOffRow;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
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

    /** @param number the parity a calving was entered with; null for other events */
    record Row(
            AnimalIdentifier animal,
            AnimalEvent event,
            String what,
            Integer number,
            String kind,
            String reason,
            String note) {}

    @Override
    public String name() {
        return "events";
    }

    @Override
    public String meaning() {
        return "One calving, dry-off or departure, as entered; calvings first, then dry-offs, then departures, each by date";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(Row::animal),
                CowColumns.id(Row::animal),
                Column.date("date", "Day of the event, in the herd's zone", row -> Optional.of(row.event().date)),
                Column.text("event", "calving, dry-off or departure", Row::what),
                Column.count("parity", "", "Of a calving, if it was entered", Row::number),
                Column.text("kind", "Of a departure: sale, slaughter, death, cullOnFarm, transfer, other", Row::kind),
                Column.text("reason", "Of a departure, as entered", Row::reason),
                Column.text("note", "As entered", Row::note));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        walk(
                CalvingRow.class,
                herd,
                asOf,
                each,
                names -> event -> new Row(names.get(event.animalId), event, "calving", event.parity, null, null, null));
        walk(
                DryOffRow.class,
                herd,
                asOf,
                each,
                names -> event -> new Row(names.get(event.animalId), event, "dry-off", null, null, null, null));
        walk(
                DepartureRow.class,
                herd,
                asOf,
                each,
                names -> event -> new Row(
                        names.get(event.animalId), event, "departure", null, event.kind, event.reason, event.note));
    }

    private <E extends AnimalEvent> void walk(
            Class<E> kind,
            HerdRow herd,
            AsOf asOf,
            Consumer<Row> each,
            Function<Map<String, AnimalIdentifier>, Function<E, Row>> rowOf) {
        events.inParts(kind, herd, asOf.day(), some -> {
            Map<String, AnimalIdentifier> names = animals.shownIdentifiers(
                    herd, some.stream().map(event -> event.animalId).distinct().toList());
            some.stream().map(rowOf.apply(names)).forEach(each);
        });
    }
}
