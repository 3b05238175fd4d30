package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.testday.CowHistory;

/**
 * Reads what is recorded of cows up to a day, for computing, as it was known at the last change the herd's row names. Withdrawn records
 * take no part.
 */
@ApplicationScoped
public class CowRecords {
    private final EntityManager entities;
    private final KnownAnimals animals;
    private final Versions versions;

    @Inject
    CowRecords(EntityManager entities, KnownAnimals animals, Versions versions) {
        this.entities = entities;
        this.animals = animals;
        this.versions = versions;
    }

    /** One animal, events after {@code asOf} left out. */
    public CowRecord ofAnimal(HerdRow herd, AnimalRow animal, LocalDate asOf) {
        return assemble(List.of(animal), animal.id, herd, asOf).get(0);
    }

    /** All animals of a herd in order of id, events after {@code asOf} left out. */
    public List<CowRecord> ofHerd(HerdRow herd, LocalDate asOf) {
        return assemble(animals.page(herd, "", Integer.MAX_VALUE, false), null, herd, asOf);
    }

    private List<CowRecord> assemble(List<AnimalRow> of, String onlyAnimal, HerdRow herd, LocalDate asOf) {
        Map<String, List<CalvingRow>> calvings = events(CalvingRow.class, herd, onlyAnimal, asOf);
        Map<String, List<DryOffRow>> dryOffs = events(DryOffRow.class, herd, onlyAnimal, asOf);
        Map<String, List<DepartureRow>> departures = events(DepartureRow.class, herd, onlyAnimal, asOf);
        Map<String, List<TestDayRow>> testDays = events(TestDayRow.class, herd, onlyAnimal, asOf);
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
                                map(away(departures.get(animal.id), asOf), DepartureRow::toLibrary),
                                List.of(),
                                map(testDays.get(animal.id), TestDayRow::toLibrary))))
                .toList();
    }

    /** Departures after which she has not come back. */
    private static List<DepartureRow> away(List<DepartureRow> departures, LocalDate asOf) {
        return departures == null
                ? null
                : departures.stream().filter(left -> left.isOpen(asOf)).toList();
    }

    /** Events of a kind by animal, each in order of day; of one animal, or of all if {@code onlyAnimal} is null. */
    <E extends AnimalEvent> Map<String, List<E>> events(
            Class<E> kind, HerdRow herd, String onlyAnimal, LocalDate asOf) {
        // the sum keeps the databases from taking the index by change, which holds nearly every row here
        var query = entities.createQuery(
                        "from " + kind.getSimpleName()
                                + " where herdId = :herd and date <= :asOf and changeSeq + 0 <= :last and withdrawn = false"
                                + (onlyAnimal == null ? "" : " and animalId = :animal") + " order by animalId, date",
                        kind)
                .setParameter("herd", herd.id)
                .setParameter("asOf", asOf)
                .setParameter("last", herd.changeSeq);
        if (onlyAnimal != null) {
            query.setParameter("animal", onlyAnimal);
        }
        List<E> found = query.getResultList();
        List<E> replaced = versions.replacedSince(kind, herd).stream()
                .filter(event -> !event.withdrawn && !event.date.isAfter(asOf))
                .filter(event -> onlyAnimal == null || event.animalId.equals(onlyAnimal))
                .toList();
        if (!replaced.isEmpty()) {
            found = new ArrayList<>(found);
            found.addAll(replaced);
            found.sort(Comparator.comparing((E event) -> event.animalId).thenComparing(event -> event.date));
        }
        return found.stream().collect(Collectors.groupingBy(event -> event.animalId));
    }

    static <E, T> List<T> map(List<E> rows, Function<E, T> toLibrary) {
        return rows == null ? List.of() : rows.stream().map(toLibrary).toList();
    }
}
