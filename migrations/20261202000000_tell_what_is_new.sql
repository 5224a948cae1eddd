-- What became of a member's notes and remarks is news until they have said that they read it.

-- Up to when they have. Whatever had happened before this step counts as read.
ALTER TABLE member ADD COLUMN news_read_at INTEGER NOT NULL DEFAULT 0 CHECK (news_read_at >= 0);
UPDATE member SET news_read_at = coalesce((SELECT max(at) FROM act), 0);

-- It is asked with every page of a member's: what came since, without reading what was there before.
CREATE INDEX remark_decided ON remark (note_id, decided_at) WHERE decided_at IS NOT NULL;
CREATE INDEX note_withdrawn ON note (author_id, withdrawn_at) WHERE withdrawn_at IS NOT NULL;
CREATE INDEX version_decided_by_note ON note_version (note_id, decided_at) WHERE decided_at IS NOT NULL;

-- The slips that nobody used.
CREATE INDEX slip_unused ON slip (ends_at) WHERE used_at IS NULL;

-- What concerns a member: decisions on their notes ('change', 'declined', 'shown', 'withdrawn'), what others found of
-- them ('worked', 'did-not'; of a warning 'happened', 'did-not-happen'), corrections ('corrected') and remarks
-- ('remarked') on them, and decisions on their own remarks ('remark-shown', 'remark-declined'); and who did it.
-- CROSS JOIN keeps the order: what is new is looked for before the wording that it is about.
CREATE VIEW concern AS
SELECT note.author_id AS member_id, version.decided_by AS by_id,
    CASE version.state WHEN 'draft' THEN 'change' WHEN 'declined' THEN 'declined' ELSE 'shown' END AS kind,
    version.id AS number, note.id AS note_id, version.title AS title, version.reason AS text,
    version.decided_at AS at
FROM note JOIN note_version AS version ON version.note_id = note.id
WHERE version.decided_at IS NOT NULL AND version.state <> 'waiting'
    AND (version.state <> 'draft' OR version.reason <> '')
    AND NOT EXISTS (SELECT 1 FROM note_version AS mended WHERE mended.mended_from = version.id)
UNION ALL
SELECT note.author_id, NULL, 'withdrawn', note.id, note.id, shown.title, note.withdrawn_why, note.withdrawn_at
FROM note JOIN note_version AS shown ON shown.id = note.shown_version
WHERE note.withdrawn_by_another = 1 AND note.withdrawn_at IS NOT NULL
UNION ALL
SELECT note.author_id, correction.made_by, 'corrected', correction.id, note.id, shown.title, correction.text,
    correction.made_at
FROM note CROSS JOIN correction ON correction.note_id = note.id
CROSS JOIN note_version AS shown ON shown.id = note.shown_version
UNION ALL
SELECT note.author_id, remark.member_id, 'remarked', remark.id, note.id, shown.title, remark.text,
    remark.decided_at
FROM note CROSS JOIN remark ON remark.note_id = note.id
CROSS JOIN note_version AS shown ON shown.id = note.shown_version
WHERE remark.member_id IS NOT note.author_id AND remark.state = 'shown' AND remark.decided_at IS NOT NULL
    AND note.withdrawn_at IS NULL
UNION ALL
SELECT note.author_id, verdict.member_id,
    CASE WHEN judged.is_warning = 0 AND verdict.worked = 1 THEN 'worked' WHEN judged.is_warning = 0 THEN 'did-not'
        WHEN verdict.worked = 1 THEN 'happened' ELSE 'did-not-happen' END,
    verdict.member_id, note.id, shown.title, trim(verdict.material || ', ' || verdict.size, ', '),
    verdict.made_at
FROM note CROSS JOIN verdict ON verdict.note_id = note.id
CROSS JOIN note_version AS shown ON shown.id = note.shown_version
CROSS JOIN note_version AS judged ON judged.id = verdict.version_id
UNION ALL
SELECT remark.member_id, remark.decided_by, 'remark-' || remark.state, remark.id, note.id, shown.title,
    iif(remark.state = 'declined', remark.reason, remark.text), remark.decided_at
FROM remark JOIN note ON note.id = remark.note_id
JOIN note_version AS shown ON shown.id = note.shown_version
WHERE remark.state IN ('shown', 'declined') AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL;
