-- The database of the first released schema, with a few of its rows. Never changed: it stands for the
-- databases that are out there. The checksums are those of the migrations as they were released.
BEGIN TRANSACTION;
CREATE TABLE _sqlx_migrations (
    version BIGINT PRIMARY KEY,
    description TEXT NOT NULL,
    installed_on TIMESTAMP NOT NULL DEFAULT CURRENT_TIMESTAMP,
    success BOOLEAN NOT NULL,
    checksum BLOB NOT NULL,
    execution_time BIGINT NOT NULL
);
INSERT INTO "_sqlx_migrations" VALUES(20261124230000,'create reference entry','2026-11-24 23:10:00',1,X'4E361BDA8828D6BF3CA763898C1B6AACB7882F01A96209BC955EA427F4C34A5A711D7D076DBA08C6B83951DD38C6C25A',1000000);
INSERT INTO "_sqlx_migrations" VALUES(20261124230100,'create write probe','2026-11-24 23:10:00',1,X'AC5904A0D431196E624D1B82DEEA2C6905372293DAEA6B4FF2036D906629CCF1D7B3658A1488C8206772A9AF08A1E0EA',1000000);
CREATE TABLE reference_entry (
    -- The entry's address without its first slash: an address never changes and is never reused.
    id         TEXT    NOT NULL PRIMARY KEY CHECK (id <> '' AND id NOT LIKE '/%'),
    -- The list of kinds is held by the program, so that a new kind needs no rebuilt table.
    kind       TEXT    NOT NULL CHECK (kind <> '' AND kind NOT GLOB '*[^a-z-]*'),
    slug       TEXT    NOT NULL CHECK (slug <> ''),
    title      TEXT    NOT NULL CHECK (title <> ''),
    -- SHA-256 of the entry's figures, in hexadecimal.
    digest     TEXT    NOT NULL CHECK (length(digest) = 64 AND digest NOT GLOB '*[^0-9a-f]*'),
    -- Unix seconds when the entry left the tables; null while it stands. A row is never deleted,
    -- because a note may hang on it.
    retired_at INTEGER CHECK (retired_at > 0),
    UNIQUE (kind, slug)
) STRICT, WITHOUT ROWID;
INSERT INTO "reference_entry" VALUES('threads/ba/5','thread','ba/5','5 BA','479e76876c908e71020871594189d2050ed670fe0c853bef195100367e0db298',NULL);
INSERT INTO "reference_entry" VALUES('threads/ba/gone','thread','ba/gone','A size that left the tables','eb7faeab0404bc51c8e8490db627d7f3a66971684b068fd9ee7c4da790c06507',1795561800);
CREATE TABLE write_probe (
    id         INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    written_at INTEGER NOT NULL CHECK (written_at >= 0)
) STRICT;
INSERT INTO "write_probe" VALUES(1,1795561900);
COMMIT;
