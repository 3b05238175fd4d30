-- How the farm decides, from a day on.

CREATE TABLE setting (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    event_date VARCHAR(10) NOT NULL,
    waiting_days INTEGER,
    check_days INTEGER,
    dry_days INTEGER,
    colostrum_days INTEGER,
    high_from INTEGER,
    tank_limit VARCHAR(100),
    close_call DOUBLE PRECISION,
    milk_unit VARCHAR(10),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX setting_once ON setting (herd_id, event_date);
CREATE UNIQUE INDEX setting_by_source ON setting (herd_id, source, source_id);
CREATE INDEX setting_by_date ON setting (herd_id, event_date, id);
CREATE INDEX setting_by_change ON setting (herd_id, change_seq);
