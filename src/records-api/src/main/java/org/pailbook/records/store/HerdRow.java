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
    /** Under which its replaced versions are kept. */
    public static final String KIND = "herds";

    public static final String KIND_SINGULAR = "herd";

    @Id
    public String id;

    public String code;
    public String name;

    @Column(name = "time_zone")
    public String timeZone;

    /** Number of the last change to any record of the herd; its row is the lock under which changes get their numbers. */
    @Column(name = "change_seq")
    public long changeSeq;

    /** Version of name and zone, from 1. */
    public int version = 1;

    /** Number of the change that made this version; 0 for the first one. */
    @Column(name = "version_seq")
    public long versionSeq;

    /** When this version was written. */
    @Column(name = "recorded_at")
    public Instant recordedAt;

    @Column(name = "recorded_by")
    public String recordedBy;

    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }
}
