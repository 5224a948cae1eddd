-- What the club says of itself, codes to read out, spare codes, and where the server is reached.

-- One row. Empty where the secretary has said nothing.
CREATE TABLE club (
    id               INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    name             TEXT    NOT NULL DEFAULT '' CHECK (length(name) <= 60),
    place            TEXT    NOT NULL DEFAULT '' CHECK (length(place) <= 60),
    welcome          TEXT    NOT NULL DEFAULT '' CHECK (length(welcome) <= 240),
    -- The time zone of its clock, as the IANA data names it.
    zone             TEXT    NOT NULL DEFAULT '' CHECK (length(zone) <= 60),
    -- The address readers see, as the server that was started last has it.
    base_url         TEXT    NOT NULL DEFAULT ''
) STRICT;
INSERT INTO club (id) VALUES (1);

-- The hash (argon2id) of a slip's code, where it is to be read out and has no link; null where it is printed.
ALTER TABLE slip ADD COLUMN code_hash TEXT;

-- A member's spare codes: ten, each good once in place of a code of the second factor.
CREATE TABLE spare_code (
    member_id        INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    -- Its first two digits, by which it is found; no two of a member have the same.
    mark             TEXT    NOT NULL CHECK (length(mark) = 2),
    -- Of all its digits (argon2id).
    code_hash        TEXT    NOT NULL,
    used_at          INTEGER CHECK (used_at > 0),
    PRIMARY KEY (member_id, mark)
) STRICT, WITHOUT ROWID;
