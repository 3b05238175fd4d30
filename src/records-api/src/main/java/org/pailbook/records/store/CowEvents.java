package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.testday.TestDay;

/** Reads the events of cows for computing, as they were known at the last change the herd's row names. */
@ApplicationScoped
class CowEvents {
    /** Hibernate keeps no second copy of such rows to find changes by: half the memory for a large herd. */
    static final String READ_ONLY = "org.hibernate.readOnly";

    private final EntityManager entities;
    private final Versions versions;

    @Inject
    CowEvents(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** A test day of an animal and the record that says it. */
    record Weighed(String animalId, String id, TestDay test) {
        static Weighed of(TestDayRow row) {
            return new Weighed(row.animalId, row.id, row.toLibrary());
        }

        LocalDate date() {
            return test.date();
        }
    }

    /** Test days by animal as {@link #of} has them: most rows of a herd by far, so that only what is computed with is read. */
    Map<String, List<Weighed>> weighed(HerdRow herd, Collection<String> onlyAnimals, LocalDate asOf) {
        List<Weighed> found = new ArrayList<>();
        for (Object[] row : select(TestDayRow.COMPUTED_WITH, Object[].class, TestDayRow.class, herd, onlyAnimals, asOf)
                .getResultList()) {
            found.add(Weighed.of(TestDayRow.of(row)));
        }
        List<TestDayRow> replaced = replaced(TestDayRow.class, herd, found, Weighed::id, onlyAnimals, asOf);
        if (!replaced.isEmpty()) {
            replaced.forEach(row -> found.add(Weighed.of(row)));
            found.sort(Comparator.comparing(Weighed::animalId).thenComparing(Weighed::date));
        }
        return found.stream().collect(Collectors.groupingBy(Weighed::animalId));
    }

    /** Events of a kind by animal, each in order of day; of some animals, or of all if {@code onlyAnimals} is null. */
    <E extends AnimalEvent> Map<String, List<E>> of(
            Class<E> kind, HerdRow herd, Collection<String> onlyAnimals, LocalDate asOf) {
        List<E> found = select("", kind, kind, herd, onlyAnimals, asOf)
                .setHint(READ_ONLY, true)
                .getResultList();
        List<E> replaced = replaced(kind, herd, found, event -> event.id, onlyAnimals, asOf);
        if (!replaced.isEmpty()) {
            found = new ArrayList<>(found);
            found.addAll(replaced);
            found.sort(Comparator.comparing((E event) -> event.animalId).thenComparing(event -> event.date));
        }
        return found.stream().collect(Collectors.groupingBy(event -> event.animalId));
    }

    private <T> TypedQuery<T> select(
            String what,
            Class<T> answered,
            Class<? extends AnimalEvent> kind,
            HerdRow herd,
            Collection<String> onlyAnimals,
            LocalDate asOf) {
        // the sum keeps the databases from taking the index by change, which holds nearly every row here
        TypedQuery<T> query = entities.createQuery(
                        what + "from " + kind.getSimpleName()
                                + " where herdId = :herd and date <= :asOf and changeSeq + 0 <= :last and withdrawn = false"
                                + (onlyAnimals == null ? "" : " and animalId in :animals") + " order by animalId, date",
                        answered)
                .setParameter("herd", herd.id)
                .setParameter("asOf", asOf)
                .setParameter("last", herd.changeSeq);
        return onlyAnimals == null ? query : query.setParameter("animals", onlyAnimals);
    }

    /** Versions that held at the last change the herd's row names and were replaced since, besides those read before. */
    private <E extends AnimalEvent, R> List<E> replaced(
            Class<E> kind,
            HerdRow herd,
            List<R> read,
            Function<R, String> id,
            Collection<String> onlyAnimals,
            LocalDate asOf) {
        return versions.replacedSince(kind, herd, read, id).stream()
                .filter(event -> !event.withdrawn && !event.date.isAfter(asOf))
                .filter(event -> onlyAnimals == null || onlyAnimals.contains(event.animalId))
                .toList();
    }
}
