//! Shown notes by their words: best first, with the words in the text around them.
//!
//! Accents and capitals do not count, and the last word may be only begun. What was typed is taken as
//! words and never as the language of the index.
//!
//! Up to [`FEW`] notes are ranked by the index (bm25: a word in the title counts most, a rare word more
//! than a common one). Where more have the words, these say too little to rank by: of the newest,
//! those with the words in their title come first. What a filter asks stands in the index as a mark
//! beside the words. So a search takes hardly longer as the club writes more.
//!
//! Nor does it by what somebody writes or types: a word stands in a query only so often ([`Uses`]), and
//! [`around`] goes through a text once.

use std::collections::{HashMap, HashSet};

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::Error;
use super::lists::{Filter, Listed, read};
use crate::db::Database;
use crate::rules::notes::around::{Stretch, around};
use crate::rules::notes::words::{Uses, folded};

/// So many notes are ranked by the index.
const FEW: i64 = 600;
/// A word that more notes have says too little of them to rank by: the index would count it in each.
const COMMON: i64 = 1000;
/// The most words of a query that are looked at.
const WORDS: usize = 12;
/// The most words that a begun word is taken for.
const BEGUN: i64 = 60;
/// The most letters of one word.
const LETTERS: usize = 40;

/// The notes as they stand at one moment.
type Reading<'a> = Transaction<'a, Sqlite>;

/// One note found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// The note.
    pub note: Listed,
    /// The text around the words found.
    pub around: Vec<Stretch>,
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
    let Some(mut words) = Words::read(typed) else { return Ok(Vec::new()) };
    // All of it of one moment: else a note would be found by words that it has no more.
    let mut reading = database.readers.begin().await?;
    let mut ids = best(&mut reading, &words, filter, most).await?;
    if i64::try_from(ids.len()).unwrap_or(i64::MAX) < most
        && let Some(begun) = begun(&mut reading, typed, &words).await?
    {
        words = begun;
        ids = best(&mut reading, &words, filter, most).await?;
    }
    if ids.is_empty() {
        return Ok(Vec::new());
    }
    let wanted = serde_json::to_string(&ids).unwrap_or_default();
    // Unchecked: the macro that checks queries crashes where such a table is read by its rowid.
    let rows: Vec<(i64, String, String, String, String)> = sqlx::query_as(
        "SELECT shown_note.id, shown_note.note, note_text.title, note_text.text, note_text.done
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
        let sought: Vec<&str> = words.0.iter().flatten().map(String::as_str).collect();
        let hits = rows.iter().filter_map(|(id, note, title, text, done)| {
            let around = around(&[title, text, done], &sought);
            Some((*id, Hit { note: read(note)?, around }))
        });
        let mut hits: HashMap<i64, Hit> = hits.collect();
        ids.iter().filter_map(|id| hits.remove(id)).collect()
    });
    Ok(read.await.map_err(|error| sqlx::Error::Io(error.into()))?)
}

/// The numbers of the notes, best first.
async fn best(
    reading: &mut Reading<'_>,
    words: &Words,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let (words_of_all, marks) = (words.all(), marks(filter));
    let newest = newest(reading, &format!("({words_of_all}){marks}")).await?;
    let mut ids = Vec::new();
    if newest.len() <= usize::try_from(FEW).unwrap_or_default() {
        ids = ranked(reading, words, &newest).await?;
    }
    if let Some(oldest) = newest.last()
        && ids.is_empty()
    {
        // Only among these: the whole index would be looked through for a title that nobody wrote.
        let title = format!("({{title}} : ({words_of_all})){marks}");
        ids = since(reading, &title, *oldest).await?;
    }
    let named: HashSet<i64> = ids.iter().copied().collect();
    ids.extend(newest.into_iter().filter(|id| !named.contains(id)));
    ids.truncate(usize::try_from(most).unwrap_or_default());
    Ok(ids)
}

/// The newest notes that the index finds by this, and one more than are few.
async fn newest(reading: &mut Reading<'_>, found_by: &str) -> Result<Vec<i64>, Error> {
    let most = FEW + 1;
    Ok(sqlx::query_scalar!(
        r#"SELECT rowid AS "id!: i64" FROM note_text WHERE note_text MATCH ?
           ORDER BY rowid DESC LIMIT ?"#,
        found_by,
        most
    )
    .fetch_all(&mut **reading)
    .await?)
}

/// The notes from this number on that the index finds by this, newest first. The index is read
/// forwards: backwards it would go past the number until it finds another.
async fn since(reading: &mut Reading<'_>, found_by: &str, oldest: i64) -> Result<Vec<i64>, Error> {
    let mut ids = sqlx::query_scalar!(
        r#"SELECT rowid AS "id!: i64" FROM note_text WHERE note_text MATCH ? AND rowid >= ?"#,
        found_by,
        oldest
    )
    .fetch_all(&mut **reading)
    .await?;
    ids.reverse();
    Ok(ids)
}

