-- The first records: herds, animals and four kinds of events. The same script runs on SQLite and PostgreSQL.
-- Dates are ISO text (yyyy-MM-dd) and instants ISO text in UTC with milliseconds, so that both sort and read the same on
-- both databases and never depend on a time zone of driver or server.
-- Each record table holds the version in force; versions that were replaced go to superseded_version.

CREATE TABLE herd (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    code          VARCHAR(40)  NOT NULL UNIQUE,
    name          VARCHAR(200) NOT NULL,
    time_zone     VARCHAR(64)  NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL
);

CREATE TABLE api_key (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    secret_sha256 VARCHAR(64)  NOT NULL UNIQUE,
    label         VARCHAR(200) NOT NULL,
    scopes        VARCHAR(200) NOT NULL,
    herd_codes    VARCHAR(4000) NOT NULL,
    created_at    VARCHAR(24)  NOT NULL,
    expires_on    VARCHAR(10),
    revoked_at    VARCHAR(24)
);

CREATE TABLE animal (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    name          VARCHAR(200),
    breed         VARCHAR(60),
    sex           VARCHAR(10),
    birth_date    VARCHAR(10),
    version       INTEGER      NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    source        VARCHAR(200),
    source_id     VARCHAR(200),
    withdrawn     BOOLEAN      NOT NULL
);
CREATE UNIQUE INDEX animal_by_source ON animal (herd_id, source, source_id);
CREATE INDEX animal_by_herd ON animal (herd_id, id);

CREATE TABLE animal_identifier (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    animal_id     VARCHAR(36)  NOT NULL REFERENCES animal (id),
    scheme        VARCHAR(100) NOT NULL,
    identifier    VARCHAR(100) NOT NULL,
    place_no      INTEGER      NOT NULL
);
CREATE UNIQUE INDEX animal_identifier_once ON animal_identifier (herd_id, scheme, identifier);
CREATE INDEX animal_identifier_by_animal ON animal_identifier (animal_id);

CREATE TABLE test_day (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    animal_id     VARCHAR(36)  NOT NULL REFERENCES animal (id),
    event_date    VARCHAR(10)  NOT NULL,
    milk_kg       DOUBLE PRECISION,
    fat_pct       DOUBLE PRECISION,
    protein_pct   DOUBLE PRECISION,
    lactose_pct   DOUBLE PRECISION,
    scc_thousand_per_ml DOUBLE PRECISION,
    version       INTEGER      NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    source        VARCHAR(200),
    source_id     VARCHAR(200),
    withdrawn     BOOLEAN      NOT NULL
);
CREATE UNIQUE INDEX test_day_once ON test_day (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX test_day_by_source ON test_day (herd_id, source, source_id);
CREATE INDEX test_day_by_date ON test_day (herd_id, event_date, id);

CREATE TABLE calving (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    animal_id     VARCHAR(36)  NOT NULL REFERENCES animal (id),
    event_date    VARCHAR(10)  NOT NULL,
    parity        INTEGER,
    ease          INTEGER,
    version       INTEGER      NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    source        VARCHAR(200),
    source_id     VARCHAR(200),
    withdrawn     BOOLEAN      NOT NULL
);
CREATE UNIQUE INDEX calving_once ON calving (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX calving_by_source ON calving (herd_id, source, source_id);
CREATE INDEX calving_by_date ON calving (herd_id, event_date, id);

CREATE TABLE dry_off (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    animal_id     VARCHAR(36)  NOT NULL REFERENCES animal (id),
    event_date    VARCHAR(10)  NOT NULL,
    version       INTEGER      NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    source        VARCHAR(200),
    source_id     VARCHAR(200),
    withdrawn     BOOLEAN      NOT NULL
);
CREATE UNIQUE INDEX dry_off_once ON dry_off (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX dry_off_by_source ON dry_off (herd_id, source, source_id);
CREATE INDEX dry_off_by_date ON dry_off (herd_id, event_date, id);

CREATE TABLE departure (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    animal_id     VARCHAR(36)  NOT NULL REFERENCES animal (id),
    event_date    VARCHAR(10)  NOT NULL,
    kind          VARCHAR(20)  NOT NULL,
    reason        VARCHAR(60),
    note          VARCHAR(4000),
    version       INTEGER      NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    source        VARCHAR(200),
    source_id     VARCHAR(200),
    withdrawn     BOOLEAN      NOT NULL
);
CREATE UNIQUE INDEX departure_once ON departure (herd_id, animal_id, event_date);
CREATE UNIQUE INDEX departure_by_source ON departure (herd_id, source, source_id);
CREATE INDEX departure_by_date ON departure (herd_id, event_date, id);

CREATE TABLE superseded_version (
    record_id     VARCHAR(36)  NOT NULL,
    version       INTEGER      NOT NULL,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    kind          VARCHAR(40)  NOT NULL,
    change_seq    BIGINT       NOT NULL,
    recorded_at   VARCHAR(24)  NOT NULL,
    recorded_by   VARCHAR(36)  NOT NULL,
    withdrawn     BOOLEAN      NOT NULL,
    content       TEXT         NOT NULL,
    PRIMARY KEY (record_id, version)
);
CREATE INDEX superseded_version_by_change ON superseded_version (herd_id, change_seq);
