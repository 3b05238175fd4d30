-- Services and pregnancy checks.

CREATE TABLE service (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    service_of_day INTEGER NOT NULL,
    method VARCHAR(40),
    sire VARCHAR(100),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX service_once ON service (herd_id, animal_id, event_date, service_of_day);
CREATE UNIQUE INDEX service_by_source ON service (herd_id, source, source_id);
CREATE INDEX service_by_date ON service (herd_id, event_date, id);

CREATE TABLE pregnancy_check (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    result VARCHAR(40) NOT NULL,
    method VARCHAR(40),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX pregnancy_check_once ON pregnancy_check (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX pregnancy_check_by_source ON pregnancy_check (herd_id, source, source_id);
CREATE INDEX pregnancy_check_by_date ON pregnancy_check (herd_id, event_date, id);
