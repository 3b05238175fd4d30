package org.pailbook.records.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.hibernate.StatelessSession;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.lactation.testday.ValueLimits;

/** The limits a herd's values are held against, by day: those of the library, with the usual ranges the herd's settings move outwards. */
@ApplicationScoped
public class HerdLimits {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final EntityManager entities;
    private final Versions versions;

    @Inject
    HerdLimits(EntityManager entities, Versions versions) {
        this.entities = entities;
        this.versions = versions;
    }

    /** As known at the last change the herd's row names. */
    public DatedLimits known(HerdRow herd) {
        Stream<SettingRow> current = entities
                .createQuery(
                        "from SettingRow where herdId = :herd and changeSeq <= :last and withdrawn = false",
                        SettingRow.class)
                .setParameter("herd", herd.id)
                .setParameter("last", herd.changeSeq)
                .getResultList()
                .stream();
        Stream<SettingRow> replaced =
                versions.replacedSince(SettingRow.class, herd).stream().filter(set -> !set.withdrawn);
        return of(Stream.concat(current, replaced).toList());
    }

    /** As they are now, read within a write. */
    public static DatedLimits current(StatelessSession session, HerdRow herd) {
        return of(session.createSelectionQuery(
                        "from SettingRow where herdId = :herd and withdrawn = false", SettingRow.class)
                .setParameter("herd", herd.id)
                .getResultList());
    }

    private static DatedLimits of(List<SettingRow> sets) {
        Map<LocalDate, ValueLimits> limits = new HashMap<>();
        sets.forEach(set -> limits.put(set.date, limits(set)));
        return DatedLimits.of(limits);
    }

    private static ValueLimits limits(SettingRow set) {
        ValueLimits limits = ValueLimits.PUBLISHED;
        if (set.warningLimits == null) {
            return limits;
        }
        try {
            for (JsonNode own : JSON.readTree(set.warningLimits)) {
                String field = own.path("field").asText();
                OptionalDouble least = end(own.path("least"));
                OptionalDouble most = end(own.path("most"));
                // what was kept before our own range grew beyond it needs no saying
                if (limits.mayBeWidened(field, least, most)) {
                    limits = limits.withWiderUsual(field, least, most, "set by the herd from " + set.date);
                }
            }
            return limits;
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("kept limits are no JSON", broken);
        }
    }

    private static OptionalDouble end(JsonNode value) {
        return value.isNumber() ? OptionalDouble.of(value.doubleValue()) : OptionalDouble.empty();
    }
}
