package org.pailbook.records.intake;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InParts;
import org.pailbook.records.store.StoredRecord;

/** The stored records that the rows of a chunk may replace, by their source's key and by their natural keys. */
final class StoredBefore<E extends StoredRecord> {
    /** Key a source gave. */
    record SourceKey(String source, String sourceId) {}

    private final RecordKind<E> kind;
    private final Map<Object, E> byKey = new HashMap<>();

    private StoredBefore(RecordKind<E> kind) {
        this.kind = kind;
    }

    static <E extends StoredRecord> StoredBefore<E> load(
            StatelessSession session, RecordKind<E> kind, HerdRow herd, List<Posted<E>> rows) {
        StoredBefore<E> before = new StoredBefore<>(kind);
        List<E> posted = rows.stream().map(row -> row.record).toList();
        if (posted.isEmpty()) {
            return before;
        }
        // one object for each stored record, however often the queries find it
        Map<String, E> found = new LinkedHashMap<>();
        Map<String, List<String>> sourceIds = posted.stream()
                .filter(record -> record.source != null && record.sourceId != null)
                .collect(Collectors.groupingBy(
                        record -> record.source, Collectors.mapping(record -> record.sourceId, Collectors.toList())));
        sourceIds.forEach((source, all) -> InParts.of(
                all,
                ids -> session.createSelectionQuery(
                                "from " + kind.entity().getSimpleName()
                                        + " where herdId = :herd and source = :source and sourceId in :ids",
                                kind.entity())
                        .setParameter("herd", herd.id)
                        .setParameter("source", source)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList()
                        .forEach(record -> found.put(record.id, record))));
        InParts.of(
                posted,
                some -> kind.findByNaturalKeys(session, herd, some)
                        .forEach(record -> found.putIfAbsent(record.id, record)));
        kind.complete(session, found.values());
        found.values().forEach(record -> keys(kind, record).forEach(key -> before.byKey.put(key, record)));
        return before;
    }

    /** Every key by which a record can be found: its source's key first, then its natural keys. */
    static <E extends StoredRecord> List<Object> keys(RecordKind<E> kind, E record) {
        List<Object> keys = new java.util.ArrayList<>();
        if (record.source != null && record.sourceId != null) {
            keys.add(new SourceKey(record.source, record.sourceId));
        }
        keys.addAll(kind.naturalKeys(record));
        return keys;
    }

    /** The stored records that any key of the row finds: none, the one it replaces, or several in conflict. */
    Set<E> of(Posted<E> row) {
        Set<E> found = new LinkedHashSet<>();
        for (Object key : keys(kind, row.record)) {
            E stored = byKey.get(key);
            if (stored != null) {
                found.add(stored);
            }
        }
        return found;
    }
}
