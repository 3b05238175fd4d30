-- What the columns of a file mean, as somebody said when files with that header were brought into a herd.
CREATE TABLE file_mapping (
    id            VARCHAR(36)  NOT NULL PRIMARY KEY,
    herd_id       VARCHAR(36)  NOT NULL REFERENCES herd (id),
    header_sha256 VARCHAR(64)  NOT NULL,
    kind          VARCHAR(40)  NOT NULL,
    content       TEXT         NOT NULL,
    saved_at      VARCHAR(24)  NOT NULL,
    saved_by      VARCHAR(36)  NOT NULL
);
CREATE UNIQUE INDEX file_mapping_once ON file_mapping (herd_id, header_sha256, kind);
