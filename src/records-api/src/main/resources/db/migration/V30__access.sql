-- Keys can be given a new secret, the old one working on for a while; keys and feeds remember the day they were last used.
ALTER TABLE api_key ADD COLUMN previous_sha256 VARCHAR(64);
ALTER TABLE api_key ADD COLUMN previous_until VARCHAR(24);
ALTER TABLE api_key ADD COLUMN last_used_on VARCHAR(10);
CREATE INDEX api_key_by_previous ON api_key (previous_sha256);

-- Addresses with a secret in them, each for one table of one herd; a feed reaches no further than the key that made it.
CREATE TABLE feed (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    token_sha256  VARCHAR(64)  NOT NULL UNIQUE,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    report        VARCHAR(40)  NOT NULL,
    key_id        VARCHAR(36)  NOT NULL REFERENCES api_key (id),
    created_at    VARCHAR(24)  NOT NULL,
    expires_on    VARCHAR(10)  NOT NULL,
    revoked_at    VARCHAR(24),
    last_used_on  VARCHAR(10)
);
CREATE INDEX feed_by_key ON feed (key_id, id);
