-- What members say of a note says more: why it worked or not, whether a note warns rather than shows a way, and
-- remarks below it, which somebody reads before they are shown.

-- One line with a verdict: "the tap squealed until I used paraffin".
ALTER TABLE verdict ADD COLUMN why TEXT NOT NULL DEFAULT '' CHECK (length(why) <= 200);

-- A wording that warns: what is asked of it is whether it happened to others too, not whether it worked.
ALTER TABLE note_version ADD COLUMN is_warning INTEGER NOT NULL DEFAULT 0 CHECK (is_warning IN (0, 1));

-- A member's remark on a shown note. It is shown once somebody has read it; whose that is follows is_pressure, as for
-- a note. It stays with the wording that it was made on. Its number is never used again.
CREATE TABLE remark (
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    version_id       INTEGER NOT NULL REFERENCES note_version (id) ON DELETE CASCADE,
    -- None once whoever made it has left the club.
    member_id        INTEGER REFERENCES member (id) ON DELETE SET NULL,
    state            TEXT    NOT NULL DEFAULT 'waiting'
                     CHECK (state IN ('waiting', 'shown', 'declined', 'withdrawn')),
    is_pressure      INTEGER NOT NULL CHECK (is_pressure IN (0, 1)),
    text             TEXT    NOT NULL CHECK (text <> '' AND length(text) <= 500),
    made_at          INTEGER NOT NULL CHECK (made_at > 0),
    decided_at       INTEGER CHECK (decided_at > 0),
    decided_by       INTEGER REFERENCES member (id) ON DELETE SET NULL,
    -- Why it was not taken.
    reason           TEXT    NOT NULL DEFAULT '' CHECK (length(reason) <= 2000)
) STRICT;
CREATE INDEX remark_by_note ON remark (note_id, id);
CREATE INDEX remark_by_member ON remark (member_id);
-- A wording or a note that goes asks for what hangs on it.
CREATE INDEX remark_by_version ON remark (version_id);
CREATE INDEX wording_mended_from ON note_version (mended_from) WHERE mended_from IS NOT NULL;
CREATE INDEX wording_like_note ON note_version (like_note) WHERE like_note IS NOT NULL;
CREATE INDEX remark_waiting ON remark (id) WHERE state = 'waiting';
-- The same words sent twice are one remark.
CREATE UNIQUE INDEX remark_once ON remark (note_id, member_id, text) WHERE state IN ('waiting', 'shown');

-- A member's own feed: what concerns them, for a feed reader that does not sign in. The address holds a token, of which
-- only the hash is kept.
CREATE TABLE feed (
    member_id        INTEGER NOT NULL PRIMARY KEY REFERENCES member (id) ON DELETE CASCADE,
    token_hash       BLOB    NOT NULL UNIQUE CHECK (length(token_hash) = 32),
    made_at          INTEGER NOT NULL CHECK (made_at > 0)
) STRICT;

-- A decision is undone only while nothing else happened to the note.
CREATE TRIGGER undoable_remark_made AFTER INSERT ON remark
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_remark_changed AFTER UPDATE ON remark
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_remark_gone AFTER DELETE ON remark
BEGIN DELETE FROM undoable WHERE note_id = old.note_id; END;

DROP VIEW shown_note;

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
        'source', version.source,
        'is_pressure', version.is_pressure,
        'is_warning', version.is_warning,
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
