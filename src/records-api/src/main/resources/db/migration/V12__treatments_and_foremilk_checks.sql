-- Treatments with the withholding days that were entered, and foremilk checks by quarter.

CREATE TABLE treatment (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    product_name VARCHAR(200) NOT NULL,
    diagnosis VARCHAR(200),
    dose VARCHAR(200),
    route VARCHAR(100),
    batch VARCHAR(100),
    prescriber VARCHAR(200),
    ended_on VARCHAR(10),
    milk_withheld_until VARCHAR(10),
    meat_withheld_until VARCHAR(10),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX treatment_once ON treatment (herd_id, animal_id, event_date, product_name);
CREATE UNIQUE INDEX treatment_by_source ON treatment (herd_id, source, source_id);
CREATE INDEX treatment_by_date ON treatment (herd_id, event_date, id);

CREATE TABLE foremilk_check (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    animal_id VARCHAR(36) NOT NULL REFERENCES animal (id),
    event_date VARCHAR(10) NOT NULL,
    milking_of_day VARCHAR(40) NOT NULL,
    quarter VARCHAR(40) NOT NULL,
    finding VARCHAR(40) NOT NULL,
    udder VARCHAR(40),
    cow_ill BOOLEAN,
    action VARCHAR(40),
    checked_by VARCHAR(100),
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX foremilk_check_once ON foremilk_check (herd_id, animal_id, event_date, milking_of_day, quarter);
CREATE UNIQUE INDEX foremilk_check_by_source ON foremilk_check (herd_id, source, source_id);
CREATE INDEX foremilk_check_by_date ON foremilk_check (herd_id, event_date, id);
