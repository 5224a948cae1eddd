-- The database of the schema in which members and notes came, with a few of its rows. Never changed: it
-- stands for the databases that are out there. The checksums are those of the migrations as they were.
BEGIN TRANSACTION;
CREATE TABLE _sqlx_migrations (
    version BIGINT PRIMARY KEY,
    description TEXT NOT NULL,
    installed_on TIMESTAMP NOT NULL DEFAULT CURRENT_TIMESTAMP,
    success BOOLEAN NOT NULL,
    checksum BLOB NOT NULL,
    execution_time BIGINT NOT NULL
);
INSERT INTO "_sqlx_migrations" VALUES(20261124230000,'create reference entry','2026-11-25 08:10:00',1,X'4E361BDA8828D6BF3CA763898C1B6AACB7882F01A96209BC955EA427F4C34A5A711D7D076DBA08C6B83951DD38C6C25A',1000000);
INSERT INTO "_sqlx_migrations" VALUES(20261124230100,'create write probe','2026-11-25 08:10:00',1,X'AC5904A0D431196E624D1B82DEEA2C6905372293DAEA6B4FF2036D906629CCF1D7B3658A1488C8206772A9AF08A1E0EA',1000000);
INSERT INTO "_sqlx_migrations" VALUES(20261125000000,'create people','2026-11-25 08:10:00',1,X'241B0A2ACD2443FBC0C0FBFE49FC8543AD4DC9084948F7F7276132F8F82BF8267A87E4EEDDEFF19FBFBADFAACC0EB916',1000000);
INSERT INTO "_sqlx_migrations" VALUES(20261125000100,'create notes','2026-11-25 08:10:00',1,X'FD9DC30110FF9C4A42460B9FCF516D1692F865BFE5A93EE9E8A9504B06000D57CED49F064A768D135684BAE2706B2230',1000000);
INSERT INTO "_sqlx_migrations" VALUES(20261125000200,'create shown note','2026-11-25 08:10:00',1,X'801872B74390AE1042096406BDEAE2F3B89557287248DE534E301E126EE8E6DABEBC8F075EB8295A9A8AAB954CADBC9C',1000000);
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
-- The one row that a readiness check writes, to learn whether the database can still be written.
CREATE TABLE write_probe (
    id         INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    written_at INTEGER NOT NULL CHECK (written_at >= 0)
) STRICT;

INSERT INTO write_probe (id, written_at) VALUES (1, 0);
-- The members, what they may do, their sessions, the slips that let them in, and the record of every act.

CREATE TABLE member (
    -- Never reused: an act in the record must not come to mean somebody else.
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    name             TEXT    NOT NULL CHECK (trim(name) <> '' AND length(name) <= 60),
    -- The name as names are compared: small letters, marks and spaces folded, so that no two look alike.
    name_key         TEXT    NOT NULL UNIQUE CHECK (name_key <> ''),
    -- argon2id, in the PHC form.
    password_hash    TEXT    NOT NULL CHECK (password_hash LIKE '$argon2id$%'),
    is_moderator     INTEGER NOT NULL DEFAULT 0 CHECK (is_moderator IN (0, 1)),
    is_inspector     INTEGER NOT NULL DEFAULT 0 CHECK (is_inspector IN (0, 1)),
    is_secretary     INTEGER NOT NULL DEFAULT 0 CHECK (is_secretary IN (0, 1)),
    -- The shared secret of the second factor; null until one is set up and tried.
    totp_secret      BLOB    CHECK (length(totp_secret) >= 16),
    -- The last step whose code was taken: a code counts once.
    totp_step        INTEGER CHECK (totp_step >= 0),
    joined_at        INTEGER NOT NULL CHECK (joined_at > 0),
    -- Set where the secretary has stopped the member signing in; null else.
    stopped_at       INTEGER CHECK (stopped_at > 0),
    -- Wrong passwords since the last right one, and when the last was tried.
    failures         INTEGER NOT NULL DEFAULT 0 CHECK (failures >= 0),
    failed_at        INTEGER CHECK (failed_at > 0)
) STRICT;