/// These notes as the index ranks them by the words that not too many notes have; none where every
/// word is common.
async fn ranked(reading: &mut Reading<'_>, words: &Words, ids: &[i64]) -> Result<Vec<i64>, Error> {
    let mut rare = Vec::new();
    for word in &words.0 {
        if !is_common(reading, &any(word)).await? {
            rare.push(word.clone());
        }
    }
    if rare.is_empty() || ids.is_empty() {
        return Ok(Vec::new());
    }
    let (rare, ids) = (Words(rare).all(), serde_json::to_string(ids).unwrap_or_default());
    Ok(sqlx::query_scalar!(
        r#"WITH found AS MATERIALIZED (
             SELECT rowid AS id, bm25(note_text, 6.0, 1.0, 3.0, 0.0) AS rank FROM note_text
             WHERE note_text MATCH ?1)
           SELECT id AS "id!: i64" FROM found WHERE id IN (SELECT value FROM json_each(?2))
           ORDER BY rank, id DESC"#,
        rare,
        ids
    )
    .fetch_all(&mut **reading)
    .await?)
}

async fn is_common(reading: &mut Reading<'_>, word: &str) -> Result<bool, Error> {
    let enough = COMMON + 1;
    let count = sqlx::query_scalar!(
        r#"SELECT count(*) AS "count!: i64"
           FROM (SELECT rowid FROM note_text WHERE note_text MATCH ? LIMIT ?)"#,
        word,
        enough
    )
    .fetch_one(&mut **reading)
    .await?;
    Ok(count > COMMON)
}

/// What a note that passes the filter is marked by, as a further demand on the index. The marks are
/// those of the view `note_mark`.
fn marks(filter: &Filter) -> String {
    let thing = filter.on.as_deref().map(|thing| {
        let letters = thing.chars().map(|letter| match letter {
            '/' => '\u{e001}',
            '-' => '\u{e002}',
            '.' => '\u{e003}',
            letter => letter,
        });
        letters.filter(|letter| *letter != '"').collect::<String>()
    });
    let confirmed = filter.confirmed_only.then(|| "confirmed".to_owned());
    let corrected = filter.corrected_only.then(|| "corrected".to_owned());
    let marks = [thing, confirmed, corrected].into_iter().flatten();
    marks.map(|mark| format!(" AND marks : \"\u{e000}{mark}\"")).collect()
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
    let found = beginning_with(reading, &last).await?;
    let found: Vec<String> = found.iter().filter_map(|word| phrase(word)).collect();
    if found.is_empty() {
        return Ok(None);
    }
    let mut words = words.0.clone();
    let is_last = |word: &&mut Vec<String>| word.iter().all(|word| folded(word) == last);
    let Some(begun) = words.iter_mut().find(is_last) else { return Ok(None) };
    *begun = found;
    Ok(Some(Words(words)))
}

/// The words of the index that begin so, in their order. From each it is a leap to the next: asked
/// for all at once, the index would go through every place where any of them stands.
async fn beginning_with(reading: &mut Reading<'_>, beginning: &str) -> Result<Vec<String>, Error> {
    let behind = format!("{beginning}{}", char::MAX);
    // Unchecked: the macro that checks queries crashes on such a table.
    Ok(sqlx::query_scalar(
        "WITH RECURSIVE word (term) AS (
           SELECT (SELECT term FROM note_word WHERE term >= ?1 LIMIT 1)
           UNION ALL
           SELECT (SELECT term FROM note_word WHERE term >= word.term || char(1) LIMIT 1)
           FROM word WHERE word.term < ?2
           LIMIT ?3)
         SELECT term FROM word WHERE term < ?2",
    )
    .bind(beginning)
    .bind(behind)
    .bind(BEGUN)
    .fetch_all(&mut **reading)
    .await?)
}

/// What was typed: of each word what it is taken for.
struct Words(Vec<Vec<String>>);

impl Words {
    /// None where no word was typed. A word that is typed again says nothing more.
    fn read(typed: &str) -> Option<Self> {
        let mut uses = Uses::default();
        let mut looks = HashSet::new();
        let words = typed.split_whitespace().filter_map(phrase);
        let words = words.filter(|word| looks.insert(folded(word).into_owned()));
        let words = words.filter_map(|word| phrase(uses.within(&word)));
        let words: Vec<_> = words.take(WORDS).map(|word| vec![word]).collect();
        (!words.is_empty()).then_some(Self(words))
    }

    /// All of them must be there.
    fn all(&self) -> String {
        let words: Vec<String> = self.0.iter().map(|word| any(word)).collect();
        words.join(" AND ")
    }
}

/// What any note has that has one of these, in the language of the index: each in quotation marks, which
/// make it a word whatever it holds.
fn any(words: &[String]) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
    if words.len() == 1 { words.concat() } else { format!("({})", words.join(" OR ")) }
}

/// One word, or several that stand together. None where there is no letter and no digit in it. A
/// character of private use is no letter of any word: the marks of the index are made of them.
fn phrase(text: &str) -> Option<String> {
    let kept = |letter: &char| {
        *letter != '"' && !letter.is_control() && !('\u{e000}'..='\u{f8ff}').contains(letter)
    };
    let text: String = text.chars().filter(kept).take(LETTERS).collect();
    text.chars().any(char::is_alphanumeric).then_some(text)
}
