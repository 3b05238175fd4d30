package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The animals of a herd as they were known at the last change its row names. */
@ApplicationScoped
public class KnownAnimals {
    private final Animals animals;
    private final Versions versions;

    @Inject
    KnownAnimals(Animals animals, Versions versions) {
        this.animals = animals;
        this.versions = versions;
    }

    /**
     * Which animals are wanted.
     *
     * @param bornBy day after which none was born, as far as is known; null for any
     */
    public record Selection(boolean includeWithdrawn, LocalDate bornBy) {
        boolean holds(AnimalRow animal) {
            return (includeWithdrawn || !animal.withdrawn)
                    && (bornBy == null || animal.birthDate == null || !animal.birthDate.isAfter(bornBy));
        }
    }

    /** Animals in order of id after {@code afterId}, with their identifiers. */
    public List<AnimalRow> page(HerdRow herd, String afterId, int most, boolean includeWithdrawn) {
        return page(herd, afterId, most, new Selection(includeWithdrawn, null));
    }

    /** The same of those selected. */
    public List<AnimalRow> page(HerdRow herd, String afterId, int most, Selection selection) {
        List<AnimalRow> found = new ArrayList<>(animals.page(herd.id, herd.changeSeq, afterId, most, selection));
        // identifiers are read after the animals: of one changed between, only the replaced version has those it had
        // then
        List<AnimalRow> replaced = versions.replacedSince(AnimalRow.class, herd);
        Set<String> changed = replaced.stream().map(animal -> animal.id).collect(Collectors.toSet());
        found.removeIf(animal -> changed.contains(animal.id));
        found.addAll(replaced.stream()
                .filter(selection::holds)
                .filter(animal -> animal.id.compareTo(afterId) > 0)
                .toList());
        found.sort(Comparator.comparing(animal -> animal.id));
        return found.size() > most ? found.subList(0, most) : found;
    }

    /** How many there are. */
    public long count(HerdRow herd, Selection selection) {
        return versions.count(
                AnimalRow.class,
                herd,
                () -> animals.count(herd.id, herd.changeSeq, selection),
                () -> animals.ids(herd.id, herd.changeSeq, selection),
                selection::holds);
    }

    /** One animal by our id, whether or not its record was withdrawn. */
    public Optional<AnimalRow> byId(HerdRow herd, String id) {
        return asKnown(herd, animals.byId(herd.id, id), animal -> animal.id.equals(id));
    }

    /** One animal by any identifier it had then, whether or not its record was withdrawn. */
    public Optional<AnimalRow> byIdentifier(HerdRow herd, AnimalIdentifier identifier) {
        return asKnown(
                herd, animals.byIdentifier(herd.id, identifier), animal -> animal.identifiers.contains(identifier));
    }

    private Optional<AnimalRow> asKnown(HerdRow herd, Optional<AnimalRow> now, Predicate<AnimalRow> meant) {
        List<AnimalRow> replaced = versions.replacedSince(AnimalRow.class, herd);
        return replaced.stream()
                .filter(meant)
                .findFirst()
                .or(() -> now.filter(animal -> animal.changeSeq <= herd.changeSeq)
                        .filter(animal -> replaced.stream().noneMatch(before -> before.id.equals(animal.id))));
    }

    /** The first identifier of each of these animals. */
    public Map<String, AnimalIdentifier> shownIdentifiers(HerdRow herd, Collection<String> animalIds) {
        Map<String, AnimalIdentifier> shown = animals.shownIdentifiers(herd.id, animalIds);
        versions.replacedSince(AnimalRow.class, herd).forEach(animal -> {
            if (shown.containsKey(animal.id) && !animal.identifiers.isEmpty()) {
                shown.put(animal.id, animal.identifiers.get(0));
            }
        });
        return shown;
    }
}
