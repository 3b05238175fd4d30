package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * The versions of records that were replaced.
 *
 * <p>A change moves a version from its kind's table to that of replaced versions. Whoever reads both therefore reads the kind's table
 * first: a version may then be met twice, but never be missed, and the methods here that are told what was read leave out the second.
 */
@ApplicationScoped
public class Versions {
    private final EntityManager entities;
    private final Animals animals;
    private final Map<Class<?>, KeptKind<?>> kinds;

    @Inject
    Versions(EntityManager entities, Animals animals, Instance<KeptKind<?>> kinds) {
        this.entities = entities;
        this.animals = animals;
        this.kinds = kinds.stream().collect(Collectors.toMap(KeptKind::entity, kind -> kind));
    }

    /** The replaced versions of one record of the herd, first to last. */
    public List<SupersededVersionRow> replaced(String herdId, String recordId) {
        return entities.createQuery(
                        "from SupersededVersionRow where recordId = :id and herdId = :herd order by version",
                        SupersededVersionRow.class)
                .setParameter("id", recordId)
                .setParameter("herd", herdId)
                .getResultList();
    }

    /** Replaced versions of any kind made by the changes after {@code after} up to {@code last}. */
    public List<SupersededVersionRow> replaced(String herdId, long after, long last) {
        return entities.createQuery(
                        "from SupersededVersionRow where herdId = :herd and changeSeq > :after and changeSeq <= :last",
                        SupersededVersionRow.class)
                .setParameter("herd", herdId)
                .setParameter("after", after)
                .setParameter("last", last)
                .getResultList();
    }

    /** Versions now in force of one kind made by the changes after {@code after} up to {@code last}. */
    public <E extends StoredRecord> List<E> current(Class<E> kind, String herdId, long after, long last) {
        return animals.complete(
                kind,
                entities.createQuery(
                                "from " + kind.getSimpleName()
                                        + " where herdId = :herd and changeSeq > :after and changeSeq <= :last",
                                kind)
                        .setParameter("herd", herdId)
                        .setParameter("after", after)
                        .setParameter("last", last)
                        .getResultList());
    }

    /**
     * The versions of one kind that were in force at the last change the herd's row names and were replaced since, withdrawals included.
     * Records first made since have none.
     */
    public <E extends StoredRecord> List<E> replacedSince(Class<E> kind, HerdRow herd) {
        boolean changed = !entities.createQuery(
                        "select 1 from " + kind.getSimpleName() + " where herdId = :herd and changeSeq > :last",
                        Integer.class)
                .setParameter("herd", herd.id)
                .setParameter("last", herd.changeSeq)
                .setMaxResults(1)
                .getResultList()
                .isEmpty();
        if (!changed) {
            return List.of();
        }
        KeptKind<?> kept = Objects.requireNonNull(kinds.get(kind), kind.getSimpleName());
        return entities
                .createQuery(
                        "from SupersededVersionRow s where s.herdId = :herd and s.kind = :kind and s.changeSeq <= :last"
                                + " and s.recordId in (select c.id from " + kind.getSimpleName()
                                + " c where c.herdId = :herd and c.changeSeq > :last)"
                                + " and not exists (select 1 from SupersededVersionRow t where t.recordId = s.recordId"
                                + " and t.version = s.version + 1 and t.changeSeq <= :last)",
                        SupersededVersionRow.class)
                .setParameter("herd", herd.id)
                .setParameter("kind", kept.name())
                .setParameter("last", herd.changeSeq)
                .getResultList()
                .stream()
                .map(version -> kind.cast(kept.restore(version)))
                .toList();
    }

    /**
     * The same besides those that were read from the kind's table just before and changed meanwhile.
     *
     * @param read what was read, {@code id} of each the record's
     */
    public <E extends StoredRecord, R> List<E> replacedSince(
            Class<E> kind, HerdRow herd, Collection<R> read, Function<R, String> id) {
        List<E> replaced = replacedSince(kind, herd);
        if (replaced.isEmpty()) {
            return replaced;
        }
        Set<String> known = read.stream().map(id).collect(Collectors.toSet());
        return replaced.stream().filter(one -> !known.contains(one.id)).toList();
    }

    /**
     * How many records of a kind there were at the last change the herd's row names.
     *
     * @param counted how many of them the kind's table has now
     * @param ids their ids
     * @param holds which of the versions replaced since are among them
     */
    public <E extends StoredRecord> long count(
            Class<E> kind, HerdRow herd, LongSupplier counted, Supplier<List<String>> ids, Predicate<E> holds) {
        long before = counted.getAsLong();
        List<E> replaced = replacedSince(kind, herd);
        // none has left the table between: it only loses versions of that state
        if (replaced.isEmpty() || counted.getAsLong() == before) {
            return before + replaced.stream().filter(holds).count();
        }
        List<String> now = ids.get();
        return now.size()
                + replacedSince(kind, herd, now, id -> id).stream()
                        .filter(holds)
                        .count();
    }

    /** Of these records, the versions that were withdrawals and were followed by another version. */
    public Set<SupersededVersionRow.Key> withdrawals(Collection<String> recordIds) {
        Set<SupersededVersionRow.Key> withdrawals = new HashSet<>();
        InParts.of(
                recordIds,
                ids -> entities.createQuery(
                                "select recordId, version from SupersededVersionRow where recordId in :ids and withdrawn = true",
                                Object[].class)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList()
                        .forEach(row ->
                                withdrawals.add(new SupersededVersionRow.Key((String) row[0], (Integer) row[1]))));
        return withdrawals;
    }
}
