package org.pailbook.records.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.hibernate.StatelessSession;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InParts;

/** Finds the animals that a chunk of rows names, in as many queries as there are schemes, not rows. */
final class AnimalLookup {
    private AnimalLookup() {}

    /** Our ids of those that are known in the herd and not withdrawn. */
    static Map<AnimalReference, String> idsOf(StatelessSession session, HerdRow herd, List<AnimalReference> named) {
        Map<AnimalReference, String> found = new HashMap<>();
        Map<String, List<AnimalReference>> byScheme =
                named.stream().collect(Collectors.groupingBy(animal -> animal.scheme() == null ? "" : animal.scheme()));
        byScheme.forEach((scheme, animals) -> {
            List<String> all = animals.stream().map(AnimalReference::id).toList();
            InParts.of(all, ids -> find(session, herd, scheme, ids, found));
        });
        return found;
    }

    private static void find(
            StatelessSession session,
            HerdRow herd,
            String scheme,
            List<String> ids,
            Map<AnimalReference, String> found) {
        if (scheme.isEmpty()) {
            session.createSelectionQuery(
                            "select id from AnimalRow where herdId = :herd and id in :ids and withdrawn = false",
                            String.class)
                    .setParameter("herd", herd.id)
                    .setParameter("ids", InParts.oneOrAll(ids))
                    .getResultList()
                    .forEach(id -> found.put(new AnimalReference(null, id), id));
        } else {
            session.createSelectionQuery(
                            "select i.identifier, i.animalId from AnimalIdentifierRow i, AnimalRow a"
                                    + " where i.herdId = :herd and i.scheme = :scheme and i.identifier in :ids"
                                    + " and a.id = i.animalId and a.withdrawn = false",
                            Object[].class)
                    .setParameter("herd", herd.id)
                    .setParameter("scheme", scheme)
                    .setParameter("ids", InParts.oneOrAll(ids))
                    .getResultList()
                    .forEach(row -> found.put(new AnimalReference(scheme, (String) row[0]), (String) row[1]));
        }
    }
}
