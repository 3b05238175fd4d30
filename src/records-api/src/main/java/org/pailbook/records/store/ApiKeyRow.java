package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

/** A key, kept as the SHA-256 of its text only: the keys are long and random, so a slow hash adds nothing. */
@Entity
@Table(name = "api_key")
public class ApiKeyRow {
    @Id
    public String id;

    @Column(name = "secret_sha256")
    public String secretSha256;

    public String label;

    /** Scope names joined by blanks. */
    public String scopes;

    /** Herd codes joined by blanks, or {@code *} for all. */
    @Column(name = "herd_codes")
    public String herdCodes;

    @Column(name = "created_at")
    public Instant createdAt;

    @Column(name = "expires_on")
    public LocalDate expiresOn;

    @Column(name = "revoked_at")
    public Instant revokedAt;

    /** Of the text this key had before its last rotation, if it ever had another. */
    @Column(name = "previous_sha256")
    public String previousSha256;

    /** Until when that text works too. */
    @Column(name = "previous_until")
    public Instant previousUntil;

    @Column(name = "last_used_on")
    public LocalDate lastUsedOn;
}
