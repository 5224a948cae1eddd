-- How long notes wait for an answer is asked each time that one is sent in.
CREATE INDEX version_decided ON note_version (decided_at, saved_at) WHERE decided_at IS NOT NULL;
