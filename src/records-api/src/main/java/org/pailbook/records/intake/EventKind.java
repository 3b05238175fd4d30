package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** A kind of record about one animal on one day: animal and day are its natural key. */
public abstract class EventKind<E extends AnimalEvent> extends RecordKind<E> {
    /** Natural key. */
    private record AnimalAndDay(String animalId, LocalDate date) {}

    /** An empty record. */
    protected abstract E newRecord();

    /** Reads what the kind has besides animal, date and source. */
    protected abstract void readDetails(Fields fields, E record);

    /** Writes what the kind has besides animal and date. */
    protected abstract void writeDetails(E record, ObjectNode content);

    /** Checks what is particular to the kind; animal and date are known to be there and the common checks are done. */
    protected abstract void checkDetails(Posted<E> posted, E replaced, Surroundings surroundings);

    /** The columns besides those for animal, date and source. */
    protected abstract List<Column> detailColumns();

    @Override
    public final List<Column> columns() {
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("animal_scheme", "animal", "scheme"),
                Column.text("animal_id", "animal", "id"),
                Column.text("date", "date")));
        columns.addAll(detailColumns());
        columns.add(Column.text("source", "source"));
        columns.add(Column.text("source_id", "sourceId"));
        return columns;
    }

    @Override
    protected final E readContent(Fields fields) {
        E record = newRecord();
        record.date = fields.requiredDate("date");
        readDetails(fields, record);
        return record;
    }

    @Override
    protected final void writeContent(E record, ObjectNode content) {
        content.put(ANIMAL_ID, record.animalId);
        content.put("date", record.date.toString());
        writeDetails(record, content);
    }

    @Override
    protected final boolean namesAnimal() {
        return true;
    }

    @Override
    protected final void assignAnimal(E record, String animalId) {
        record.animalId = animalId;
    }

    @Override
    protected final List<?> naturalKeys(E record) {
        return record.animalId == null || record.date == null
                ? List.of()
                : List.of(new AnimalAndDay(record.animalId, record.date));
    }

    @Override
    protected final List<E> findByNaturalKeys(StatelessSession session, HerdRow herd, List<E> posted) {
        return session.createSelectionQuery(
                        "from " + entity().getSimpleName()
                                + " where herdId = :herd and animalId in :animals and date in :dates",
                        entity())
                .setParameter("herd", herd.id)
                .setParameter(
                        "animals",
                        posted.stream()
                                .map(record -> record.animalId)
                                .distinct()
                                .toList())
                .setParameter(
                        "dates",
                        posted.stream().map(record -> record.date).distinct().toList())
                .getResultList();
    }

    @Override
    protected final void check(Posted<E> posted, E replaced, Surroundings surroundings) {
        LocalDate date = posted.record().date;
        if (date.isAfter(surroundings.today())) {
            posted.add(FindingView.error("date-in-future", posted.pointer("date"), "lies in the future")
                    .seen(date.toString())
                    .expecting("at most " + surroundings.today() + ", today in the herd's zone"));
        }
        LocalDate born = surroundings.birthDate(posted.record().animalId);
        if (born != null && date.isBefore(born)) {
            posted.add(FindingView.error("before-birth", posted.pointer("date"), "lies before the animal's birth")
                    .seen(date.toString())
                    .expecting("at least " + born));
        }
        checkDetails(posted, replaced, surroundings);
    }
}
