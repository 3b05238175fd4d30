package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the prices of a herd, as known at the last change the herd's row names. */
@ApplicationScoped
public class Prices {
    private final EntityManager entities;
    private final Versions versions;

    @Inject
    Prices(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** The set of prices that holds on a day: the latest that had begun. */
    public Optional<PriceRow> on(HerdRow herd, LocalDate day) {
        Stream<PriceRow> current = entities
                .createQuery(
                        "from PriceRow where herdId = :herd and date <= :day and changeSeq <= :last and withdrawn = false",
                        PriceRow.class)
                .setParameter("herd", herd.id)
                .setParameter("day", day)
                .setParameter("last", herd.changeSeq)
                .getResultList()
                .stream();
        Stream<PriceRow> replaced = versions.replacedSince(PriceRow.class, herd).stream()
                .filter(price -> !price.withdrawn && !price.date.isAfter(day));
        return Stream.concat(current, replaced).max(Comparator.comparing(price -> price.date));
    }
}