-- A one-time link or a printed slip with it: to join, or to choose a new password.
CREATE TABLE slip (
    -- SHA-256 of the token; the token itself is on the slip alone.
    token_hash       BLOB    NOT NULL PRIMARY KEY CHECK (length(token_hash) = 32),
    purpose          TEXT    NOT NULL CHECK (purpose IN ('join', 'reset')),
    -- Whose password is reset; null for a slip to join.
    member_id        INTEGER REFERENCES member (id) ON DELETE CASCADE,
    -- What a new member may do.
    is_moderator     INTEGER NOT NULL DEFAULT 0 CHECK (is_moderator IN (0, 1)),
    is_inspector     INTEGER NOT NULL DEFAULT 0 CHECK (is_inspector IN (0, 1)),
    is_secretary     INTEGER NOT NULL DEFAULT 0 CHECK (is_secretary IN (0, 1)),
    -- Who it is for, in the secretary's words.
    meant_for        TEXT    NOT NULL DEFAULT '' CHECK (length(meant_for) <= 60),
    -- Null where the program itself made it, at first start or from the command line.
    made_by          INTEGER REFERENCES member (id) ON DELETE SET NULL,
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    ends_at          INTEGER NOT NULL CHECK (ends_at > made_at),
    used_at          INTEGER CHECK (used_at > 0),
    CHECK ((purpose = 'reset') = (member_id IS NOT NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE session (
    -- SHA-256 of the cookie's value.
    token_hash       BLOB    NOT NULL PRIMARY KEY CHECK (length(token_hash) = 32),
    -- A number to name the session by on its member's page.
    number           INTEGER NOT NULL UNIQUE CHECK (number > 0),
    member_id        INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    seen_at          INTEGER NOT NULL CHECK (seen_at >= made_at),
    -- When the member last gave the password, and the code where one is due; null while the code is due.
    proved_at        INTEGER CHECK (proved_at > 0),
    -- The browser in its own words, cut short.
    agent            TEXT    NOT NULL DEFAULT '' CHECK (length(agent) <= 200)
) STRICT, WITHOUT ROWID;
CREATE INDEX session_by_member ON session (member_id);

-- Every act on people and notes. The name stands as it was, for members who leave.
CREATE TABLE act (
    id               INTEGER NOT NULL PRIMARY KEY,
    at               INTEGER NOT NULL CHECK (at > 0),
    -- Null where nobody was signed in, or the program itself did it.
    member_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    member_name      TEXT    NOT NULL DEFAULT '',
    -- What was done: 'sign-in', 'sign-in-refused', 'note-shown', 'role-given'; the list is the program's.
    what             TEXT    NOT NULL CHECK (what <> '' AND what NOT GLOB '*[^a-z-]*'),
    -- What it was done to: 'note/12', 'member/3'; may be empty.
    subject          TEXT    NOT NULL DEFAULT '' CHECK (length(subject) <= 100),
    detail           TEXT    NOT NULL DEFAULT '' CHECK (length(detail) <= 2000)
) STRICT;
CREATE INDEX act_by_time ON act (at);
CREATE INDEX act_by_subject ON act (subject, id);
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
-- What readers see of the notes, and nothing else: the shown wording of each note that is neither hidden nor
-- withdrawn. Every page, list, feed and export for readers asks this view, so that none can show more.

CREATE VIEW shown_note AS
SELECT
    note.id,
    note.confirmed_at,
    version.id AS version_id,
    EXISTS (
        SELECT 1 FROM correction WHERE correction.note_id = note.id AND correction.made_at >= note.shown_at
    ) AS is_corrected,
    json_object(
        'id', note.id,
        'title', version.title,
        'text', version.text,
        'metal', version.metal,
        'thread', version.thread,
        'drill', version.drill,
        'depth', version.depth,
        'lubricant', version.lubricant,
        'speed', version.speed,
        'machine', version.machine,
        'is_pressure', version.is_pressure,
        'author', (SELECT member.name FROM member WHERE member.id = note.author_id),
        'made_at', note.made_at,
        'shown_at', note.shown_at,
        'confirmed_at', note.confirmed_at,
        'worked', (SELECT count(*) FROM verdict WHERE verdict.note_id = note.id AND verdict.worked = 1),
        'did_not', (SELECT count(*) FROM verdict WHERE verdict.note_id = note.id AND verdict.worked = 0),
        -- Those made since this wording was shown: an earlier one spoke of another text.
        'corrections', json((
            SELECT json_group_array(json_object('text', said.text, 'made_at', said.made_at))
            FROM (
                SELECT correction.text, correction.made_at FROM correction
                WHERE correction.note_id = note.id AND correction.made_at >= note.shown_at
                ORDER BY correction.id DESC
            ) AS said
        )),
        'things', json((
            SELECT json_group_array(json_object('id', entry.id, 'title', entry.title))
            FROM note_entry JOIN reference_entry AS entry ON entry.id = note_entry.entry_id
            WHERE note_entry.version_id = version.id
        ))
    ) AS note
FROM note
JOIN note_version AS version ON version.id = note.shown_version
WHERE note.hidden_at IS NULL AND note.withdrawn_at IS NULL;
INSERT INTO "reference_entry" VALUES('threads/ba/5','thread','ba/5','5 BA','479e76876c908e71020871594189d2050ed670fe0c853bef195100367e0db298',NULL);
INSERT INTO "reference_entry" VALUES('threads/ba/gone','thread','ba/gone','A size that left the tables','eb7faeab0404bc51c8e8490db627d7f3a66971684b068fd9ee7c4da790c06507',1795561800);
INSERT INTO "member" (id, name, name_key, password_hash, joined_at) VALUES(1,'Ada Penn','ada penn','$argon2id$x',1795561900);
INSERT INTO "note" (id, author_id, form_key, made_at) VALUES(1,1,'00000000000000000000000000000001',1795561900);
INSERT INTO "note_version" (id, note_id, state, title, text, made_at, saved_at) VALUES(1,1,'shown','Five holes in one go','The tap ran free.',1795561900,1795561900);
INSERT INTO "note_entry" VALUES(1,'threads/ba/5');
INSERT INTO "note" (id, author_id, form_key, made_at) VALUES(2,1,'00000000000000000000000000000002',1795561900);
INSERT INTO "note_version" (id, note_id, state, title, text, made_at, saved_at) VALUES(2,2,'shown','The same in steel','The tap ran hard.',1795561900,1795561900);
UPDATE "note" SET shown_version = id, shown_at = 1795562000;
UPDATE "note" SET confirmed_at = 1795563000 WHERE id = 2;
INSERT INTO "correction" (note_id, text, made_at) VALUES(2,'Use oil.',1795564000);
INSERT INTO "note_text" (rowid, title, text, done) VALUES(1,'Five holes in one go','The tap ran free.','5 BA'),(2,'The same in steel','Use oil. The tap ran hard.','');
COMMIT;
