-- Records of the whole herd: tank, use of milk, prices.

CREATE TABLE tank_reading (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    event_date VARCHAR(10) NOT NULL,
    read_at VARCHAR(24) NOT NULL,
    read_at_minute VARCHAR(24) NOT NULL,
    tank VARCHAR(100) NOT NULL,
    milk_kg DOUBLE PRECISION,
    milk_litres DOUBLE PRECISION,
    temperature_c DOUBLE PRECISION,
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX tank_reading_once ON tank_reading (herd_id, event_date, tank, read_at_minute);
CREATE UNIQUE INDEX tank_reading_by_source ON tank_reading (herd_id, source, source_id);
CREATE INDEX tank_reading_by_date ON tank_reading (herd_id, event_date, id);

CREATE TABLE tank_pickup (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    event_date VARCHAR(10) NOT NULL,
    picked_up_at VARCHAR(24) NOT NULL,
    picked_up_at_minute VARCHAR(24) NOT NULL,
    tank VARCHAR(100) NOT NULL,
    milk_kg DOUBLE PRECISION,
    milk_litres DOUBLE PRECISION,
    fat_pct DOUBLE PRECISION,
    protein_pct DOUBLE PRECISION,
    lactose_pct DOUBLE PRECISION,
    scc_thousand_per_ml DOUBLE PRECISION,
    bacteria_thousand_per_ml DOUBLE PRECISION,
    temperature_c DOUBLE PRECISION,
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX tank_pickup_once ON tank_pickup (herd_id, event_date, tank, picked_up_at_minute);
CREATE UNIQUE INDEX tank_pickup_by_source ON tank_pickup (herd_id, source, source_id);
CREATE INDEX tank_pickup_by_date ON tank_pickup (herd_id, event_date, id);

CREATE TABLE milk_use (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    event_date VARCHAR(10) NOT NULL,
    purpose VARCHAR(40) NOT NULL,
    milk_kg DOUBLE PRECISION NOT NULL,
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX milk_use_once ON milk_use (herd_id, event_date, purpose);
CREATE UNIQUE INDEX milk_use_by_source ON milk_use (herd_id, source, source_id);
CREATE INDEX milk_use_by_date ON milk_use (herd_id, event_date, id);

CREATE TABLE price (
    id VARCHAR(36) NOT NULL PRIMARY KEY,
    herd_id VARCHAR(36) NOT NULL REFERENCES herd (id),
    event_date VARCHAR(10) NOT NULL,
    currency VARCHAR(3) NOT NULL,
    milk_price_per_kg DOUBLE PRECISION,
    fat_price_per_kg DOUBLE PRECISION,
    protein_price_per_kg DOUBLE PRECISION,
    heifer_price DOUBLE PRECISION,
    cull_price DOUBLE PRECISION,
    calf_price DOUBLE PRECISION,
    feed_price_per_kg_dry_matter DOUBLE PRECISION,
    service_price DOUBLE PRECISION,
    fixed_cost_per_cow_month DOUBLE PRECISION,
    note VARCHAR(4000),
    version INTEGER NOT NULL,
    change_seq BIGINT NOT NULL,
    recorded_at VARCHAR(24) NOT NULL,
    recorded_by VARCHAR(36) NOT NULL,
    source VARCHAR(200),
    source_id VARCHAR(200),
    withdrawn BOOLEAN NOT NULL
);
CREATE UNIQUE INDEX price_once ON price (herd_id, event_date);
CREATE UNIQUE INDEX price_by_source ON price (herd_id, source, source_id);
CREATE INDEX price_by_date ON price (herd_id, event_date, id);
