//! Shown notes by their words: best first, with the words in the text around them.
//!
//! Accents, capitals and endings do not count, and the last word may be only begun. A name of the tables
//! finds what belongs to the thing. First stand the notes that have all of what was typed, then those that
//! have some of it. What was typed is taken as words and never as the language of the index.
//!
//! A word that stands in no note and names nothing is read as the nearest that does, and the page says so.
//!
//! Up to [`FEW`] notes that have it all are ranked by the index (bm25: a word in the title counts most, a
//! rare word more than a common one). Where more have the words, these say too little to rank by: of the
//! newest, those with the words in their title come first. What a filter asks stands in the index as a mark
//! beside the words. So a search takes hardly longer as the club writes more.
//!
//! Nor does it by what somebody writes or types: a word stands in a query only so often, and
//! [`around`] goes through a text once.

use std::collections::{HashMap, HashSet};

use tokio::task::spawn_blocking;

use super::Error;
use super::lists::{Filter, Listed, read};
use crate::db::Database;
use crate::rules::notes::around::{Stretch, around};
use crate::rules::notes::asked::{Forms, plain};
use crate::rules::notes::words::folded;
use index::{BEGUN, Reading, beginning_with};
use words::{Words, marks};

mod index;
mod some;
mod spelling;
mod words;

/// So many notes are ranked by the index.
const FEW: i64 = 600;

/// One note found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// The note.
    pub note: Listed,
    /// The text around the words found.
    pub around: Vec<Stretch>,
    /// Whether it has all of what was typed.
    pub has_all: bool,
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// Best first.
    pub hits: Vec<Hit>,
    /// What was typed as it was read, where that is otherwise.
    pub read_as: Option<String>,
}

/// The shown notes with these words that pass the filter, best first: those with all of them, then those
/// with some.
///
/// # Errors
/// The database cannot be read.
pub async fn find(
    database: &Database,
    typed: &str,
    filter: &Filter,
    most: i64,
) -> Result<Vec<Hit>, Error> {
    Ok(found(database, typed, filter, most).await?.hits)
}

/// The same, with how it was read.
///
/// # Errors
/// The database cannot be read.
pub async fn found(
    database: &Database,
    typed: &str,
    filter: &Filter,
    most: i64,
) -> Result<Found, Error> {
    let Some(mut words) = Words::read(typed) else { return Ok(Found::default()) };
    // All of it of one moment: else a note would be found by words that it has no more.
    let mut reading = database.readers.begin().await?;
    take_forms(&mut reading, &mut words).await?;
    let read_as = spelling::read_as(&mut reading, typed, &words).await?;
    let typed = read_as.as_deref().unwrap_or(typed);
    if let Some(read) = read_as.as_deref().and_then(Words::read) {
        words = read;
        take_forms(&mut reading, &mut words).await?;
    }
    let mut ids = best(&mut reading, &words, filter, most).await?;
    let is_short = |ids: &[i64]| i64::try_from(ids.len()).unwrap_or(i64::MAX) < most;
    if is_short(&ids)
        && let Some(begun) = begun(&mut reading, typed, &words).await?
    {
        words = begun;
        ids = best(&mut reading, &words, filter, most).await?;
    }
    let all: HashSet<i64> = ids.iter().copied().collect();
    if is_short(&ids) && words.0.len() > 1 {
        let some = some::best(&mut reading, &words, filter, most).await?;
        ids.extend(some.into_iter().filter(|id| !all.contains(id)));
        ids.truncate(usize::try_from(most).unwrap_or_default());
    }
    if ids.is_empty() {
        return Ok(Found { hits: Vec::new(), read_as });
    }
    let wanted = serde_json::to_string(&ids).unwrap_or_default();
    // Unchecked: the macro that checks queries crashes where such a table is read by its rowid.
    let rows: Vec<(i64, String, String)> = sqlx::query_as(
        "SELECT shown_note.id, shown_note.note, note_text.text
         FROM json_each(?) AS wanted
         CROSS JOIN note_text ON note_text.rowid = wanted.value
         JOIN shown_note ON shown_note.id = wanted.value",
    )
    .bind(wanted)
    .fetch_all(&mut *reading)
    .await?;
    drop(reading);
    // Twenty long notes are milliseconds of work.
    let read = spawn_blocking(move || {
        let sought: Vec<&str> =
            words.0.iter().flat_map(|word| &word.taken).map(String::as_str).collect();
        let hits = rows.iter().filter_map(|(id, note, text)| {
            // The title and the fields are shown beside it.
            let around = around(&[text], &sought);
            Some((*id, Hit { note: read(note)?, around, has_all: all.contains(id) }))
        });
        let mut hits: HashMap<i64, Hit> = hits.collect();
        ids.iter().filter_map(|id| hits.remove(id)).collect()
    });
    let hits = read.await.map_err(|error| sqlx::Error::Io(error.into()))?;
    Ok(Found { hits, read_as })
}

