-- The newsletter asks for the notes of a month.
CREATE INDEX note_by_shown ON note (shown_at, id) WHERE shown_at IS NOT NULL;

-- How long notes wait for an answer is asked each time that one is sent in.
CREATE INDEX version_decided ON note_version (decided_at, saved_at) WHERE decided_at IS NOT NULL;

-- Where a tip was printed before it came here, and in what year.
ALTER TABLE note_version ADD COLUMN source TEXT NOT NULL DEFAULT '' CHECK (length(source) <= 200);
