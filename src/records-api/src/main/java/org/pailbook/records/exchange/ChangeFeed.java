package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.Animals;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.store.Versions;
import org.pailbook.records.wire.Action;
import org.pailbook.records.wire.StrictJson;

/** The changes of a herd, of every kind there is, read from the versions in force and the replaced ones. */
@ApplicationScoped
public class ChangeFeed {
    private final Versions versions;
    private final Animals animals;
    private final Map<String, RecordKind<?>> kinds;

    @Inject
    ChangeFeed(Versions versions, Animals animals, Instance<RecordKind<?>> kinds) {
        this.versions = versions;
        this.animals = animals;
        this.kinds = kinds.stream().collect(Collectors.toMap(RecordKind::name, kind -> kind));
    }

    /** A version met, its record not written out yet. */
    private record Met(
            long seq,
            String kind,
            String id,
            int version,
            boolean withdrawn,
            Instant recordedAt,
            String animalId,
            Written record) {}

    /** A record that can be written once it is known how animals are shown. */
    private interface Written {
        JsonNode with(Map<String, AnimalIdentifier> animals);
    }

    /** The changes after number {@code after}, at most so many. */
    ChangesView after(HerdRow herd, long after, int most) {
        long last = Math.max(after, Math.min(after + most, herd.changeSeq));
        Map<Long, Met> bySeq = new TreeMap<>();
        kinds.values().forEach(kind -> meetCurrent(kind, herd, after, last, bySeq));
        if (herd.versionSeq > after && herd.versionSeq <= last) {
            bySeq.put(herd.versionSeq, met(herd));
        }
        // read after those in force, and put over them: a version that was replaced meanwhile is met as it was
        versions.replaced(herd.id, after, last).forEach(replaced -> bySeq.put(replaced.changeSeq, met(replaced)));
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(
                herd.id,
                bySeq.values().stream()
                        .map(Met::animalId)
                        .filter(id -> id != null)
                        .collect(Collectors.toSet()));
        Set<SupersededVersionRow.Key> withdrawals = versions.withdrawals(bySeq.values().stream()
                .filter(one -> one.version > 1 && !one.withdrawn)
                .map(Met::id)
                .collect(Collectors.toCollection(HashSet::new)));
        List<ChangesView.ChangeView> changes = bySeq.values().stream()
                .map(one -> new ChangesView.ChangeView(
                        one.seq,
                        one.kind,
                        one.id,
                        Action.of(
                                one.version,
                                one.withdrawn,
                                withdrawals.contains(new SupersededVersionRow.Key(one.id, one.version - 1))),
                        one.version,
                        one.recordedAt.toString(),
                        one.record.with(shown)))
                .toList();
        return new ChangesView(changes, last, last < herd.changeSeq);
    }

    private <E extends StoredRecord> void meetCurrent(
            RecordKind<E> kind, HerdRow herd, long after, long last, Map<Long, Met> bySeq) {
        versions.current(kind.entity(), herd.id, after, last)
                .forEach(record -> bySeq.put(record.changeSeq, met(kind, record)));
    }

    private Met met(SupersededVersionRow replaced) {
        if (replaced.kind.equals(HerdRow.KIND)) {
            JsonNode content = StrictJson.kept(replaced.content);
            return new Met(
                    replaced.changeSeq,
                    HerdRow.KIND_SINGULAR,
                    replaced.recordId,
                    replaced.version,
                    false,
                    replaced.recordedAt,
                    null,
                    any -> content);
        }
        return met(kinds.get(replaced.kind), replaced);
    }

    private static <E extends StoredRecord> Met met(RecordKind<E> kind, SupersededVersionRow replaced) {
        return met(kind, kind.restore(replaced));
    }

    private static <E extends StoredRecord> Met met(RecordKind<E> kind, E record) {
        return new Met(
                record.changeSeq,
                kind.singular(),
                record.id,
                record.version,
                record.withdrawn,
                record.recordedAt,
                kind.animalId(record).orElse(null),
                shown -> kind.wire(record, shown::get));
    }

    private static Met met(HerdRow herd) {
        JsonNode content = JsonNodeFactory.instance
                .objectNode()
                .put("code", herd.code)
                .put("name", herd.name)
                .put("timeZone", herd.timeZone);
        return new Met(
                herd.versionSeq,
                HerdRow.KIND_SINGULAR,
                herd.id,
                herd.version,
                false,
                herd.recordedAt,
                null,
                any -> content);
    }
}
