package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.lactation.testday.MilkingShares;
import org.pailbook.lactation.testday.OddTestDays;
import org.pailbook.lactation.testday.TestDay;

/**
 * Reads what is recorded of cows up to a day, for computing, as it was known at the last change the herd's row names. Withdrawn records
 * take no part.
 */
@ApplicationScoped
public class CowRecords {
    /** Some 20,000 rows at most, if each has ten lactations of ten tests. Ours. */
    private static final int ANIMALS_A_PART = 200;
    /** A year of two or three milkings a day of each is some 50,000 rows. Ours. */
    private static final int MILKED_ANIMALS_A_PART = 50;

    /** What is taken of a herd of which nothing is known; its days in part take no part until it is. */
    private static final double EQUAL_HALVES = 0.5;

    private static final MilkingShares NO_SHARES = MilkingShares.ofSums(0, 0, 0, EQUAL_HALVES);

    /** Some 5 kB each with {@link #TEST_DAYS_OF_ONE} (measured), so 60 MB at most: pages and lists of one state of a herd read it once. Ours. */
    private static final int MOST_ANIMALS_KEPT = 12_000;

    /** An animal with more test days counts as several: daily milkings of a year take fifty times the room. */
    private static final int TEST_DAYS_OF_ONE = 30;

    private static final int MOST_HERDS_KEPT = 64;

    private final KeptByState<Herd> kept = new KeptByState<>(MOST_HERDS_KEPT, MOST_ANIMALS_KEPT, Herd::weight);
    private final EntityManager entities;
    private final KnownAnimals animals;
    private final CowEvents events;
    private final HerdLimits herdLimits;
    /** rows of milkings held at once, some 1 kB each while they are read */
    private final int milkingsAtOnce;

    @Inject
    CowRecords(
            EntityManager entities,
            KnownAnimals animals,
            CowEvents events,
            HerdLimits herdLimits,
            @ConfigProperty(name = "pailbook.milkings.at.once") int milkingsAtOnce) {
        this.milkingsAtOnce = milkingsAtOnce;
        this.herdLimits = herdLimits;
        this.entities = entities;
        this.animals = animals;
        this.events = events;
    }

    /** One animal, events after {@code asOf} left out. */
    public CowRecord ofAnimal(HerdRow herd, AnimalRow animal, LocalDate asOf) {
        return assemble(List.of(animal), List.of(animal.id), herd, asOf).get(0);
    }

    /** All animals of a herd in order of id, events after {@code asOf} left out. */
    public List<CowRecord> ofHerd(HerdRow herd, LocalDate asOf) {
        return whole(herd, asOf).records();
    }

    /** Animals of a herd and what is recorded of each, in the same order. */
    private record Herd(List<AnimalRow> animals, List<CowRecord> records, int weight) {
        static Herd of(List<AnimalRow> animals, List<CowRecord> records) {
            int testDays = records.stream()
                    .mapToInt(record -> record.history().testDays().size())
                    .sum();
            return new Herd(List.copyOf(animals), records, 1 + animals.size() + testDays / TEST_DAYS_OF_ONE);
        }
    }

    /** Holds an invented herd, which is in no database, as if it had been read. */
    public void hold(HerdRow herd, LocalDate asOf, List<AnimalRow> of, List<CowRecord> records) {
        kept.of(herd, asOf, () -> Herd.of(of, records));
    }

    private Herd whole(HerdRow herd, LocalDate asOf) {
        return kept.of(herd, asOf, () -> {
            List<AnimalRow> all = animals.page(herd, "", Integer.MAX_VALUE, false);
            return Herd.of(
                    all, isMilkedOften(herd) ? assembleInParts(all, herd, asOf) : assemble(all, null, herd, asOf));
        });
    }

    /** Whether single milkings are so many that not all of them can be held at once. */
    private boolean isMilkedOften(HerdRow herd) {
        return !entities.createQuery("select 1 from MilkingRow where herdId = :herd", Integer.class)
                .setParameter("herd", herd.id)
                .setFirstResult(milkingsAtOnce)
                .setMaxResults(1)
                .getResultList()
                .isEmpty();
    }

    /** Milkings of some animals are summed to days before those of the next are read. */
    private List<CowRecord> assembleInParts(List<AnimalRow> all, HerdRow herd, LocalDate asOf) {
        MilkingShares shares = sharesOf(herd, asOf);
        List<CowRecord> records = new ArrayList<>(all.size());
        for (int from = 0; from < all.size(); from += MILKED_ANIMALS_A_PART) {
            List<AnimalRow> some = all.subList(from, Math.min(all.size(), from + MILKED_ANIMALS_A_PART));
            List<String> ids = some.stream().map(animal -> animal.id).toList();
            records.addAll(assemble(some, ids, herd, asOf, () -> shares));
            entities.clear(); // what was read stays with the request otherwise
        }
        return List.copyOf(records);
    }