/// The numbers of the notes with all of it, best first.
async fn best(
    reading: &mut Reading<'_>,
    words: &Words,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let marks = marks(filter);
    let newest = index::newest(reading, &format!("({}){marks}", words.all()), FEW + 1).await?;
    let mut ids = Vec::new();
    if newest.len() <= usize::try_from(FEW).unwrap_or_default() {
        ids = ranked(reading, words, &newest).await?;
    }
    if let Some(oldest) = newest.last()
        && ids.is_empty()
    {
        // Only among these: the whole index would be looked through for a title that nobody wrote.
        let title = format!("({{title}} : ({})){marks}", words.all_written());
        ids = index::since(reading, &title, *oldest).await?;
    }
    let named: HashSet<i64> = ids.iter().copied().collect();
    ids.extend(newest.into_iter().filter(|id| !named.contains(id)));
    ids.truncate(usize::try_from(most).unwrap_or_default());
    Ok(ids)
}

/// These notes as the index ranks them by the words that not too many notes have; none where every
/// word is common.
async fn ranked(reading: &mut Reading<'_>, words: &Words, ids: &[i64]) -> Result<Vec<i64>, Error> {
    let mut rare = Vec::new();
    for word in &words.0 {
        if !index::is_common(reading, &word.any()).await? {
            rare.push(word.clone());
        }
    }
    if rare.is_empty() || ids.is_empty() {
        return Ok(Vec::new());
    }
    let (rare, ids) = (Words(rare).all(), serde_json::to_string(ids).unwrap_or_default());
    Ok(sqlx::query_scalar!(
        r#"WITH found AS MATERIALIZED (
             SELECT rowid AS id, bm25(note_text, 6.0, 1.0, 3.0, 3.0) AS rank FROM note_text
             WHERE note_text MATCH ?1)
           SELECT id AS "id!: i64" FROM found WHERE id IN (SELECT value FROM json_each(?2))
           ORDER BY rank, id DESC"#,
        rare,
        ids
    )
    .fetch_all(&mut **reading)
    .await?)
}

/// Each word is taken for its other forms too, as far as some note has them.
async fn take_forms(reading: &mut Reading<'_>, words: &mut Words) -> Result<(), Error> {
    for word in &mut words.0 {
        let Some(forms) = word.taken.first().and_then(|typed| Forms::of(typed)) else { continue };
        let written = beginning_with(reading, forms.beginning(), BEGUN).await?;
        let irregular = forms.irregular().iter().map(|form| (*form).to_owned());
        for form in written.into_iter().filter(|form| forms.has(form)).chain(irregular) {
            if !word.taken.iter().any(|taken| folded(taken) == form.as_str()) {
                word.taken.push(form);
            }
        }
    }
    Ok(())
}

/// These words with the last one taken for the beginning of a word. None where no note has a word
/// that begins so, or where it is no plain word.
async fn begun(
    reading: &mut Reading<'_>,
    typed: &str,
    words: &Words,
) -> Result<Option<Words>, Error> {
    let last = folded(typed.split_whitespace().next_back().unwrap_or_default()).into_owned();
    // One letter begins half the words there are.
    if last.chars().count() < 2 || !last.chars().all(char::is_alphanumeric) {
        return Ok(None);
    }
    let found = beginning_with(reading, &last, BEGUN).await?;
    let found: Vec<String> = found.iter().filter_map(|word| plain(word)).collect();
    if found.is_empty() {
        return Ok(None);
    }
    let mut words = words.clone();
    let is_last = |typed: &String| folded(typed) == last.as_str();
    let mut all = words.0.iter_mut();
    let Some(begun) = all.find(|word| word.taken.first().is_some_and(is_last)) else {
        return Ok(None);
    };
    // "BA" behind a figure is a thread and no beginning of "bath".
    if begun.names_things() {
        return Ok(None);
    }
    begun
        .taken
        .extend(found.into_iter().filter(|found| !begun.taken.contains(found)).collect::<Vec<_>>());
    Ok(Some(words))
}
