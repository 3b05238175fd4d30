package org.pailbook.records.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** What columns of files mean, remembered for the next file like it. */
@ApplicationScoped
public class FileMappings implements PanacheRepositoryBase<FileMappingRow, String> {
    private final WriteGate gate;

    @Inject
    FileMappings(WriteGate gate) {
        this.gate = gate;
    }

    public Optional<FileMappingRow> of(HerdRow herd, String headerSha256, String kind) {
        return find("herdId = ?1 and headerSha256 = ?2 and kind = ?3", herd.id, headerSha256, kind)
                .firstResultOptional();
    }

    /** The one said last for that header, whatever the kind. */
    public Optional<FileMappingRow> latest(HerdRow herd, String headerSha256) {
        return find("herdId = ?1 and headerSha256 = ?2 order by savedAt desc", herd.id, headerSha256)
                .firstResultOptional();
    }

    /** Keeps it in the place of the one for that herd, header and kind. */
    public void keep(HerdRow herd, String headerSha256, String kind, String content, String savedBy, Instant now) {
        gate.write(session -> {
            session.createMutationQuery("update HerdRow set changeSeq = changeSeq where id = :id")
                    .setParameter("id", herd.id)
                    .executeUpdate();
            session.createMutationQuery(
                            "delete from FileMappingRow where herdId = :herd and headerSha256 = :header and kind = :kind")
                    .setParameter("herd", herd.id)
                    .setParameter("header", headerSha256)
                    .setParameter("kind", kind)
                    .executeUpdate();
            FileMappingRow row = new FileMappingRow();
            row.id = RecordIds.next();
            row.herdId = herd.id;
            row.headerSha256 = headerSha256;
            row.kind = kind;
            row.content = content;
            row.savedAt = now.truncatedTo(ChronoUnit.MILLIS);
            row.savedBy = savedBy;
            session.insert(row);
            return null;
        });
    }
}
