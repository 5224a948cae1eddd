-- What a note is marked by stands in the index beside its words, so that a search through a filter
-- asks the index alone and takes hardly longer as the club writes more.

-- The marks of each note, each one word of the index: "confirmed", "corrected", and the things it belongs
-- to. A mark begins with U+E000, which no word that is typed may hold; the index takes characters of private
-- use for letters, so U+E001 to U+E003 stand for what would end a word.
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

-- Its rowid is the note's id. Kept by the program in the transaction that shows, replaces, hides, confirms,
-- corrects or withdraws.
CREATE VIRTUAL TABLE marked_note_text USING fts5 (
    title, text, done, marks,
    tokenize = "unicode61 remove_diacritics 2"
);
INSERT INTO marked_note_text (rowid, title, text, done, marks)
SELECT note_text.rowid, note_text.title, note_text.text, note_text.done, note_mark.marks
FROM note_text JOIN note_mark ON note_mark.id = note_text.rowid;
DROP TABLE note_text;
ALTER TABLE marked_note_text RENAME TO note_text;

-- The words of the index, in their order, each as often as it stands in a note: a row a word would count
-- the notes.
CREATE VIRTUAL TABLE note_word USING fts5vocab (note_text, instance);
