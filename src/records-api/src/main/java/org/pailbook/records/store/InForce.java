package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what a herd records as holding from a day on, prices and settings, as known at the last change the herd's row names. */
@ApplicationScoped
public class InForce {
    private final EntityManager entities;
    private final Versions versions;

    @Inject
    InForce(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** The set that holds on a day: the latest that had begun. */
    public <E extends DatedRecord> Optional<E> on(Class<E> kind, HerdRow herd, LocalDate day) {
        Stream<E> current = entities
                .createQuery(
                        "from " + kind.getSimpleName()
                                + " where herdId = :herd and date <= :day and changeSeq <= :last and withdrawn = false",
                        kind)
                .setParameter("herd", herd.id)
                .setParameter("day", day)
                .setParameter("last", herd.changeSeq)
                .getResultList()
                .stream();
        Stream<E> replaced = versions.replacedSince(kind, herd).stream()
                .filter(record -> !record.withdrawn && !record.date.isAfter(day));
        return Stream.concat(current, replaced).max(Comparator.comparing(record -> record.date));
    }
}
