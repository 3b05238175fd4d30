package org.pailbook.records.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;

/** A part of the body of a kept answer: gzip in base64. */
@Entity
@Table(name = "idempotent_answer_part")
@IdClass(IdempotentAnswerPartRow.Key.class)
public class IdempotentAnswerPartRow {
    /** Answer and place. */
    public record Key(String claimId, int partNo) implements Serializable {}

    @Id
    @Column(name = "claim_id")
    public String claimId;

    @Id
    @Column(name = "part_no")
    public int partNo;

    @Column(columnDefinition = "TEXT")
    public String content;
}
