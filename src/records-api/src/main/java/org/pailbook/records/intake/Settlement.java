package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalEvent;
import org.pailbook.records.store.ChangeTurn;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.NewRows;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.store.WriteGate;
import org.pailbook.records.wire.FindingView;

/** Decides for the rows of one chunk what each creates, changes or leaves as it is, and then writes that. */
final class Settlement<E extends StoredRecord> {
    /** A row that was taken, and the stored record it replaces, if any. */
    private record Taken<E extends StoredRecord>(Posted<E> row, E stored, int place) {}

    private final RecordKind<E> kind;
    private final StoredBefore<E> before;
    private final List<RowOutcome<E>> outcomes = new ArrayList<>();
    private final List<Taken<E>> taken = new ArrayList<>();
    private final List<Posted<E>> refused = new ArrayList<>();
    /** The row taken last for each key, and for the id of each stored record. */
    private final Map<Object, Taken<E>> lastByKey = new HashMap<>();

    Settlement(RecordKind<E> kind, StoredBefore<E> before) {
        this.kind = kind;
        this.before = before;
    }

    /** One for each row settled so far, in order. */
    List<RowOutcome<E>> outcomes() {
        return outcomes;
    }

    /**
     * Whether two rows, refused or not, name the same animal or have a key in common, so that it matters which came first. A row that moves a
     * record to another animal has to do with both.
     */
    boolean isEntangled() {
        Set<String> animals = new HashSet<>();
        return Stream.concat(
                                taken.stream().map(Settlement::animals),
                                refused.stream().map(Settlement::animals))
                        .flatMap(Set::stream)
                        .anyMatch(animal -> !animals.add(animal))
                || outcomes.stream()
                        .anyMatch(row -> row.outcome() == Outcome.SUPERSEDED
                                || row.findings().stream()
                                        .anyMatch(finding -> finding.code().equals("key-conflict")));
    }

    private static <E extends StoredRecord> Set<String> animals(Taken<E> one) {
        Set<String> animals = new HashSet<>(animals(one.row));
        if (one.stored instanceof AnimalEvent event) {
            animals.add(event.animalId);
        }
        return animals;
    }

    private static <E extends StoredRecord> Set<String> animals(Posted<E> row) {
        return row.record instanceof AnimalEvent event && event.animalId != null ? Set.of(event.animalId) : Set.of();
    }

    /** A row that is to replace that record and no other one. */
    void settleFor(Posted<E> row, E known) {
        if (row.isRefused()) {
            refuse(row);
            return;
        }
        List<E> others =
                before.of(row).stream().filter(one -> !one.id.equals(known.id)).toList();
        if (!others.isEmpty()) {
            row.add(FindingView.error(
                    "key-conflict",
                    row.pointer,
                    others.get(0).withdrawn
                            ? "its keys belong to a record that was withdrawn; post the values to revive that one, and withdraw this one"
                            : "its keys belong to another record; correct one of them first"));
            refuse(row);
            return;
        }
        taken.add(new Taken<>(row, known, outcomes.size()));
        outcomes.add(decide(row, known, true));
    }

    void settle(Posted<E> row) {
        if (row.isRefused()) {
            refuse(row);
            return;
        }
        Set<E> stored = before.of(row);
        E replaced = stored.isEmpty() ? null : stored.iterator().next();
        Set<Taken<E>> earlier = earlierRowsFor(row, replaced);
        if (stored.size() > 1 || earlier.stream().anyMatch(one -> one.stored != replaced)) {
            row.add(FindingView.error(
                    "key-conflict", row.pointer, "its keys belong to different records; correct one of them first"));
            refuse(row);
            return;
        }
        earlier.forEach(one -> supersede(one, row));
        Taken<E> now = new Taken<>(row, replaced, outcomes.size());
        taken.add(now);
        StoredBefore.keys(kind, row.record).forEach(key -> lastByKey.put(key, now));
        if (replaced != null) {
            lastByKey.put(replaced.id, now);
        }
        outcomes.add(decide(row, replaced, false));
    }

    private void refuse(Posted<E> row) {
        refused.add(row);
        outcomes.add(RowOutcome.of(row, Outcome.REFUSED, null));
    }

