//! Shown notes by their words: best first, with the words in the text around them.
//!
//! Accents and capitals do not count; each word may be only begun. What was typed is taken as words
//! and never as the language of the index. Where thousands of notes have the words, the newest of
//! them are ranked.

use std::collections::HashMap;

use super::Error;
use super::lists::{Filter, Listed, read};
use crate::server::db::Database;

/// The most words of a query that are looked at.
const WORDS: usize = 12;
/// The most letters of one word.
const LETTERS: usize = 40;

/// A mark that no text holds stands before and behind each word found.
pub const BEGIN: char = '\u{2}';
/// The end of a word found.
pub const END: char = '\u{3}';

/// One note found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// The note.
    pub note: Listed,
    /// The text around the words found, each between [`BEGIN`] and [`END`].
    pub around: String,
}

/// The shown notes with these words that pass the filter, best first.
///
/// # Errors
/// The database cannot be read.
pub async fn find(
    database: &Database,
    typed: &str,
    filter: &Filter,
    most: i64,
) -> Result<Vec<Hit>, Error> {
    let Some(words) = expression(typed) else { return Ok(Vec::new()) };
    let ids = ranked(database, &words, filter, most).await?;
    if ids.is_empty() {
        return Ok(Vec::new());
    }
    let wanted = serde_json::to_string(&ids).unwrap_or_default();
    let rows = sqlx::query!(
        r#"SELECT shown_note.id AS "id!: i64", shown_note.note AS "note!: String",
             snippet(note_text, -1, char(2), char(3), '…', 24) AS "around!: String"
           FROM note_text JOIN shown_note ON shown_note.id = note_text.rowid
           WHERE note_text MATCH ?1 AND note_text.rowid IN (SELECT value FROM json_each(?2))"#,
        words,
        wanted
    )
    .fetch_all(&database.readers)
    .await?;
    let mut hits: HashMap<i64, Hit> = rows
        .into_iter()
        .filter_map(|row| Some((row.id, Hit { note: read(&row.note)?, around: row.around })))
        .collect();
    Ok(ids.iter().filter_map(|id| hits.remove(id)).collect())
}

/// The numbers of the notes, best first: a word in the title counts most, then one about what was done.
async fn ranked(
    database: &Database,
    words: &str,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let (on, confirmed, corrected) = (&filter.on, filter.confirmed_only, filter.corrected_only);
    let any = on.is_none() && !confirmed && !corrected;
    Ok(sqlx::query_scalar!(
        r#"SELECT found.id AS "id!: i64"
           FROM (SELECT rowid AS id, bm25(note_text, 6.0, 1.0, 3.0) AS rank FROM note_text
                 WHERE note_text MATCH ?1 ORDER BY rowid DESC LIMIT 2000) AS found
           WHERE ?2 OR EXISTS (
             SELECT 1 FROM shown_note WHERE shown_note.id = found.id
               AND (?3 IS NULL OR EXISTS (SELECT 1 FROM note_entry
                 WHERE note_entry.version_id = shown_note.version_id AND note_entry.entry_id = ?3))
               AND (NOT ?4 OR shown_note.confirmed_at IS NOT NULL)
               AND (NOT ?5 OR shown_note.is_corrected))
           ORDER BY found.rank, found.id DESC LIMIT ?6"#,
        words,
        any,
        on,
        confirmed,
        corrected,
        most
    )
    .fetch_all(&database.readers)
    .await?)
}

/// What was typed in the language of the index: each word in quotation marks, which make it a word
/// whatever it holds, and perhaps only begun. None where no word was typed.
#[must_use]
pub fn expression(typed: &str) -> Option<String> {
    let words = typed.split_whitespace().map(|word| {
        word.chars().filter(|c| *c != '"' && !c.is_control()).take(LETTERS).collect::<String>()
    });
    let words: Vec<String> = words
        .filter(|word| word.chars().any(char::is_alphanumeric))
        .take(WORDS)
        .map(|word| format!("\"{word}\"*"))
        .collect();
    if words.is_empty() { None } else { Some(words.join(" ")) }
}
