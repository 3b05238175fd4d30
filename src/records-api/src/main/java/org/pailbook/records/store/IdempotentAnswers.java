package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.hibernate.StatelessSession;

/** First answers to requests with an idempotency key, shared by all services on one database. */
@ApplicationScoped
public class IdempotentAnswers {
    /** How long an answer is kept. */
    static final Duration KEPT = Duration.ofHours(24);

    /** A claim not renewed for so long is of a service that died: no transaction lasts longer than a minute. */
    static final Duration CLAIM_HOLDS = Duration.ofMinutes(2);

    /** Base64 of 150 kB, well below what either database takes in one value. */
    private static final int PART_CHARACTERS = 200_000;

    private final WriteGate gate;

    @Inject
    IdempotentAnswers(WriteGate gate) {
        this.gate = gate;
    }

    /**
     * Claims the key for a request, or tells who has it.
     *
     * @param claimId of the request that wants to run
     * @return the row as it now is: with that claim if the request is to run
     */
    public IdempotentAnswerRow claim(String keyId, String idempotencyKey, String claimId, Instant now) {
        return gate.write(session -> {
            forgetOld(session, now);
            session.createNativeMutationQuery(
                            "insert into idempotent_answer (key_id, idempotency_key, claim_id, claimed_at)"
                                    + " values (:keyId, :key, :claim, :now) on conflict (key_id, idempotency_key) do nothing")
                    .setParameter("keyId", keyId)
                    .setParameter("key", idempotencyKey)
                    .setParameter("claim", claimId)
                    .setParameter("now", new InstantText().convertToDatabaseColumn(now))
                    .executeUpdate();
            session.createMutationQuery(
                            "update IdempotentAnswerRow set claimId = :claim, claimedAt = :now"
                                    + " where keyId = :keyId and idempotencyKey = :key and status is null and claimedAt < :dead")
                    .setParameter("claim", claimId)
                    .setParameter("now", now)
                    .setParameter("keyId", keyId)
                    .setParameter("key", idempotencyKey)
                    .setParameter("dead", now.minus(CLAIM_HOLDS))
                    .executeUpdate();
            return session.get(IdempotentAnswerRow.class, new IdempotentAnswerRow.Key(keyId, idempotencyKey));
        });
    }

    private static void forgetOld(StatelessSession session, Instant now) {
        Instant old = now.minus(KEPT);
        session.createMutationQuery("delete from IdempotentAnswerPartRow where claimId in"
                        + " (select claimId from IdempotentAnswerRow where claimedAt < :old)")
                .setParameter("old", old)
                .executeUpdate();
        session.createMutationQuery("delete from IdempotentAnswerRow where claimedAt < :old")
                .setParameter("old", old)
                .executeUpdate();
    }

    /** Says that the request still runs. */
    public void renew(String claimId, Instant now) {
        gate.write(session -> session.createMutationQuery(
                        "update IdempotentAnswerRow set claimedAt = :now where claimId = :claim and status is null")
                .setParameter("now", now)
                .setParameter("claim", claimId)
                .executeUpdate());
    }

    /** Gives the key free: the request was refused and stored nothing, or could not be done. */
    public void release(String claimId) {
        gate.write(session -> session.createMutationQuery(
                        "delete from IdempotentAnswerRow where claimId = :claim and status is null")
                .setParameter("claim", claimId)
                .executeUpdate());
    }

    /**
     * Keeps the answer, unless the claim was lost meanwhile.
     *
     * @param answer with its claim, fingerprint, status and headers
     * @param gzip the body
     */
    public void keep(IdempotentAnswerRow answer, byte[] gzip, Instant now) {
        String text = Base64.getEncoder().encodeToString(gzip);
        gate.write(session -> {
            int kept = session.createMutationQuery(
                            "update IdempotentAnswerRow set claimedAt = :now, requestSha256 = :hash,"
                                    + " status = :status, mediaType = :type, location = :location, etag = :etag"
                                    + " where claimId = :claim and status is null")
                    .setParameter("now", now)
                    .setParameter("hash", answer.requestSha256)
                    .setParameter("status", answer.status)
                    .setParameter("type", answer.mediaType)
                    .setParameter("location", answer.location)
                    .setParameter("etag", answer.etag)
                    .setParameter("claim", answer.claimId)
                    .executeUpdate();
            if (kept == 1) {
                session.insertMultiple(parts(answer.claimId, text));
            }
            return kept;
        });
    }

    private static List<IdempotentAnswerPartRow> parts(String claimId, String text) {
        List<IdempotentAnswerPartRow> parts = new ArrayList<>();
        for (int from = 0; from < text.length(); from += PART_CHARACTERS) {
            IdempotentAnswerPartRow part = new IdempotentAnswerPartRow();
            part.claimId = claimId;
            part.partNo = parts.size();
            part.content = text.substring(from, Math.min(text.length(), from + PART_CHARACTERS));
            parts.add(part);
        }
        return parts;
    }

    /** The body of a kept answer, gzip. */
    public byte[] body(String claimId) {
        return gate.write(session -> Base64.getDecoder()
                .decode(String.join(
                        "",
                        session.createSelectionQuery(
                                        "select content from IdempotentAnswerPartRow where claimId = :claim order by partNo",
                                        String.class)
                                .setParameter("claim", claimId)
                                .getResultList())));
    }
}
