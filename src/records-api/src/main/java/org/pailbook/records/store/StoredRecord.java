package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Id;
import jakarta.persistence.MappedSuperclass;
import java.time.Instant;

/** What every kept record has besides its content: whose it is, which version, since when, from where. */
@MappedSuperclass
public abstract class StoredRecord {
    @Id
    public String id;

    @Column(name = "herd_id")
    public String herdId;

    public int version;

    /** Number of the change that made this version, gap-free within the herd. */
    @Column(name = "change_seq")
    public long changeSeq;

    @Column(name = "recorded_at")
    public Instant recordedAt;

    /** Id of the key that wrote it. */
    @Column(name = "recorded_by")
    public String recordedBy;

    /** Which tool sent it. */
    public String source;

    /** Its id in that tool. */
    @Column(name = "source_id")
    public String sourceId;

    public boolean withdrawn;
}
