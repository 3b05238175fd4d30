package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.persistence.TypedQuery;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Lists of dated records of any kind, and single ones. */
@ApplicationScoped
public class Events {
    /**
     * What to list.
     *
     * @param animalId only this animal; null for all, and for kinds that name none
     * @param from first day, included; null for no limit
     * @param to last day, included; null for no limit
     * @param after the last record already sent; null for the first page
     * @param includeWithdrawn whether records out of force are listed too
     */
    public record Selection(String animalId, LocalDate from, LocalDate to, Position after, boolean includeWithdrawn) {
        private boolean holds(DatedRecord event) {
            return (includeWithdrawn || !event.withdrawn)
                    && (animalId == null || (event instanceof AnimalEvent one && animalId.equals(one.animalId)))
                    && (from == null || !event.date.isBefore(from))
                    && (to == null || !event.date.isAfter(to));
        }

        private boolean isAfter(DatedRecord event) {
            return after == null
                    || event.date.isAfter(after.date)
                    || (event.date.equals(after.date) && event.id.compareTo(after.id) > 0);
        }

        private String where() {
            return " where herdId = :herd and changeSeq + 0 <= :last"
                    + (includeWithdrawn ? "" : " and withdrawn = false")
                    + (animalId == null ? "" : " and animalId = :animal")
                    + (from == null ? "" : " and date >= :from")
                    + (to == null ? "" : " and date <= :to");
        }

        private void fill(Query query, HerdRow herd) {
            query.setParameter("herd", herd.id).setParameter("last", herd.changeSeq);
            if (animalId != null) {
                query.setParameter("animal", animalId);
            }
            if (from != null) {
                query.setParameter("from", from);
            }
            if (to != null) {
                query.setParameter("to", to);
            }
        }
    }

    /** Place of a record in the fixed order of lists: by day, then by id. */
    public record Position(LocalDate date, String id) {}

    private static final int RECORDS_A_PART = 1_000;

    private final EntityManager entities;

    private final Versions versions;

    @Inject
    Events(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** Records by day and id, as they were known at the last change the herd's row names. */
    public <E extends DatedRecord> List<E> list(Class<E> kind, HerdRow herd, Selection selection, int most) {
        boolean begins = selection.after() == null;
        TypedQuery<E> query = entities.createQuery(
                "from " + kind.getSimpleName() + selection.where()
                        + (begins ? "" : " and (date > :afterDate or (date = :afterDate and id > :afterId))")
                        + " order by date, id",
                kind);
        selection.fill(query, herd);
        if (!begins) {
            query.setParameter("afterDate", selection.after().date())
                    .setParameter("afterId", selection.after().id());
        }
        List<E> found =
                query.setMaxResults(most).setHint(CowEvents.READ_ONLY, true).getResultList();
        List<E> replaced = versions.replacedSince(kind, herd, found, event -> event.id).stream()
                .filter(selection::holds)
                .filter(selection::isAfter)
                .toList();
        if (replaced.isEmpty()) {
            return found;
        }
        found = new ArrayList<>(found);
        found.addAll(replaced);
        found.sort(Comparator.comparing((E event) -> event.date).thenComparing(event -> event.id));
        return found.size() > most ? found.subList(0, most) : found;
    }

    /**
     * Every record in force of a kind.
     *
     * @param from first day, included; null for no limit
     * @param to last day, included
     */
    public <E extends DatedRecord> List<E> all(Class<E> kind, HerdRow herd, LocalDate from, LocalDate to) {
        return list(kind, herd, new Selection(null, from, to, null, false), Integer.MAX_VALUE);
    }

    /** The same of one animal. */
    public <E extends AnimalEvent> List<E> allOf(
            String animalId, Class<E> kind, HerdRow herd, LocalDate from, LocalDate to) {
        return list(kind, herd, new Selection(animalId, from, to, null, false), Integer.MAX_VALUE);
    }

    /** Every record in force of a kind up to a day, by our id of its animal. */
    public <E extends AnimalEvent> Map<String, List<E>> byAnimal(Class<E> kind, HerdRow herd, LocalDate to) {
        return all(kind, herd, null, to).stream().collect(Collectors.groupingBy(event -> event.animalId));
    }

    /** How many records there are, on this page and all others. */
    public <E extends DatedRecord> long count(Class<E> kind, HerdRow herd, Selection selection) {
        return versions.count(
                kind,
                herd,
                () -> selected("count(*)", Long.class, kind, herd, selection).getSingleResult(),
                () -> selected("id", String.class, kind, herd, selection).getResultList(),
                selection::holds);
    }

    private <T> TypedQuery<T> selected(
            String what, Class<T> answered, Class<?> kind, HerdRow herd, Selection selection) {
        TypedQuery<T> query =
                entities.createQuery("select " + what + " from " + kind.getSimpleName() + selection.where(), answered);
        selection.fill(query, herd);
        return query;
    }

    /** All records in force up to a day, by day and id, some at a time. */
    public <E extends AnimalEvent> void inParts(Class<E> kind, HerdRow herd, LocalDate to, Consumer<List<E>> part) {
        Position after = null;
        List<E> some;
        do {
            some = list(kind, herd, new Selection(null, null, to, after, false), RECORDS_A_PART);
            if (!some.isEmpty()) {
                part.accept(some);
                E last = some.get(some.size() - 1);
                after = new Position(last.date, last.id);
                entities.clear(); // what was read stays with the request otherwise
            }
        } while (some.size() == RECORDS_A_PART);
    }

    /** The last day on which the herd has a record of that kind in force. */
    public Optional<LocalDate> lastDay(Class<? extends DatedRecord> kind, String herdId) {
        return Optional.ofNullable(entities.createQuery(
                        "select max(date) from " + kind.getSimpleName() + " where herdId = :herd and withdrawn = false",
                        LocalDate.class)
                .setParameter("herd", herdId)
                .getSingleResult());
    }

    /** One record of the herd, whether or not it was withdrawn, as known at the last change the herd's row names. */
    public <E extends DatedRecord> Optional<E> byId(Class<E> kind, HerdRow herd, String id) {
        return now(kind, herd.id, id)
                .filter(record -> record.changeSeq <= herd.changeSeq)
                .or(() -> versions.replacedSince(kind, herd).stream()
                        .filter(record -> record.id.equals(id))
                        .findFirst());
    }

    private <E extends DatedRecord> Optional<E> now(Class<E> kind, String herdId, String id) {
        return entities
                .createQuery("from " + kind.getSimpleName() + " where herdId = :herd and id = :id", kind)
                .setParameter("herd", herdId)
                .setParameter("id", id)
                .getResultList()
                .stream()
                .findFirst();
    }
}
