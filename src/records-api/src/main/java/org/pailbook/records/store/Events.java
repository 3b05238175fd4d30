package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Lists of events of any kind, and single ones. */
@ApplicationScoped
public class Events {
    /**
     * What to list.
     *
     * @param animalId only this animal; null for all
     * @param from first day, included; null for no limit
     * @param to last day, included; null for no limit
     * @param after the last record already sent; null for the first page
     */
    public record Selection(String animalId, LocalDate from, LocalDate to, Position after) {}

    /** Place of a record in the fixed order of lists: by day, then by id. */
    public record Position(LocalDate date, String id) {}

    private static final int RECORDS_A_PART = 1_000;

    private final EntityManager entities;

    @Inject
    Events(EntityManager entities) {
        this.entities = entities;
    }

    /** Records in force, by day and id. */
    public <E extends AnimalEvent> List<E> list(Class<E> kind, String herdId, Selection selection, int most) {
        StringBuilder hql =
                new StringBuilder("from " + kind.getSimpleName() + " where herdId = :herd and withdrawn = false");
        if (selection.animalId() != null) {
            hql.append(" and animalId = :animal");
        }
        if (selection.from() != null) {
            hql.append(" and date >= :from");
        }
        if (selection.to() != null) {
            hql.append(" and date <= :to");
        }
        if (selection.after() != null) {
            hql.append(" and (date > :afterDate or (date = :afterDate and id > :afterId))");
        }
        var query = entities.createQuery(hql + " order by date, id", kind).setParameter("herd", herdId);
        if (selection.animalId() != null) {
            query.setParameter("animal", selection.animalId());
        }
        if (selection.from() != null) {
            query.setParameter("from", selection.from());
        }
        if (selection.to() != null) {
            query.setParameter("to", selection.to());
        }
        if (selection.after() != null) {
            query.setParameter("afterDate", selection.after().date())
                    .setParameter("afterId", selection.after().id());
        }
        return query.setMaxResults(most).getResultList();
    }

    /** All records in force up to a day, by day and id, some at a time. */
    public <E extends AnimalEvent> void inParts(Class<E> kind, String herdId, LocalDate to, Consumer<List<E>> part) {
        Position after = null;
        List<E> some;
        do {
            some = list(kind, herdId, new Selection(null, null, to, after), RECORDS_A_PART);
            if (!some.isEmpty()) {
                part.accept(some);
                E last = some.get(some.size() - 1);
                after = new Position(last.date, last.id);
                entities.clear(); // what was read stays with the request otherwise
            }
        } while (some.size() == RECORDS_A_PART);
    }

    /** The last day on which the herd has a record of that kind in force. */
    public Optional<LocalDate> lastDay(Class<? extends AnimalEvent> kind, String herdId) {
        return Optional.ofNullable(entities.createQuery(
                        "select max(date) from " + kind.getSimpleName() + " where herdId = :herd and withdrawn = false",
                        LocalDate.class)
                .setParameter("herd", herdId)
                .getSingleResult());
    }

    /** One record of the herd, whether or not it was withdrawn. */
    public <E extends AnimalEvent> Optional<E> byId(Class<E> kind, String herdId, String id) {
        return entities
                .createQuery("from " + kind.getSimpleName() + " where herdId = :herd and id = :id", kind)
                .setParameter("herd", herdId)
                .setParameter("id", id)
                .getResultList()
                .stream()
                .findFirst();
    }
}
