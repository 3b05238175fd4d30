package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.DatedKind;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KnownAnimals;
import org.pailbook.records.store.StoredRecord;

/** Every record of a kind as a table, in the columns in which it may be sent in again. */
@ApplicationScoped
public class KindTables {
    private static final int PAGE_ROWS = 1_000;

    private final Map<String, RecordKind<?>> kinds;
    private final Events events;
    private final KnownAnimals animals;

    @Inject
    KindTables(Instance<RecordKind<?>> kinds, Events events, KnownAnimals animals) {
        this.kinds = kinds.stream().collect(Collectors.toMap(RecordKind::name, kind -> kind));
        this.events = events;
        this.animals = animals;
    }

    boolean isKind(String name) {
        return kinds.containsKey(name);
    }

    /** The kind of that name, if there is one. */
    public Optional<RecordKind<?>> kind(String name) {
        return Optional.ofNullable(kinds.get(name));
    }

    void write(RecordKind<?> kind, HerdRow herd, TableQuery query, OutputStream out) throws IOException {
        CsvTable table = new CsvTable(
                out,
                query.isWithSemicolons(),
                kind.columns().stream().map(Column::name).toList());
        if (kind instanceof DatedKind<?> dated) {
            writeDated(dated, herd, query, table);
        } else {
            writeAnimals(kind, herd, query, table);
        }
        table.end();
    }

    private <E extends DatedRecord> void writeDated(DatedKind<E> kind, HerdRow herd, TableQuery query, CsvTable table) {
        Events.Position after = null;
        List<E> page;
        do {
            page = events.list(kind.entity(), herd, query.after(after), PAGE_ROWS);
            writePage(kind, herd, page, table);
            if (!page.isEmpty()) {
                E last = page.get(page.size() - 1);
                after = new Events.Position(last.date, last.id);
            }
        } while (page.size() == PAGE_ROWS);
    }

    private <E extends StoredRecord> void writeAnimals(
            RecordKind<E> kind, HerdRow herd, TableQuery query, CsvTable table) {
        String after = "";
        List<AnimalRow> page;
        do {
            page = animals.page(herd, after, PAGE_ROWS, new KnownAnimals.Selection(false, query.asOf()));
            writePage(kind, herd, page.stream().map(kind.entity()::cast).toList(), table);
            after = page.isEmpty() ? after : page.get(page.size() - 1).id;
        } while (page.size() == PAGE_ROWS);
    }

    private <E extends StoredRecord> void writePage(RecordKind<E> kind, HerdRow herd, List<E> page, CsvTable table) {
        Set<String> named =
                page.stream().flatMap(record -> kind.animalId(record).stream()).collect(Collectors.toSet());
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(herd, named);
        List<Column> columns = kind.columns();
        for (E record : page) {
            ObjectNode content = kind.wire(record, shown::get);
            columns.forEach(column -> cell(table, column, content.at(column.pointer())));
            table.endRow();
        }
    }

    private static void cell(CsvTable table, Column column, JsonNode value) {
        table.cell(
                value.isMissingNode()
                        ? null
                        : switch (column.type()) {
                            case TEXT -> value.asText();
                            case NUMBER -> value.doubleValue();
                            case TRUTH -> value.booleanValue();
                        });
    }
}
