package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.panache.common.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The animals of the herds, found by our id or by any of their identifiers. */
@ApplicationScoped
public class Animals implements PanacheRepositoryBase<AnimalRow, String> {
    private final EntityManager entities;

    @Inject
    Animals(EntityManager entities) {
        this.entities = entities;
    }

    /** One animal with its identifiers, whether or not its record was withdrawn. */
    public Optional<AnimalRow> byId(String herdId, String id) {
        return withIdentifiers(find("herdId = ?1 and id = ?2", herdId, id).list()).stream()
                .findFirst();
    }

    public Optional<AnimalRow> byIdentifier(String herdId, AnimalIdentifier identifier) {
        List<String> owner = entities.createQuery(
                        "select animalId from AnimalIdentifierRow where herdId = :herd and scheme = :scheme and identifier = :id",
                        String.class)
                .setParameter("herd", herdId)
                .setParameter("scheme", identifier.scheme())
                .setParameter("id", identifier.id())
                .getResultList();
        return owner.isEmpty() ? Optional.empty() : byId(herdId, owner.get(0));
    }

    /** Animals in order of id, after {@code afterId}, with their identifiers; those changed after {@code lastChange} left out. */
    List<AnimalRow> page(String herdId, long lastChange, String afterId, int most, KnownAnimals.Selection selection) {
        List<AnimalRow> found = find(
                        "herdId = :herd and id > :after and changeSeq + 0 <= :last" + where(selection) + " order by id",
                        parameters(herdId, lastChange, selection).and("after", afterId))
                .withHint(CowEvents.READ_ONLY, true)
                .page(0, most)
                .list();
        // a whole herd's in one query: those of animals left out are few
        return most == Integer.MAX_VALUE ? withIdentifiers(found, identifiersOfHerd(herdId)) : withIdentifiers(found);
    }

    long count(String herdId, long lastChange, KnownAnimals.Selection selection) {
        return count(
                "herdId = :herd and changeSeq + 0 <= :last" + where(selection),
                parameters(herdId, lastChange, selection));
    }

    List<String> ids(String herdId, long lastChange, KnownAnimals.Selection selection) {
        return find(
                        "select id from AnimalRow where herdId = :herd and changeSeq + 0 <= :last" + where(selection),
                        parameters(herdId, lastChange, selection))
                .project(String.class)
                .list();
    }

    private static String where(KnownAnimals.Selection selection) {
        return (selection.includeWithdrawn() ? "" : " and withdrawn = false")
                + (selection.bornBy() == null ? "" : " and (birthDate is null or birthDate <= :bornBy)");
    }

    private static Parameters parameters(String herdId, long lastChange, KnownAnimals.Selection selection) {
        Parameters parameters = Parameters.with("herd", herdId).and("last", lastChange);
        return selection.bornBy() == null ? parameters : parameters.and("bornBy", selection.bornBy());
    }

    /** The first identifier of each of these animals. */
    public Map<String, AnimalIdentifier> shownIdentifiers(String herdId, Collection<String> animalIds) {
        Map<String, AnimalIdentifier> shown = new LinkedHashMap<>();
        if (!animalIds.isEmpty()) {
            identifiersOf(animalIds).forEach(row -> shown.putIfAbsent(row.animalId, row.toIdentifier()));
        }
        return shown;
    }

    /** Records of any kind; where they are animals, with their identifiers. */
    <E extends StoredRecord> List<E> complete(Class<E> kind, List<E> records) {
        if (kind == AnimalRow.class) {
            withIdentifiers(records.stream().map(AnimalRow.class::cast).toList());
        }
        return records;
    }

    List<AnimalRow> withIdentifiers(List<AnimalRow> animals) {
        return withIdentifiers(
                animals, identifiersOf(animals.stream().map(animal -> animal.id).toList()));
    }

    /** @param identifiers theirs, and maybe those of others, each animal's in order */
    private static List<AnimalRow> withIdentifiers(List<AnimalRow> animals, List<AnimalIdentifierRow> identifiers) {
        Map<String, List<AnimalIdentifier>> byAnimal = new HashMap<>();
        identifiers.forEach(row ->
                byAnimal.computeIfAbsent(row.animalId, id -> new ArrayList<>(1)).add(row.toIdentifier()));
        animals.forEach(animal -> animal.identifiers = byAnimal.getOrDefault(animal.id, List.of()));
        return animals;
    }

    private List<AnimalIdentifierRow> identifiersOfHerd(String herdId) {
        return entities.createQuery(
                        "from AnimalIdentifierRow where herdId = :herd order by animalId, placeNo",
                        AnimalIdentifierRow.class)
                .setParameter("herd", herdId)
                .setHint(CowEvents.READ_ONLY, true)
                .getResultList();
    }

    private List<AnimalIdentifierRow> identifiersOf(Collection<String> animalIds) {
        List<AnimalIdentifierRow> found = new ArrayList<>();
        InParts.of(
                animalIds,
                ids -> found.addAll(entities.createQuery(
                                "from AnimalIdentifierRow where animalId in :ids order by animalId, placeNo",
                                AnimalIdentifierRow.class)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList()));
        return found;
    }
}
