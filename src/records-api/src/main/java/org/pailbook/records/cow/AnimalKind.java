package org.pailbook.records.cow;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.hibernate.StatelessSession;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalIdentifierRow;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InParts;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How animals are read, checked, found by any of their identifiers, and shown. */
@Singleton
public final class AnimalKind extends RecordKind<AnimalRow> {
    static final List<String> SEXES = List.of("female", "male");
    private static final int MOST_IDENTIFIERS = 10;
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_BREED = 60;
    private static final int LONGEST_IDENTIFIER = 100;

    @Override
    public String name() {
        return "animals";
    }

    @Override
    public Class<AnimalRow> entity() {
        return AnimalRow.class;
    }

    @Override
    public List<Column> columns() {
        return List.of(
                Column.text("animal_scheme", "identifiers", "0", "scheme"),
                Column.text("animal_id", "identifiers", "0", "id"),
                Column.text("name", "name"),
                Column.text("breed", "breed"),
                Column.text("sex", "sex"),
                Column.text("birth_date", "birthDate"),
                Column.text("source", "source"),
                Column.text("source_id", "sourceId"));
    }

    @Override
    protected AnimalRow readContent(Fields fields) {
        AnimalRow record = new AnimalRow();
        record.identifiers = identifiers(fields);
        record.name = fields.text("name", LONGEST_NAME);
        record.breed = fields.text("breed", LONGEST_BREED);
        record.sex = fields.code("sex", SEXES);
        record.birthDate = fields.date("birthDate");
        return record;
    }

    private static List<AnimalIdentifier> identifiers(Fields fields) {
        fields.require("identifiers");
        Set<AnimalIdentifier> identifiers = new LinkedHashSet<>();
        List<Fields> posted = fields.objects("identifiers", MOST_IDENTIFIERS);
        for (Fields entry : posted) {
            String scheme = entry.requiredText("scheme", LONGEST_IDENTIFIER);
            String id = entry.requiredText("id", LONGEST_IDENTIFIER);
            entry.finish();
            if (id != null && id.contains(":")) {
                fields.findings()
                        .add(FindingView.error(
                                        "bad-identifier",
                                        entry.pointer("id"),
                                        "must not hold a colon: it parts scheme and id in paths")
                                .seen(id));
            } else if (scheme != null && id != null) {
                identifiers.add(new AnimalIdentifier(scheme, id));
            }
        }
        boolean nothingFound = posted.isEmpty()
                && fields.findings().stream()
                        .noneMatch(finding -> String.valueOf(finding.pointer()).endsWith("/identifiers"));
        if (nothingFound) {
            fields.findings()
                    .add(FindingView.error(
                            "required", fields.pointer("identifiers"), "must hold at least one identifier"));
        }
        return List.copyOf(identifiers);
    }

    @Override
    protected void writeContent(AnimalRow record, ObjectNode content) {
        ArrayNode identifiers = content.putArray("identifiers");
        record.identifiers.forEach(identifier ->
                identifiers.addObject().put("scheme", identifier.scheme()).put("id", identifier.id()));
        if (record.name != null) {
            content.put("name", record.name);
        }
        if (record.breed != null) {
            content.put("breed", record.breed);
        }
        if (record.sex != null) {
            content.put("sex", record.sex);
        }
        if (record.birthDate != null) {
            content.put("birthDate", record.birthDate.toString());
        }
    }

    @Override
    protected void check(Posted<AnimalRow> posted, AnimalRow replaced, Surroundings surroundings) {
        AnimalRow record = posted.record();
        if (record.birthDate != null && record.birthDate.isAfter(surroundings.today())) {
            posted.add(FindingView.error("date-in-future", posted.pointer("birthDate"), "lies in the future")
                    .seen(record.birthDate.toString()));
        }
        if (replaced == null || posted.isWhole() || replaced.identifiers.equals(record.identifiers)) {
            return;
        }
        List<AnimalIdentifier> lost = replaced.identifiers.stream()
                .filter(identifier -> !record.identifiers.contains(identifier))
                .toList();
        if (!lost.isEmpty()) {
            // an identifier is how later records find the animal: posting fewer adds to them, it does not take any away
            List<AnimalIdentifier> all = new ArrayList<>(record.identifiers);
            all.addAll(lost);
            if (all.size() > MOST_IDENTIFIERS) {
                posted.add(FindingView.error(
                                "too-many",
                                posted.pointer("identifiers"),
                                "must have at most " + MOST_IDENTIFIERS
                                        + " entries with those kept from before; put the record with those that are to stay")
                        .seen(all.size() + " entries"));
                return;
            }
            record.identifiers = List.copyOf(all);
            posted.add(FindingView.info(
                            "identifiers-kept", posted.pointer("identifiers"), "identifiers not posted again are kept")
                    .seen(lost.stream()
                            .map(one -> one.scheme() + ":" + one.id())
                            .collect(Collectors.joining(", "))));
        }
    }

