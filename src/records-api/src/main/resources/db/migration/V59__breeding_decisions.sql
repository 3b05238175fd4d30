-- Whether a cow is to be served, by the farm's choice, from a day on.

CREATE TABLE breeding_decision (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    decision VARCHAR(20) NOT NULL,
    reason VARCHAR(200),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX breeding_decision_once ON breeding_decision (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX breeding_decision_by_source ON breeding_decision (herd_id, source, source_id);
CREATE INDEX breeding_decision_by_date ON breeding_decision (herd_id, event_date, id);
CREATE INDEX breeding_decision_by_change ON breeding_decision (herd_id, change_seq);
