package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.KeptKind;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.StrictJson;

/**
 * What the intake must know of a kind of record: how it is read, checked, found again and shown. One subclass for each kind, in
 * its slice.
 */
public abstract class RecordKind<E extends StoredRecord> implements KeptKind<E> {
    private static final int LONGEST_SOURCE = 200;

    /** In kept content: our id of the animal, where a posted record has its name. */
    protected static final String ANIMAL_ID = "animalId";

    /** Plural, kebab-case, as in the path: {@code test-days}. */
    @Override
    public abstract String name();

    /** The word for one of them, as in the change feed: {@code test-day}. */
    public String singular() {
        return name().substring(0, name().length() - 1);
    }

    @Override
    public abstract Class<E> entity();

    /** The columns a table may have, in the order in which they are exported. */
    public abstract List<Column> columns();

    /** Reads the content of a record; members that are wrong are noted in {@code fields}. */
    protected abstract E readContent(Fields fields);

    /**
     * Writes the content members in wire form, each one that {@link #readContent} reads: the same form decides whether a resend changes
     * anything, is kept of every replaced version, and is read back by {@link #readContent}.
     */
    protected abstract void writeContent(E record, ObjectNode content);

    /** Notes what is wrong or odd about a record that could be read. */
    protected abstract void check(Posted<E> posted, E replaced, Surroundings surroundings);

    /** Lets later rows see a record that was taken. */
    protected void noteTaken(E taken, E replaced, Surroundings surroundings) {}

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

    /** Adds to a record shown what is said beside it, a caution for instance; reading such a record takes no notice of it. */
    protected void addNotes(ObjectNode wire) {}

    /** Adds to the content kept of a replaced version what its members do not tell. */
    protected void writeKept(E record, ObjectNode kept) {}

    /** Reads that back. */
    protected void readKept(ObjectNode kept, E record) {}

    final Posted<E> read(PostedRow row, ZoneId zone) {
        return read(row, zone, Set.of());
    }

    /** @param cleared members a patch named only to clear them */
    final Posted<E> read(PostedRow row, ZoneId zone, Set<String> cleared) {
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
        fields.finish(cleared);
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

    /** The content as it is kept of a version that is replaced. */
    final ObjectNode keptContent(E record) {
        ObjectNode kept = sourcedContent(record);
        writeKept(record, kept);
        return kept;
    }

    /** The content with source and its id. */
    private ObjectNode sourcedContent(E record) {
        ObjectNode content = content(record);
        if (record.source != null) {
            content.put("source", record.source);
        }
        if (record.sourceId != null) {
            content.put("sourceId", record.sourceId);
        }
        return content;
    }

    /** Our id of the animal the record is about; empty if it is about none. */
    public final Optional<String> animalId(E record) {
        return Optional.ofNullable(content(record).get(ANIMAL_ID)).map(JsonNode::textValue);
    }

    /**
     * The record as it would be posted.
     *
     * @param animal how the animal is shown, by our id
     */
    public final ObjectNode wire(E record, Function<String, AnimalIdentifier> animal) {
        ObjectNode wire = JsonNodeFactory.instance.objectNode();
        sourcedContent(record).properties().forEach(member -> {
            JsonNode value = member.getValue();
            if (member.getKey().equals(ANIMAL_ID)) {
                AnimalIdentifier shown = animal.apply(value.textValue());
                ObjectNode named = wire.putObject("animal");
                if (shown == null) {
                    named.put("id", value.textValue());
                } else {
                    named.put("scheme", shown.scheme()).put("id", shown.id());
                }
            } else if (value.isDouble() && value.doubleValue() == Math.rint(value.doubleValue())) {
                wire.put(member.getKey(), value.decimalValue().toBigInteger());
            } else {
                wire.set(member.getKey(), value);
            }
        });
        addNotes(wire);
        return wire;
    }

    @Override
    public final E restore(SupersededVersionRow version) {
        ObjectNode content = StrictJson.kept(version.content);
        // what a limit refuses today was accepted then: findings are not asked for
        E record = readContent(new Fields(content, ""));
        if (content.has(ANIMAL_ID)) {
            assignAnimal(record, content.get(ANIMAL_ID).textValue());
        }
        readKept(content, record);
        record.source = content.path("source").textValue();
        record.sourceId = content.path("sourceId").textValue();
        record.id = version.recordId;
        record.herdId = version.herdId;
        record.version = version.version;
        record.changeSeq = version.changeSeq;
        record.recordedAt = version.recordedAt;
        record.recordedBy = version.recordedBy;
        record.withdrawn = version.withdrawn;
        return record;
    }
}
