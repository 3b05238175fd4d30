package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.Fields;

/**
 * What the intake must know of a kind of record: how it is read, checked, found again and shown. One subclass for each kind, in
 * its slice.
 */
public abstract class RecordKind<E extends StoredRecord> {
    private static final int LONGEST_SOURCE = 200;

    /** Plural, kebab-case, as in the path: {@code test-days}. */
    public abstract String name();

    public abstract Class<E> entity();

    /** The columns a table may have, in the order in which they are exported. */
    public abstract List<Column> columns();

    /** Reads the content of a record; members that are wrong are noted in {@code fields}. */
    protected abstract E readContent(Fields fields);

    /** Writes the content members in wire form; the same form decides whether a resend changes anything. */
    protected abstract void writeContent(E record, ObjectNode content);

    /** Notes what is wrong or odd about a record that could be read, and lets later rows see it. */
    protected abstract void check(Posted<E> posted, E replaced, Surroundings surroundings);

    /** Whether each record names one animal by the member {@code animal}. */
    protected abstract boolean namesAnimal();

    /** Puts the animal's id into the record, where the kind names one. */
    protected abstract void assignAnimal(E record, String animalId);

    /** The natural keys within the herd, any of which finds the record; empty if it could not be read far enough. */
    protected abstract List<?> naturalKeys(E record);

    /** The stored records, withdrawn ones included, that have one of these natural keys. */
    protected abstract List<E> findByNaturalKeys(StatelessSession session, HerdRow herd, List<E> posted);

    /** Loads what belongs to stored records but is kept in rows beside them. */
    protected void complete(StatelessSession session, Collection<E> stored) {}

    /** Called after the rows of the chunk are written, for rows that live beside the record's own. */
    protected void afterWrite(StatelessSession session, List<E> created, List<E> updated) {}

    /** Gives a record that is known by an instant its day, which only the herd's zone tells. */
    protected void placeInHerd(E record, ZoneId zone) {}

    final Posted<E> read(PostedRow row, ZoneId zone) {
        if (!row.unreadable().isEmpty()) {
            return new Posted<>(row, null, null, row.unreadable());
        }
        Fields fields = new Fields(row.content(), row.pointer());
        AnimalReference animal = namesAnimal() ? AnimalReference.read(fields) : null;
        E record = readContent(fields);
        placeInHerd(record, zone);
        record.source = fields.text("source", LONGEST_SOURCE);
        record.sourceId = fields.text("sourceId", LONGEST_SOURCE);
        if (record.sourceId != null && !row.content().has("source")) {
            fields.require("source");
        }
        fields.finish();
        return new Posted<>(row, record, animal, fields.findings());
    }

    /** Kinds of events whose days of an animal this kind's checks look at, besides calvings and departures. */
    protected Set<Class<? extends AnimalEvent>> looksAt() {
        return Set.of();
    }

    /** Writes a member, if it has a value. */
    protected static void put(ObjectNode content, String member, Object value) {
        if (value instanceof Double number) {
            content.put(member, number);
        } else if (value instanceof Integer number) {
            content.put(member, number);
        } else if (value instanceof Boolean truth) {
            content.put(member, truth);
        } else if (value != null) {
            content.put(member, value.toString());
        }
    }

    final ObjectNode content(E record) {
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        writeContent(record, content);
        return content;
    }
}
