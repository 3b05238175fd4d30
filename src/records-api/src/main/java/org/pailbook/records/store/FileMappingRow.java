package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** What the columns of files with a certain header mean, as somebody said for a herd and a kind of record. */
@Entity
@Table(name = "file_mapping")
public class FileMappingRow {
    @Id
    public String id;

    @Column(name = "herd_id")
    public String herdId;

    /** Of the header's names, whatever their order. */
    @Column(name = "header_sha256")
    public String headerSha256;

    public String kind;

    /** JSON. */
    public String content;

    @Column(name = "saved_at")
    public Instant savedAt;

    @Column(name = "saved_by")
    public String savedBy;
}
