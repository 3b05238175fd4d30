-- First answers to requests that carried an idempotency key, kept for a day. While a request runs its row has no status; a row whose
-- claim was not renewed for long is of a service that died, and is taken over.
CREATE TABLE idempotent_answer (
    key_id          VARCHAR(36)  NOT NULL,
    idempotency_key VARCHAR(64)  NOT NULL,
    claim_id        VARCHAR(36)  NOT NULL,
    claimed_at      VARCHAR(24)  NOT NULL,
    request_sha256  VARCHAR(64),
    status          INTEGER,
    media_type      VARCHAR(60),
    location        VARCHAR(400),
    etag            VARCHAR(40),
    PRIMARY KEY (key_id, idempotency_key)
);
CREATE UNIQUE INDEX idempotent_answer_by_claim ON idempotent_answer (claim_id);
CREATE INDEX idempotent_answer_by_age ON idempotent_answer (claimed_at);

-- The body of an answer: gzip, in base64, in parts.
CREATE TABLE idempotent_answer_part (
    claim_id        VARCHAR(36)  NOT NULL,
    part_no         INTEGER      NOT NULL,
    content         TEXT         NOT NULL,
    PRIMARY KEY (claim_id, part_no)
);
