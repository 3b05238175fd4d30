-- How somebody types a herd's weigh day: in which order, how many milkings, with samples or without; one row for each key and herd.
CREATE TABLE entry_choice (
    id          VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id     VARCHAR(36)  NOT NULL REFERENCES herd (id),
    key_id      VARCHAR(36)  NOT NULL,
    sheet_order VARCHAR(10)  NOT NULL,
    milkings    INTEGER      NOT NULL,
    samples     BOOLEAN      NOT NULL,
    own_order   TEXT
);
CREATE UNIQUE INDEX entry_choice_once ON entry_choice (herd_id, key_id);
