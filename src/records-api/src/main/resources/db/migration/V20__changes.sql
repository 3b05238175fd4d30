-- When each change number of a herd was recorded: one row a transaction, so that "as known at" an instant is a number.
CREATE TABLE herd_change (
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    PRIMARY KEY (herd_id, change_seq)
);
CREATE INDEX herd_change_by_time ON herd_change (herd_id, recorded_at);

INSERT INTO herd_change (herd_id, change_seq, recorded_at)
SELECT herd_id, max(change_seq), recorded_at FROM (
    SELECT herd_id, change_seq, recorded_at FROM animal
    UNION ALL SELECT herd_id, change_seq, recorded_at FROM test_day
    UNION ALL SELECT herd_id, change_seq, recorded_at FROM calving
    UNION ALL SELECT herd_id, change_seq, recorded_at FROM dry_off
    UNION ALL SELECT herd_id, change_seq, recorded_at FROM departure
    UNION ALL SELECT herd_id, change_seq, recorded_at FROM superseded_version) AS kept
GROUP BY herd_id, recorded_at;

-- A herd has versions like any record. Its first one is part of making the herd and has the number 0.
ALTER TABLE herd ADD COLUMN version INTEGER NOT NULL DEFAULT 1;
ALTER TABLE herd ADD COLUMN version_seq BIGINT NOT NULL DEFAULT 0;

CREATE INDEX animal_by_change ON animal (herd_id, change_seq);
CREATE INDEX test_day_by_change ON test_day (herd_id, change_seq);
CREATE INDEX calving_by_change ON calving (herd_id, change_seq);
CREATE INDEX dry_off_by_change ON dry_off (herd_id, change_seq);
CREATE INDEX departure_by_change ON departure (herd_id, change_seq);
