package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** One transaction that changed a herd: the number of its last change, and when it was recorded; both only ever rise. */
@Entity
@Table(name = "herd_change")
@IdClass(HerdChangeRow.Key.class)
public class HerdChangeRow {
    /** Herd and number. */
    public record Key(String herdId, long changeSeq) implements Serializable {}

    @Id
    @Column(name = "herd_id")
    public String herdId;

    @Id
    @Column(name = "change_seq")
    public long changeSeq;

    @Column(name = "recorded_at")
    public Instant recordedAt;
}
