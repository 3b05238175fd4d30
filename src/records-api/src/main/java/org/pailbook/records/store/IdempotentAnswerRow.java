package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** A request that carried an idempotency key: running while it has no status, else with the answer it was given. */
@Entity
@Table(name = "idempotent_answer")
@IdClass(IdempotentAnswerRow.Key.class)
public class IdempotentAnswerRow {
    /** Whose key, and which. */
    public record Key(String keyId, String idempotencyKey) implements Serializable {}

    /** Id of the caller's own key: two callers may choose the same text. */
    @Id
    @Column(name = "key_id")
    public String keyId;

    @Id
    @Column(name = "idempotency_key")
    public String idempotencyKey;

    /** Who runs the request, or ran it. */
    @Column(name = "claim_id")
    public String claimId;

    /** Renewed while the request runs. */
    @Column(name = "claimed_at")
    public Instant claimedAt;

    /** Of method, address and body. */
    @Column(name = "request_sha256")
    public String requestSha256;

    public Integer status;

    @Column(name = "media_type")
    public String mediaType;

    public String location;
    public String etag;
}
