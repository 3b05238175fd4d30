package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** A version of a record that was replaced, with its full content as JSON. Never changed, never deleted. */
@Entity
@Table(name = "superseded_version")
@IdClass(SupersededVersionRow.Key.class)
public class SupersededVersionRow {
    /** Record and version. */
    public record Key(String recordId, int version) implements Serializable {}

    @Id
    @Column(name = "record_id")
    public String recordId;

    @Id
    public int version;

    @Column(name = "herd_id")
    public String herdId;

    public String kind;

    @Column(name = "change_seq")
    public long changeSeq;

    @Column(name = "recorded_at")
    public Instant recordedAt;

    @Column(name = "recorded_by")
    public String recordedBy;

    public boolean withdrawn;

    @Column(columnDefinition = "TEXT")
    public String content;
}
