-- Deciding: what can be undone within a minute, what was asked of a wording before, small fixes by whoever decides,
-- and when an inspector read what speaks of pressure.

-- Who made a small fix of a wording before it was shown, and of which wording of its author's; null where it is the
-- author's own.
ALTER TABLE note_version ADD COLUMN mended_by INTEGER REFERENCES member (id) ON DELETE SET NULL;
ALTER TABLE note_version ADD COLUMN mended_from INTEGER REFERENCES note_version (id) ON DELETE SET NULL;

-- When an inspector read the shown wording and let it stand. Of what was shown before this step it is known where
-- whoever passed it is an inspector.
ALTER TABLE note_version ADD COLUMN inspected_at INTEGER CHECK (inspected_at > 0);
UPDATE note_version SET inspected_at = decided_at
WHERE is_pressure = 1 AND state IN ('shown', 'replaced') AND decided_by IN (
    SELECT id FROM member WHERE is_inspector = 1
);

-- An earlier note that said much the same when the wording was sent in.
ALTER TABLE note_version ADD COLUMN like_note INTEGER REFERENCES note (id) ON DELETE SET NULL;

-- What somebody asked to have changed, and the wording it was asked of: that goes once another is sent in.
CREATE TABLE change_asked (
    id               INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    note_id          INTEGER NOT NULL REFERENCES note (id) ON DELETE CASCADE,
    asked_by         INTEGER REFERENCES member (id) ON DELETE SET NULL,
    asked_at         INTEGER NOT NULL CHECK (asked_at > 0),
    reason           TEXT    NOT NULL CHECK (reason <> '' AND length(reason) <= 2000),
    -- The wording as plain lines.
    words            TEXT    NOT NULL
) STRICT;
CREATE INDEX change_asked_by_note ON change_asked (note_id, id);

-- The last decision about a note while it can be undone: it goes as soon as anything else happens to the note.
CREATE TABLE undoable (
    note_id          INTEGER NOT NULL PRIMARY KEY REFERENCES note (id) ON DELETE CASCADE,
    what             TEXT    NOT NULL CHECK (what IN ('pass', 'change', 'decline', 'settle', 'over', 'back')),
    -- The wording it was about.
    version_id       INTEGER NOT NULL,
    decided_by       INTEGER NOT NULL REFERENCES member (id) ON DELETE CASCADE,
    decided_at       INTEGER NOT NULL CHECK (decided_at > 0),
    -- JSON: the rows of the note as they stood before.
    before           TEXT    NOT NULL
) STRICT;
CREATE INDEX undoable_by_member ON undoable (decided_by);

CREATE TRIGGER undoable_note AFTER UPDATE ON note
BEGIN DELETE FROM undoable WHERE note_id = new.id; END;
CREATE TRIGGER undoable_version_made AFTER INSERT ON note_version
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_version_changed AFTER UPDATE ON note_version
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_version_gone AFTER DELETE ON note_version
BEGIN DELETE FROM undoable WHERE note_id = old.note_id; END;
CREATE TRIGGER undoable_correction AFTER INSERT ON correction
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_verdict_made AFTER INSERT ON verdict
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_verdict_changed AFTER UPDATE ON verdict
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_verdict_gone AFTER DELETE ON verdict
BEGIN DELETE FROM undoable WHERE note_id = old.note_id; END;
CREATE TRIGGER undoable_report_made AFTER INSERT ON safety_report
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;
CREATE TRIGGER undoable_report_changed AFTER UPDATE ON safety_report
BEGIN DELETE FROM undoable WHERE note_id = new.note_id; END;

-- The last decisions, for those who decide.
CREATE INDEX act_decided ON act (id) WHERE what IN (
    'note-shown', 'note-change-asked', 'note-declined', 'note-report-settled', 'note-withdrawn',
    'note-handed-over', 'note-turned-back', 'note-decision-undone'
);
