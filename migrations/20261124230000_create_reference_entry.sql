-- One row for each thing the reference holds, projected from the compiled tables at every start.
-- The figures stay compiled in; this row is what notes hang on and what a page's validator is made of.
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
