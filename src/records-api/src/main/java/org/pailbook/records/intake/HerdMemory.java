package org.pailbook.records.intake;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CalvingRow;
import org.pailbook.records.store.ChangeTurn;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;

/**
 * What one request has read of a herd's animals, kept from one chunk of rows to the next for as long as nobody else changes the herd.
 *
 * <p>Whether somebody did is told by the number of the herd's last change, read under its lock: every change of an animal, calving or
 * departure raises it. Kinds that write what is remembered here forget it after each chunk.
 */
public final class HerdMemory {
    /** Some 10 MB. */
    private static final int MOST_ANIMALS = 20_000;

    private static final Set<Class<?>> ALWAYS_LOOKED_AT = Set.of(AnimalRow.class, CalvingRow.class, DepartureRow.class);

    private final Map<AnimalReference, String> animals = new HashMap<>();
    private final Set<String> seen = new HashSet<>();
    private Surroundings surroundings;
    private long lastChange;

    /** What is still true at that turn; the rest is forgotten. */
    void recall(ChangeTurn turn, LocalDate today) {
        boolean stillTrue = surroundings != null
                && lastChange == turn.lastChange()
                && surroundings.today().equals(today)
                && animals.size() <= MOST_ANIMALS
                && seen.size() <= MOST_ANIMALS;
        if (!stillTrue) {
            animals.clear();
            seen.clear();
            surroundings = new Surroundings(today);
            lastChange = turn.lastChange();
        }
    }

    /** Our ids of the animals named, those that are known. */
    Map<AnimalReference, String> idsOf(StatelessSession session, HerdRow herd, Collection<AnimalReference> named) {
        List<AnimalReference> unknown =
                named.stream().filter(animal -> !animals.containsKey(animal)).toList();
        animals.putAll(AnimalLookup.idsOf(session, herd, unknown));
        return animals;
    }

    /** What is known of these animals, and of others asked for before. */
    Surroundings around(StatelessSession session, RecordKind<?> kind, HerdRow herd, Collection<String> animalIds) {
        surroundings.load(session, herd, animalIds.stream().filter(seen::add).toList(), kind.looksAt());
        return surroundings;
    }

    /** The number the herd's last change has now, after rows of that kind were taken. */
    void taken(RecordKind<? extends StoredRecord> kind, long change) {
        lastChange = change;
        if (ALWAYS_LOOKED_AT.contains(kind.entity()) || kind.looksAt().contains(kind.entity())) {
            surroundings = null;
        }
    }
}