    /** Rows of this chunk that were taken for the same record. */
    private Set<Taken<E>> earlierRowsFor(Posted<E> row, E replaced) {
        Set<Taken<E>> earlier = new LinkedHashSet<>();
        List<Object> keys = StoredBefore.keys(kind, row.record);
        if (replaced != null) {
            keys.add(replaced.id);
        }
        for (Object key : keys) {
            Taken<E> one = lastByKey.get(key);
            if (one != null && outcomes.get(one.place).outcome() != Outcome.SUPERSEDED) {
                earlier.add(one);
            }
        }
        return earlier;
    }

    private void supersede(Taken<E> earlier, Posted<E> later) {
        earlier.row.add(FindingView.warning(
                "superseded-in-request",
                earlier.row.pointer,
                "row " + later.row.row() + " of the same request has the same key and was taken instead"));
        outcomes.set(earlier.place, RowOutcome.of(earlier.row, Outcome.SUPERSEDED, null));
    }

    /** @param whole whether a source that is not given is thereby cleared */
    private RowOutcome<E> decide(Posted<E> row, E stored, boolean whole) {
        if (stored == null) {
            return RowOutcome.of(row, Outcome.CREATED, row.record);
        }
        ObjectNode was = kind.content(stored);
        ObjectNode is = kind.content(row.record);
        boolean sameSource = (row.record.source == null && !whole)
                || (Objects.equals(row.record.source, stored.source)
                        && Objects.equals(row.record.sourceId, stored.sourceId));
        if (was.equals(is) && sameSource && !stored.withdrawn) {
            return RowOutcome.of(row, Outcome.UNCHANGED, stored);
        }
        if (stored.withdrawn) {
            row.add(FindingView.info(RowOutcome.REVIVED, row.pointer, "was withdrawn and is in force again"));
            return RowOutcome.of(row, Outcome.UPDATED, row.record);
        }
        if (stored.source != null && !stored.source.equals(row.record.source)) {
            row.add(FindingView.warning(
                    "other-source-overwritten",
                    row.pointer("source"),
                    "replaces a version from " + stored.source + " by one "
                            + (row.record.source == null ? "without a source" : "from " + row.record.source)
                            + "; both stay in the history"));
        }
        for (Iterator<String> members = was.fieldNames(); members.hasNext(); ) {
            String member = members.next();
            if (!is.has(member)) {
                row.add(FindingView.warning(
                                "value-no-longer-given",
                                row.pointer(member),
                                "the version replaced had a value here, this one has none; the old version stays in the history")
                        .seen(was.get(member).asText()));
            }
        }
        return RowOutcome.of(row, Outcome.UPDATED, row.record);
    }

    /** Writes what was settled and keeps the number of the herd's last change, which it returns. */
    long write(StatelessSession session, HerdRow herd, String writtenBy, ChangeTurn turn) {
        long change = turn.lastChange();
        List<E> created = new ArrayList<>();
        List<E> updated = new ArrayList<>();
        List<SupersededVersionRow> replaced = new ArrayList<>();
        for (Taken<E> one : taken) {
            Outcome outcome = outcomes.get(one.place).outcome();
            if (outcome == Outcome.UNCHANGED || outcome == Outcome.SUPERSEDED) {
                continue;
            }
            E record = one.row.record;
            record.herdId = herd.id;
            record.recordedAt = turn.at();
            record.recordedBy = writtenBy;
            record.changeSeq = ++change;
            if (one.stored == null) {
                record.id = RecordIds.next();
                record.version = 1;
                created.add(record);
            } else {
                replaced.add(asReplaced(kind, one.stored));
                record.id = one.stored.id;
                record.version = one.stored.version + 1;
                updated.add(record);
            }
        }
        session.insertMultiple(replaced);
        session.updateMultiple(updated);
        NewRows.insert(session, kind.entity(), created);
        kind.afterWrite(session, created, updated);
        if (change != turn.lastChange()) {
            WriteGate.noteLastChange(session, herd.id, change, turn.at());
        }
        return change;
    }

    /** The version as it is kept once another one takes its place. */
    static <E extends StoredRecord> SupersededVersionRow asReplaced(RecordKind<E> kind, E stored) {
        SupersededVersionRow old = new SupersededVersionRow();
        old.recordId = stored.id;
        old.version = stored.version;
        old.herdId = stored.herdId;
        old.kind = kind.name();
        old.changeSeq = stored.changeSeq;
        old.recordedAt = stored.recordedAt;
        old.recordedBy = Objects.requireNonNull(stored.recordedBy);
        old.withdrawn = stored.withdrawn;
        old.content = kind.keptContent(stored).toString();
        return old;
    }
}
