package org.pailbook.records.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What was known of a herd at an instant: the number of its last change then, and the name and zone it had. */
@ApplicationScoped
public class HerdChanges {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final EntityManager entities;
    private final Versions versions;

    @Inject
    HerdChanges(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** When the last change the herd's row knows of was recorded; when the herd was made, if there was none. */
    public Instant lastRecorded(HerdRow herd) {
        return entities
                .createQuery(
                        "select recordedAt from HerdChangeRow where herdId = :herd and changeSeq = :seq", Instant.class)
                .setParameter("herd", herd.id)
                .setParameter("seq", herd.changeSeq)
                .getResultList()
                .stream()
                .findFirst()
                .orElse(herd.recordedAt);
    }

    /**
     * The herd as it was known at that instant; empty if it was not known yet.
     *
     * <p>The row's {@code changeSeq} is the number of its last change then. Whatever is read for that row is read up to that change.
     */
    public Optional<HerdRow> asKnown(HerdRow herd, Instant at) {
        List<SupersededVersionRow> replaced = versions.replaced(herd.id, herd.id);
        Instant made = replaced.isEmpty() ? herd.recordedAt : replaced.get(0).recordedAt;
        if (made.isAfter(at)) {
            return Optional.empty();
        }
        Long last = entities.createQuery(
                        "select max(changeSeq) from HerdChangeRow where herdId = :herd and recordedAt <= :at",
                        Long.class)
                .setParameter("herd", herd.id)
                .setParameter("at", at)
                .getSingleResult();
        long lastChange = last == null ? 0 : last;
        HerdRow known = herd.versionSeq <= lastChange
                ? copy(herd, herd.name, herd.timeZone)
                : replaced.stream()
                        .filter(version -> version.changeSeq <= lastChange)
                        .reduce((earlier, later) -> later)
                        .map(version -> restore(herd, version))
                        .orElseThrow();
        known.changeSeq = lastChange;
        return Optional.of(known);
    }

    /** The herd with the name and zone it had in that version. */
    public static HerdRow restore(HerdRow herd, SupersededVersionRow version) {
        JsonNode content;
        try {
            content = JSON.readTree(version.content);
        } catch (JsonProcessingException damaged) {
            throw new IllegalStateException("kept content is not JSON", damaged);
        }
        HerdRow was = copy(
                herd, content.get("name").textValue(), content.get("timeZone").textValue());
        was.version = version.version;
        was.versionSeq = version.changeSeq;
        was.recordedAt = version.recordedAt;
        was.recordedBy = version.recordedBy;
        return was;
    }

    private static HerdRow copy(HerdRow herd, String name, String timeZone) {
        HerdRow copy = new HerdRow();
        copy.id = herd.id;
        copy.code = herd.code;
        copy.name = name;
        copy.timeZone = timeZone;
        copy.changeSeq = herd.changeSeq;
        copy.version = herd.version;
        copy.versionSeq = herd.versionSeq;
        copy.recordedAt = herd.recordedAt;
        copy.recordedBy = herd.recordedBy;
        return copy;
    }
}
