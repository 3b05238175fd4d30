-- Single milkings. An instant is kept as sent; its minute, by which the record is known, stands beside it.

CREATE TABLE milking (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    started_at VARCHAR(24) NOT NULL,
    started_at_minute VARCHAR(24) NOT NULL,
    milking_of_day VARCHAR(40) NOT NULL,
    milk_kg DOUBLE PRECISION NOT NULL,
    milkings_per_day INTEGER,
    hours_since_previous DOUBLE PRECISION,
    duration_minutes DOUBLE PRECISION,
    fat_pct DOUBLE PRECISION,
    protein_pct DOUBLE PRECISION,
    lactose_pct DOUBLE PRECISION,
    scc_thousand_per_ml DOUBLE PRECISION,
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX milking_once ON milking (herd_id, animal_id, event_date, started_at_minute);
CREATE UNIQUE INDEX milking_by_source ON milking (herd_id, source, source_id);
CREATE INDEX milking_by_date ON milking (herd_id, event_date, id);
