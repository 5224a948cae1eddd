-- What was found at another size, with another drill or in another material than the note's says nothing of the note: it
-- is shown beside it and neither counted nor taken as confirming it. What was found before this is counted as it was.
ALTER TABLE verdict ADD COLUMN is_elsewhere INTEGER NOT NULL DEFAULT 0 CHECK (is_elsewhere IN (0, 1));

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
        'inspected_at', version.inspected_at,
        'author', (SELECT member.name FROM member WHERE member.id = note.author_id),
        'made_at', note.made_at,
        'shown_at', note.shown_at,
        'confirmed_at', note.confirmed_at,
        -- Of this wording: what was found of an earlier one was found of another text.
        'worked', (SELECT count(*) FROM verdict WHERE verdict.version_id = version.id AND verdict.worked = 1
            AND NOT verdict.is_elsewhere),
        'did_not', (SELECT count(*) FROM verdict WHERE verdict.version_id = version.id AND verdict.worked = 0
            AND NOT verdict.is_elsewhere),
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
