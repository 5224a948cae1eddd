//! Shown notes by their words: best first, with the words in the text around them.
//!
//! Accents and capitals do not count, and the last word may be only begun. What was typed is taken as
//! words and never as the language of the index.
//!
//! Up to [`FEW`] notes are ranked by the index (bm25: a word in the title counts most, a rare word more
//! than a common one). Where more have the words, these say too little to rank by: of the newest,
//! those with the words in their title come first. So a search takes hardly longer as the club writes more.

use std::collections::{HashMap, HashSet};

use super::Error;
use super::lists::{Filter, Listed, read};
use crate::server::db::Database;
use crate::server::notes::belongs::at;

/// So many notes are ranked by the index.
const FEW: i64 = 600;
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
    let Some(mut words) = expression(typed, Last::Whole) else { return Ok(Vec::new()) };
    let mut ids = best(database, &words, filter, most).await?;
    if i64::try_from(ids.len()).unwrap_or(i64::MAX) < most
        && let Some(begun) = expression(typed, Last::Begun)
    {
        words = begun;
        ids = best(database, &words, filter, most).await?;
    }
    if ids.is_empty() {
        return Ok(Vec::new());
    }
    let wanted = serde_json::to_string(&ids).unwrap_or_default();
    let rows = sqlx::query!(
        r#"SELECT shown_note.id AS "id!: i64", shown_note.note AS "note!: String",
             snippet(note_text, -1, char(2), char(3), '…', 24) AS "around!: String"
           FROM json_each(?2) AS wanted
           CROSS JOIN note_text ON note_text.rowid = wanted.value
           JOIN shown_note ON shown_note.id = wanted.value
           WHERE note_text MATCH ?1"#,
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

/// The numbers of the notes, best first.
async fn best(
    database: &Database,
    words: &str,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let newest = newest(database, words, filter, (i64::MIN, FEW + 1)).await?;
    if newest.len() <= usize::try_from(FEW).unwrap_or_default() {
        return ranked(database, words, &newest, most).await;
    }
    // Only among these: the whole index would be looked through for a title that nobody wrote.
    let oldest = newest.last().copied().unwrap_or_default();
    let title = format!("{{title}} : ({words})");
    let mut ids = self::newest(database, &title, filter, (oldest, most)).await?;
    let named: HashSet<i64> = ids.iter().copied().collect();
    ids.extend(newest.into_iter().filter(|id| !named.contains(id)));
    ids.truncate(usize::try_from(most).unwrap_or_default());
    Ok(ids)
}

/// The newest notes with these words that pass the filter: from this number on, so many at most.
async fn newest(
    database: &Database,
    words: &str,
    filter: &Filter,
    (oldest, most): (i64, i64),
) -> Result<Vec<i64>, Error> {
    let (on, confirmed, corrected) = (&filter.on, filter.confirmed_only, filter.corrected_only);
    // The names of the things a note belongs to stand in the index: few notes are then looked at.
    let thing = on.as_deref().and_then(at).and_then(|thing| phrase(&thing.title));
    let words = thing
        .map_or_else(|| words.to_owned(), |thing| format!("({words}) AND ({{done}} : {thing})"));
    let mut ids = sqlx::query_scalar!(
        r#"SELECT found.id AS "id!: i64"
           FROM (SELECT rowid AS id FROM note_text WHERE note_text MATCH ?1 AND rowid >= ?6
                 ORDER BY rowid DESC LIMIT 5000) AS found
           WHERE (?2 IS NULL OR EXISTS (
               SELECT 1 FROM note JOIN note_entry ON note_entry.version_id = note.shown_version
               WHERE note.id = found.id AND note_entry.entry_id = ?2))
             AND (NOT ?3 OR EXISTS (
               SELECT 1 FROM note WHERE note.id = found.id AND note.confirmed_at IS NOT NULL))
             AND (NOT ?4 OR EXISTS (
               SELECT 1 FROM note JOIN correction ON correction.note_id = note.id
               WHERE note.id = found.id AND correction.made_at >= note.shown_at))
           LIMIT ?5"#,
        words,
        on,
        confirmed,
        corrected,
        most,
        oldest
    )
    .fetch_all(&database.readers)
    .await?;
    ids.sort_unstable_by(|one, other| other.cmp(one));
    Ok(ids)
}

/// These notes as the index ranks them.
async fn ranked(
    database: &Database,
    words: &str,
    ids: &[i64],
    most: i64,
) -> Result<Vec<i64>, Error> {
    let ids = serde_json::to_string(ids).unwrap_or_default();
    Ok(sqlx::query_scalar!(
        r#"SELECT found.id AS "id!: i64"
           FROM (SELECT rowid AS id, bm25(note_text, 6.0, 1.0, 3.0) AS rank FROM note_text
                 WHERE note_text MATCH ?1 ORDER BY rowid DESC LIMIT 5000) AS found
           WHERE found.id IN (SELECT value FROM json_each(?2))
           ORDER BY found.rank, found.id DESC LIMIT ?3"#,
        words,
        ids,
        most
    )
    .fetch_all(&database.readers)
    .await?)
}

/// How the last word is taken.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Last {
    /// As it stands.
    Whole,
    /// As the beginning of a word.
    Begun,
}

/// What was typed in the language of the index: each word in quotation marks, which make it a word
/// whatever it holds. None where no word was typed.
fn expression(typed: &str, last: Last) -> Option<String> {
    let words: Vec<String> = typed.split_whitespace().filter_map(phrase).take(WORDS).collect();
    let mark = match last {
        Last::Whole => "",
        // One letter begins half the words there are.
        Last::Begun if words.last()?.chars().filter(|c| c.is_alphanumeric()).count() < 2 => {
            return None;
        }
        Last::Begun => "*",
    };
    (!words.is_empty()).then(|| format!("{}{mark}", words.join(" ")))
}

/// One word, or several that stand together. None where there is no letter and no digit in it.
fn phrase(text: &str) -> Option<String> {
    let kept = |c: &char| *c != '"' && !c.is_control();
    let text: String = text.chars().filter(kept).take(LETTERS).collect();
    text.chars().any(char::is_alphanumeric).then(|| format!("\"{text}\""))
}
