-- The one row that a readiness check writes, to learn whether the database can still be written.
CREATE TABLE write_probe (
    id         INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    written_at INTEGER NOT NULL CHECK (written_at >= 0)
) STRICT;

INSERT INTO write_probe (id, written_at) VALUES (1, 0);
