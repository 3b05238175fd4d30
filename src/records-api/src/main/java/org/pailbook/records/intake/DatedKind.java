package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.Timed;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** A kind of record that belongs to a day: of one animal ({@link EventKind}) or of the herd ({@link HerdRecordKind}). */
public abstract class DatedKind<E extends DatedRecord> extends RecordKind<E> {
    private static final String KEPT_DAY = "herdDay";

    /** An empty record. */
    protected abstract E newRecord();

    /** What the kind has besides animal, day and source. */
    protected abstract List<Member<E>> members();

    /** Reads the members; a kind with more to it than members reads that as well. */
    protected void readDetails(Fields fields, E record) {
        members().forEach(member -> member.read(fields, record));
    }

    /** Writes the members; a kind with more to it than members writes that as well. */
    protected void writeDetails(E record, ObjectNode content) {
        members().forEach(member -> put(content, member.name(), member.value().apply(record)));
    }

    /** The columns besides those for animal, day and source. */
    protected List<Column> detailColumns() {
        return members().stream().map(Member::column).toList();
    }

    /** Holds each member that has a limit against it. */
    protected final void checkLimits(Posted<E> posted) {
        for (Member<E> member : members()) {
            if (member.limit() != null) {
                ValueChecks.check(posted, member.limit(), member.name(), (Double)
                        member.value().apply(posted.record()));
            }
        }
    }

    /** The columns before the day. */
    protected abstract List<Column> firstColumns();

    /** Writes what stands before the day. */
    protected abstract void writeFirst(E record, ObjectNode content);

    /** Member that holds the day, or the instant of a {@link Timed} record. */
    protected String dayMember() {
        return "date";
    }

    /** Column of that member. */
    public String dayColumn() {
        return "date";
    }

    /** What tells records of one day apart, besides the animal; for a timed record its minute. */
    protected Object keyBesides(E record) {
        return record instanceof Timed timed && timed.at() != null ? Timed.minute(timed.at()) : "";
    }

    /** Whether the day may lie in the future. */
    protected boolean mayLieAhead() {
        return false;
    }

    @Override
    public final List<Column> columns() {
        List<Column> columns = new ArrayList<>(firstColumns());
        columns.add(Column.text(dayColumn(), dayMember()));
        columns.addAll(detailColumns());
        columns.add(Column.text("source", "source"));
        columns.add(Column.text("source_id", "sourceId"));
        return columns;
    }

    @Override
    protected final E readContent(Fields fields) {
        E record = newRecord();
        if (record instanceof Timed timed) {
            fields.require(dayMember());
            timed.setAt(fields.instant(dayMember()));
        } else {
            record.date = fields.requiredDate(dayMember());
        }
        readDetails(fields, record);
        return record;
    }

    @Override
    protected final void placeInHerd(E record, ZoneId zone) {
        if (record instanceof Timed timed && timed.at() != null) {
            record.date = LocalDate.ofInstant(timed.at(), zone);
        }
    }

    @Override
    protected final void writeContent(E record, ObjectNode content) {
        writeFirst(record, content);
        content.put(dayMember(), record instanceof Timed timed ? timed.at().toString() : record.date.toString());
        writeDetails(record, content);
    }

    /** A timed record keeps the day it had: the herd may have another zone when it is read back. */
    @Override
    protected final void writeKept(E record, ObjectNode kept) {
        if (record instanceof Timed) {
            kept.put(KEPT_DAY, record.date.toString());
        }
    }

    @Override
    protected final void readKept(ObjectNode kept, E record) {
        if (kept.has(KEPT_DAY)) {
            record.date = LocalDate.parse(kept.get(KEPT_DAY).textValue());
        }
    }

    /** Notes a day that has not come yet. */
    protected final void checkDay(Posted<E> posted, Surroundings surroundings) {
        LocalDate date = posted.record().date;
        if (!mayLieAhead() && date.isAfter(surroundings.today())) {
            posted.add(FindingView.error("date-in-future", posted.pointer(dayMember()), "lies in the future")
                    .seen(date.toString())
                    .expecting("at most " + surroundings.today() + ", today in the herd's zone"));
        }
    }
}
