-- Readers see nothing that the right person has not read: what members found is kept with the wording they
-- found it of, a report says whose it is to settle, and no number of a report or a correction comes again.

DROP VIEW shown_note;
DROP VIEW note_mark;

-- "Worked for me" or "did not", one a member and note, of the wording that was shown then. What was found before
-- this step is given to the wording that was shown in the second before it.
CREATE TABLE verdict_of_wording (
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    member_id        INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    version_id       INTEGER NOT NULL REFERENCES note_version (id) ON DELETE CASCADE,
    worked           INTEGER NOT NULL CHECK (worked IN (0, 1)),
    material         TEXT    NOT NULL DEFAULT '' CHECK (length(material) <= 100),
    size             TEXT    NOT NULL DEFAULT '' CHECK (length(size) <= 100),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    PRIMARY KEY (note_id, member_id)
) STRICT, WITHOUT ROWID;
INSERT INTO verdict_of_wording (note_id, member_id, version_id, worked, material, size, made_at)
SELECT verdict.note_id, verdict.member_id, was_shown.id, verdict.worked, verdict.material, verdict.size,
       verdict.made_at
FROM verdict
JOIN note_version AS was_shown ON was_shown.id = coalesce(
    (
        SELECT max(version.id) FROM note_version AS version
        WHERE version.note_id = verdict.note_id AND version.state IN ('shown', 'replaced')
          AND version.decided_at < verdict.made_at
    ),
    (
        SELECT min(version.id) FROM note_version AS version
        WHERE version.note_id = verdict.note_id AND version.state IN ('shown', 'replaced')
    )
);
DROP TABLE verdict;
ALTER TABLE verdict_of_wording RENAME TO verdict;
CREATE INDEX verdict_by_version ON verdict (version_id, worked);

-- A report that a note could hurt somebody. It hides the note until somebody has looked. Its number is never used
-- again: whoever settles up to a number has read all up to it.
CREATE TABLE numbered_report (
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    member_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    -- usual: whoever passes the note settles it; inspector: an inspector's, of pressure, which the inspector settles;
    -- unread: made by the program, where a stored text is heard to speak of pressure that no inspector has read.
    kind             TEXT    NOT NULL DEFAULT 'usual' CHECK (kind IN ('usual', 'inspector', 'unread')),
    text             TEXT    NOT NULL CHECK (text <> '' AND length(text) <= 2000),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    settled_at       INTEGER CHECK (settled_at > 0),
    settled_by       INTEGER REFERENCES member (id) ON DELETE SET NULL
) STRICT;
INSERT INTO numbered_report (id, note_id, member_id, text, made_at, settled_at, settled_by)
SELECT id, note_id, member_id, text, made_at, settled_at, settled_by FROM safety_report;
DROP TABLE safety_report;
ALTER TABLE numbered_report RENAME TO safety_report;
CREATE INDEX report_open ON safety_report (note_id) WHERE settled_at IS NULL;
CREATE INDEX report_by_note ON safety_report (note_id);

-- A moderator's correction, as before; its number is never used again either.
CREATE TABLE numbered_correction (
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    text             TEXT    NOT NULL CHECK (text <> '' AND length(text) <= 5000),
    made_by          INTEGER REFERENCES member (id) ON DELETE SET NULL,
    made_at          INTEGER NOT NULL CHECK (made_at > 0)
) STRICT;
INSERT INTO numbered_correction (id, note_id, text, made_by, made_at)
SELECT id, note_id, text, made_by, made_at FROM correction;
DROP TABLE correction;
ALTER TABLE numbered_correction RENAME TO correction;
CREATE INDEX correction_by_note ON correction (note_id, id);

-- Whether somebody other than the author gave the reason of a withdrawal. An author's own is read by nobody before
-- readers would see it, and so they do not.
ALTER TABLE note ADD COLUMN withdrawn_by_another INTEGER NOT NULL DEFAULT 0
    CHECK (withdrawn_by_another IN (0, 1));
UPDATE note SET withdrawn_by_another = 1
WHERE withdrawn_at IS NOT NULL AND author_id IS NOT NULL AND EXISTS (
    SELECT 1 FROM act
    WHERE act.what = 'note-withdrawn' AND act.subject = 'note/' || note.id AND act.member_id <> note.author_id
);

-- When an inspector found that a wording heard as being about pressure is not.
ALTER TABLE note_version ADD COLUMN turned_back_at INTEGER CHECK (turned_back_at > 0);

-- By which rules of pressure the stored wordings were judged last, and up to which of them.
CREATE TABLE pressure_rule (
    id               INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    rule             TEXT    NOT NULL,
    judged_up_to     INTEGER NOT NULL CHECK (judged_up_to >= 0)
) STRICT;
INSERT INTO pressure_rule (id, rule, judged_up_to) VALUES (1, '', 0);

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
        'material', version.material,
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
        -- Of this wording: what was found of an earlier one was found of another text.
        'worked', (SELECT count(*) FROM verdict WHERE verdict.version_id = version.id AND verdict.worked = 1),
        'did_not', (SELECT count(*) FROM verdict WHERE verdict.version_id = version.id AND verdict.worked = 0),
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

-- The marks of each note, as before.
CREATE VIEW note_mark AS
SELECT
    note.id,
    iif(note.confirmed_at IS NULL, '', char(0xE000) || 'confirmed ')
    || iif(
        EXISTS (
            SELECT 1 FROM correction
            WHERE correction.note_id = note.id AND correction.made_at >= note.shown_at
        ),
        char(0xE000) || 'corrected ',
        ''
    )
    || coalesce(
        (
            SELECT group_concat(
                char(0xE000) || replace(replace(replace(
                    entry_id, '/', char(0xE001)), '-', char(0xE002)), '.', char(0xE003)
                ),
                ' '
            )
            FROM note_entry WHERE note_entry.version_id = note.shown_version
        ),
        ''
    ) AS marks
FROM note;

-- A note counts as confirmed where its shown wording is.
UPDATE note SET confirmed_at = (
    SELECT max(verdict.made_at) FROM verdict WHERE verdict.version_id = note.shown_version AND verdict.worked = 1
)
WHERE EXISTS (
    SELECT 1 FROM verdict WHERE verdict.note_id = note.id AND verdict.version_id IS NOT note.shown_version
);
UPDATE note_text SET marks = (SELECT note_mark.marks FROM note_mark WHERE note_mark.id = note_text.rowid);
