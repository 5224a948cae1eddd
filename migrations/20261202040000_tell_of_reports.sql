-- That a note of theirs was reported and hidden by it is news to its author, and so is that it shows again.

-- Whether it hid the note: one that came while another was open did not. When the note showed again by its being
-- settled, with nothing against it. Of what was settled before this step neither is told.
ALTER TABLE safety_report ADD COLUMN hid INTEGER NOT NULL DEFAULT 0 CHECK (hid IN (0, 1));
ALTER TABLE safety_report ADD COLUMN showed_at INTEGER CHECK (showed_at > 0);
UPDATE safety_report SET hid = 1 WHERE id IN (
    SELECT min(report.id) FROM safety_report AS report JOIN note ON note.id = report.note_id
    WHERE report.settled_at IS NULL AND note.hidden_at IS NOT NULL GROUP BY report.note_id
);
CREATE INDEX report_hid ON safety_report (note_id, made_at) WHERE hid = 1;
CREATE INDEX report_showed ON safety_report (note_id, showed_at) WHERE showed_at IS NOT NULL;

DROP VIEW concern;

-- What concerns a member: decisions on their notes, what others found of them, corrections, reports that hid them and
-- what came of those, remarks on them, and decisions on their own remarks; and who did it. What each word of kind means
-- stands in the rules, where every one of them is declared.
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
WHERE remark.state IN ('shown', 'declined') AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL
UNION ALL
-- Without its words and whoever sent it: those are for whoever decides.
SELECT note.author_id, report.member_id, 'reported', report.id, note.id, shown.title, '', report.made_at
FROM note CROSS JOIN safety_report AS report ON report.note_id = note.id
CROSS JOIN note_version AS shown ON shown.id = note.shown_version
WHERE report.hid = 1
UNION ALL
SELECT note.author_id, report.settled_by, 'report-settled', report.id, note.id, shown.title, '', report.showed_at
FROM note CROSS JOIN safety_report AS report ON report.note_id = note.id
CROSS JOIN note_version AS shown ON shown.id = note.shown_version
WHERE report.showed_at IS NOT NULL;
