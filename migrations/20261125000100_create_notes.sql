-- The members' shop notes: what a metal, a thread, a drill did. A note never alters a figure.

CREATE TABLE note (
    -- Never reused: an address that was ever posted must not come to mean another note.
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    -- Null where its author has left the club and let the note stay: "a former member".
    author_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    -- Made with the form: a form sent twice makes one note.
    form_key         TEXT    NOT NULL UNIQUE CHECK (length(form_key) BETWEEN 16 AND 64),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    -- The text that readers see; null until one was shown.
    shown_version    INTEGER REFERENCES note_version (id),
    shown_at         INTEGER CHECK (shown_at > 0),
    withdrawn_at     INTEGER CHECK (withdrawn_at > 0),
    withdrawn_why    TEXT    CHECK (withdrawn_why <> ''),
    -- Set by a report that the note is dangerous; a moderator clears it.
    hidden_at        INTEGER CHECK (hidden_at > 0),
    -- When a member last found that it works: the newest confirmed stands first.
    confirmed_at     INTEGER CHECK (confirmed_at > 0),
    CHECK ((shown_version IS NULL) = (shown_at IS NULL)),
    CHECK ((withdrawn_at IS NULL) = (withdrawn_why IS NULL))
) STRICT;
CREATE INDEX note_by_author ON note (author_id, id);
CREATE INDEX note_shown ON note (confirmed_at, id) WHERE shown_version IS NOT NULL;

-- One wording of a note. A version is never changed once it has left its author's desk.
CREATE TABLE note_version (
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    -- draft: the author's alone; waiting: in the queue; shown; replaced: was shown; declined.
    state            TEXT    NOT NULL CHECK (state IN ('draft', 'waiting', 'shown', 'replaced', 'declined')),
    -- It speaks of boilers, steam or pressure: an inspector must pass it.
    is_pressure      INTEGER NOT NULL DEFAULT 0 CHECK (is_pressure IN (0, 1)),
    title            TEXT    NOT NULL CHECK (length(title) <= 120),
    -- Markdown, as typed.
    text             TEXT    NOT NULL CHECK (length(text) <= 20000),
    -- What was done, each as typed; empty where it was left out.
    metal            TEXT    NOT NULL DEFAULT '' CHECK (length(metal) <= 100),
    thread           TEXT    NOT NULL DEFAULT '' CHECK (length(thread) <= 100),
    drill            TEXT    NOT NULL DEFAULT '' CHECK (length(drill) <= 100),
    depth            TEXT    NOT NULL DEFAULT '' CHECK (length(depth) <= 100),
    lubricant        TEXT    NOT NULL DEFAULT '' CHECK (length(lubricant) <= 100),
    speed            TEXT    NOT NULL DEFAULT '' CHECK (length(speed) <= 100),
    machine          TEXT    NOT NULL DEFAULT '' CHECK (length(machine) <= 200),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    -- When it was last saved on its author's desk or sent in.
    saved_at         INTEGER NOT NULL CHECK (saved_at >= made_at),
    decided_at       INTEGER CHECK (decided_at > 0),
    decided_by       INTEGER REFERENCES member (id) ON DELETE SET NULL,
    -- What the moderator said: why declined, or what to change.
    reason           TEXT    NOT NULL DEFAULT '' CHECK (length(reason) <= 2000),
    CHECK (state <> 'declined' OR reason <> '')
) STRICT;
CREATE INDEX version_by_note ON note_version (note_id, id);
-- At most one wording of a note is on its way.
CREATE UNIQUE INDEX version_on_its_way ON note_version (note_id) WHERE state IN ('draft', 'waiting');
CREATE UNIQUE INDEX version_shown ON note_version (note_id) WHERE state = 'shown';
CREATE INDEX version_waiting ON note_version (saved_at, id) WHERE state = 'waiting';

-- What a wording belongs to: materials, threads, drills, calculators.
CREATE TABLE note_entry (
    version_id       INTEGER NOT NULL REFERENCES note_version (id) ON DELETE CASCADE,
    entry_id         TEXT    NOT NULL REFERENCES reference_entry (id),
    PRIMARY KEY (version_id, entry_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX entry_notes ON note_entry (entry_id, version_id);

-- A moderator's correction: it stands above the text, which is kept and struck.
CREATE TABLE correction (
    id               INTEGER NOT NULL PRIMARY KEY,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    text             TEXT    NOT NULL CHECK (text <> '' AND length(text) <= 5000),
    made_by          INTEGER REFERENCES member (id) ON DELETE SET NULL,
    made_at          INTEGER NOT NULL CHECK (made_at > 0)
) STRICT;
CREATE INDEX correction_by_note ON correction (note_id, id);

-- "Worked for me" or "did not", one a member and note.
CREATE TABLE verdict (
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    member_id        INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    worked           INTEGER NOT NULL CHECK (worked IN (0, 1)),
    metal            TEXT    NOT NULL DEFAULT '' CHECK (length(metal) <= 100),
    size             TEXT    NOT NULL DEFAULT '' CHECK (length(size) <= 100),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    PRIMARY KEY (note_id, member_id)
) STRICT, WITHOUT ROWID;

-- A report that a note could hurt somebody. It hides the note until a moderator has looked.
CREATE TABLE safety_report (
    id               INTEGER NOT NULL PRIMARY KEY,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    member_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    text             TEXT    NOT NULL CHECK (text <> '' AND length(text) <= 2000),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    settled_at       INTEGER CHECK (settled_at > 0),
    settled_by       INTEGER REFERENCES member (id) ON DELETE SET NULL
) STRICT;
CREATE INDEX report_open ON safety_report (note_id) WHERE settled_at IS NULL;

-- The words of the shown wordings, accents folded; its rowid is the note's id. Kept by the program in
-- the transaction that shows, replaces, hides or withdraws.
CREATE VIRTUAL TABLE note_text USING fts5 (
    title, text, done,
    tokenize = "unicode61 remove_diacritics 2"
);