    /**
     * All animals of a herd in order of id, some at a time, so that a herd of any size can be gone through; events after {@code asOf} left
     * out.
     */
    public void inParts(HerdRow herd, LocalDate asOf, BiConsumer<List<AnimalRow>, List<CowRecord>> part) {
        if (animals.count(herd, new KnownAnimals.Selection(false, null)) <= MOST_ANIMALS_KEPT) {
            Herd all = whole(herd, asOf);
            part.accept(all.animals(), all.records());
            return;
        }
        MilkingShares shares = sharesOf(herd, asOf);
        List<AnimalRow> some = animals.page(herd, "", ANIMALS_A_PART, false);
        while (!some.isEmpty()) {
            List<String> ids = some.stream().map(animal -> animal.id).toList();
            part.accept(some, assemble(some, ids, herd, asOf, () -> shares));
            String last = some.get(some.size() - 1).id;
            entities.clear(); // what was read stays with the request otherwise
            some = animals.page(herd, last, ANIMALS_A_PART, false);
        }
    }

    private List<CowRecord> assemble(List<AnimalRow> of, Collection<String> onlyAnimals, HerdRow herd, LocalDate asOf) {
        return assemble(of, onlyAnimals, herd, asOf, () -> sharesOf(herd, asOf));
    }

    /** @param ofHerd asked only where some of the animals have milkings */
    private List<CowRecord> assemble(
            List<AnimalRow> of,
            Collection<String> onlyAnimals,
            HerdRow herd,
            LocalDate asOf,
            Supplier<MilkingShares> ofHerd) {
        Map<String, List<CalvingRow>> calvings = events.of(CalvingRow.class, herd, onlyAnimals, asOf);
        Map<String, List<DryOffRow>> dryOffs = events.of(DryOffRow.class, herd, onlyAnimals, asOf);
        Map<String, List<DepartureRow>> departures = events.of(DepartureRow.class, herd, onlyAnimals, asOf);
        Map<String, List<CowEvents.Weighed>> testDays = events.weighed(herd, onlyAnimals, asOf);
        Map<String, List<MilkingRow>> milkings = events.of(MilkingRow.class, herd, onlyAnimals, asOf);
        DatedLimits limits = herdLimits.known(herd);
        MilkingShares shares = milkings.isEmpty() ? NO_SHARES : ofHerd.get();
        return of.parallelStream()
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
                                tests(
                                        testDays.getOrDefault(animal.id, List.of()),
                                        milkings.get(animal.id),
                                        shares,
                                        map(calvings.get(animal.id), row -> row.date),
                                        limits)),
                        limits))
                .toList();
    }

    /** Test days and those made from milkings, each with what is to be said about it and the record that says it. */
    private static List<TestDay> tests(
            List<CowEvents.Weighed> rows,
            List<MilkingRow> milkings,
            MilkingShares shares,
            List<LocalDate> calvings,
            DatedLimits limits) {
        Map<LocalDate, String> ids =
                rows.stream().collect(Collectors.toMap(row -> row.test().date(), CowEvents.Weighed::id, (a, b) -> b));
        List<TestDay> posted = rows.stream().map(CowEvents.Weighed::test).toList();
        return OddTestDays.named(MilkedDays.beside(posted, milkings, shares), calvings, BreedGroup.UNKNOWN, limits)
                .stream()
                .map(test -> test.notes().isEmpty() || !ids.containsKey(test.date())
                        ? test
                        : test.withRecord(ids.get(test.date())))
                .toList();
    }

    /** What the herd's days with both milkings show; of versions replaced since, those now in force stand in. */
    private MilkingShares sharesOf(HerdRow herd, LocalDate asOf) {
        Object[] sums = entities.createQuery(
                        "select sum(a.milkKg), sum(a.milkKg + p.milkKg), count(a.id) from MilkingRow a, MilkingRow p"
                                + " where a.herdId = :herd and p.herdId = :herd and p.animalId = a.animalId and p.date = a.date"
                                + " and a.milkingOfDay = 'am' and p.milkingOfDay = 'pm'"
                                + " and (a.milkingsPerDay is null or a.milkingsPerDay = 2)"
                                + " and a.withdrawn = false and p.withdrawn = false and a.date <= :asOf"
                                + " and a.changeSeq <= :last and p.changeSeq <= :last",
                        Object[].class)
                .setParameter("herd", herd.id)
                .setParameter("asOf", asOf)
                .setParameter("last", herd.changeSeq)
                .getSingleResult();
        int paired = ((Number) sums[2]).intValue();
        return paired == 0
                ? NO_SHARES
                : MilkingShares.ofSums(
                        ((Number) sums[0]).doubleValue(), ((Number) sums[1]).doubleValue(), paired, EQUAL_HALVES);
    }

    /** Departures after which she has not come back. */
    private static List<DepartureRow> away(List<DepartureRow> departures, LocalDate asOf) {
        return departures == null
                ? null
                : departures.stream().filter(left -> left.isOpen(asOf)).toList();
    }

    private static <E, T> List<T> map(List<E> rows, Function<E, T> toLibrary) {
        return rows == null ? List.of() : rows.stream().map(toLibrary).toList();
    }
}
