package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.testday.CowHistory;

/** Reads what is recorded of cows up to a day, for computing. Withdrawn records take no part. */
@ApplicationScoped
public class CowRecords {
    /** Some 20,000 rows at most, if each has ten lactations of ten tests. Ours. */
    private static final int ANIMALS_A_PART = 200;

    private final EntityManager entities;
    private final Animals animals;

    @Inject
    CowRecords(EntityManager entities, Animals animals) {
        this.entities = entities;
        this.animals = animals;
    }

    /** One animal, events after {@code asOf} left out. */
    public CowRecord ofAnimal(AnimalRow animal, LocalDate asOf) {
        return assemble(List.of(animal), List.of(animal.id), animal.herdId, asOf)
                .get(0);
    }

    /** All animals of a herd in order of id, events after {@code asOf} left out. */
    public List<CowRecord> ofHerd(String herdId, LocalDate asOf) {
        List<AnimalRow> all = animals.page(herdId, "", Integer.MAX_VALUE);
        return assemble(all, null, herdId, asOf);
    }

    /**
     * All animals of a herd in order of id, some at a time, so that a herd of any size can be gone through; events after {@code asOf} left
     * out.
     */
    public void inParts(String herdId, LocalDate asOf, BiConsumer<List<AnimalRow>, List<CowRecord>> part) {
        List<AnimalRow> some = animals.page(herdId, "", ANIMALS_A_PART);
        while (!some.isEmpty()) {
            part.accept(
                    some, assemble(some, some.stream().map(animal -> animal.id).toList(), herdId, asOf));
            String last = some.get(some.size() - 1).id;
            entities.clear(); // what was read stays with the request otherwise
            some = animals.page(herdId, last, ANIMALS_A_PART);
        }
    }

    private List<CowRecord> assemble(
            List<AnimalRow> of, Collection<String> onlyAnimals, String herdId, LocalDate asOf) {
        Map<String, List<CalvingRow>> calvings = events(CalvingRow.class, herdId, onlyAnimals, asOf);
        Map<String, List<DryOffRow>> dryOffs = events(DryOffRow.class, herdId, onlyAnimals, asOf);
        Map<String, List<DepartureRow>> departures = events(DepartureRow.class, herdId, onlyAnimals, asOf);
        Map<String, List<TestDayRow>> testDays = events(TestDayRow.class, herdId, onlyAnimals, asOf);
        return of.stream()
                .map(animal -> new CowRecord(
                        animal.id,
                        List.copyOf(animal.identifiers),
                        Optional.ofNullable(animal.name),
                        Optional.ofNullable(animal.breed),
                        new CowHistory(
                                Optional.ofNullable(animal.birthDate),
                                map(calvings.get(animal.id), CalvingRow::toLibrary),
                                map(dryOffs.get(animal.id), DryOffRow::toLibrary),
                                map(departures.get(animal.id), DepartureRow::toLibrary),
                                List.of(),
                                map(testDays.get(animal.id), TestDayRow::toLibrary))))
                .toList();
    }

    private <E extends AnimalEvent> Map<String, List<E>> events(
            Class<E> kind, String herdId, Collection<String> onlyAnimals, LocalDate asOf) {
        String some = onlyAnimals == null ? "" : " and animalId in :animals";
        var query = entities.createQuery(
                        "from " + kind.getSimpleName() + " where herdId = :herd and date <= :asOf and withdrawn = false"
                                + some + " order by animalId, date",
                        kind)
                .setParameter("herd", herdId)
                .setParameter("asOf", asOf);
        if (onlyAnimals != null) {
            query.setParameter("animals", onlyAnimals);
        }
        return query.getResultList().stream().collect(Collectors.groupingBy(event -> event.animalId));
    }

    private static <E, T> List<T> map(List<E> rows, Function<E, T> toLibrary) {
        return rows == null ? List.of() : rows.stream().map(toLibrary).toList();
    }
}
