package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

/** An address with a secret in it, for one table of one herd; the secret is kept as its SHA-256 only. */
@Entity
@Table(name = "feed")
public class FeedRow {
    @Id
    public String id;

    @Column(name = "token_sha256")
    public String tokenSha256;

    @Column(name = "herd_id")
    public String herdId;

    public String report;

    /** The key that made it, and beyond whose reach it does not go. */
    @Column(name = "key_id")
    public String keyId;

    @Column(name = "created_at")
    public Instant createdAt;

    @Column(name = "expires_on")
    public LocalDate expiresOn;

    @Column(name = "revoked_at")
    public Instant revokedAt;

    @Column(name = "last_used_on")
    public LocalDate lastUsedOn;
}
