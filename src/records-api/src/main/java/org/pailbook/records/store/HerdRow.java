package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.ZoneId;

/** A herd: who its records belong to and in which zone its days begin. */
@Entity
@Table(name = "herd")
public class HerdRow {
    @Id
    public String id;

    public String code;
    public String name;

    @Column(name = "time_zone")
    public String timeZone;

    /** Number of the last change to any record of the herd; its row is the lock under which changes get their numbers. */
    @Column(name = "change_seq")
    public long changeSeq;

    @Column(name = "recorded_at")
    public Instant recordedAt;

    @Column(name = "recorded_by")
    public String recordedBy;

    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }
}