    @Override
    protected void readKept(ObjectNode kept, AnimalRow record) {
        // all of them, also those above today's limit: without identifiers nobody could tell who it was
        List<AnimalIdentifier> identifiers = new ArrayList<>();
        kept.path("identifiers")
                .forEach(one -> identifiers.add(new AnimalIdentifier(
                        one.path("scheme").textValue(), one.path("id").textValue())));
        record.identifiers = List.copyOf(identifiers);
    }

    @Override
    protected boolean namesAnimal() {
        return false;
    }

    @Override
    protected void assignAnimal(AnimalRow record, String animalId) {
        throw new UnsupportedOperationException("an animal names no other animal");
    }

    @Override
    protected List<?> naturalKeys(AnimalRow record) {
        return record.identifiers;
    }

    @Override
    protected List<AnimalRow> findByNaturalKeys(StatelessSession session, HerdRow herd, List<AnimalRow> posted) {
        Map<String, List<String>> idsByScheme = new HashMap<>();
        posted.forEach(record -> record.identifiers.forEach(identifier -> idsByScheme
                .computeIfAbsent(identifier.scheme(), any -> new ArrayList<>())
                .add(identifier.id())));
        Set<String> animalIds = new LinkedHashSet<>();
        idsByScheme.forEach((scheme, all) -> InParts.of(
                all,
                ids -> animalIds.addAll(session.createSelectionQuery(
                                "select animalId from AnimalIdentifierRow where herdId = :herd and scheme = :scheme and identifier in :ids",
                                String.class)
                        .setParameter("herd", herd.id)
                        .setParameter("scheme", scheme)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList())));
        List<AnimalRow> found = new ArrayList<>();
        InParts.of(
                animalIds,
                ids -> found.addAll(session.createSelectionQuery("from AnimalRow where id in :ids", AnimalRow.class)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList()));
        return found;
    }

    @Override
    protected void complete(StatelessSession session, Collection<AnimalRow> stored) {
        Map<String, List<AnimalIdentifier>> byAnimal = new HashMap<>();
        InParts.of(
                stored.stream().map(animal -> animal.id).toList(),
                ids -> session.createSelectionQuery(
                                "from AnimalIdentifierRow where animalId in :ids order by animalId, placeNo",
                                AnimalIdentifierRow.class)
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .getResultList()
                        .forEach(row -> byAnimal.computeIfAbsent(row.animalId, any -> new ArrayList<>())
                                .add(new AnimalIdentifier(row.scheme, row.identifier))));
        stored.forEach(animal -> animal.identifiers = List.copyOf(byAnimal.getOrDefault(animal.id, List.of())));
    }

    @Override
    protected void afterWrite(StatelessSession session, List<AnimalRow> created, List<AnimalRow> updated) {
        InParts.of(
                updated.stream().map(animal -> animal.id).toList(),
                ids -> session.createMutationQuery("delete from AnimalIdentifierRow where animalId in :ids")
                        .setParameter("ids", InParts.oneOrAll(ids))
                        .executeUpdate());
        List<AnimalIdentifierRow> rows = new ArrayList<>();
        created.forEach(animal -> rows.addAll(rowsOf(animal)));
        updated.forEach(animal -> rows.addAll(rowsOf(animal)));
        session.insertMultiple(rows);
    }

    private static List<AnimalIdentifierRow> rowsOf(AnimalRow animal) {
        List<AnimalIdentifierRow> rows = new ArrayList<>();
        for (int i = 0; i < animal.identifiers.size(); i++) {
            AnimalIdentifierRow row = new AnimalIdentifierRow();
            row.id = RecordIds.next();
            row.herdId = animal.herdId;
            row.animalId = animal.id;
            row.scheme = animal.identifiers.get(i).scheme();
            row.identifier = animal.identifiers.get(i).id();
            row.placeNo = i;
            rows.add(row);
        }
        return rows;
    }
}
