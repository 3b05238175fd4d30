-- Secrets of the service itself, made at the first need and kept here so that several services on one database share them.
CREATE TABLE service_secret (
    name          VARCHAR(40)  NOT NULL PRIMARY KEY,
    secret_hex    VARCHAR(128) NOT NULL
);
