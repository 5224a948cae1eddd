//! Shown notes by their words: best first, with the words in the text around them.
//!
//! Accents and capitals do not count, and the last word may be only begun. What was typed is taken as
//! words and never as the language of the index.
//!
//! Up to [`FEW`] notes are ranked by the index (bm25: a word in the title counts most, a rare word more
//! than a common one). Where more have the words, these say too little to rank by: of the newest,
//! those with the words in their title come first. What a filter asks stands in the index as a mark
//! beside the words. So a search takes hardly longer as the club writes more.

use std::collections::{HashMap, HashSet};

use icu_normalizer::DecomposingNormalizerBorrowed as DecomposingNormalizer;

use super::Error;
use super::lists::{Filter, Listed, read};
use crate::db::Database;

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
    let Some(mut words) = Words::read(typed) else { return Ok(Vec::new()) };
    let mut ids = best(database, &words, filter, most).await?;
    if i64::try_from(ids.len()).unwrap_or(i64::MAX) < most
        && let Some(begun) = begun(database, typed, &words).await?
    {
        words = begun;
        ids = best(database, &words, filter, most).await?;
    }
    if ids.is_empty() {
        return Ok(Vec::new());
    }
    let (words, wanted) = (words.all(), serde_json::to_string(&ids).unwrap_or_default());
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
    words: &Words,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let (words_of_all, marks) = (words.all(), marks(filter));
    let newest = newest(database, &format!("({words_of_all}){marks}")).await?;
    let mut ids = Vec::new();
    if newest.len() <= usize::try_from(FEW).unwrap_or_default() {
        ids = ranked(database, words, &newest).await?;
    }
    if let Some(oldest) = newest.last()
        && ids.is_empty()
    {
        // Only among these: the whole index would be looked through for a title that nobody wrote.
        let title = format!("({{title}} : ({words_of_all})){marks}");
        ids = since(database, &title, *oldest).await?;
    }
    let named: HashSet<i64> = ids.iter().copied().collect();
    ids.extend(newest.into_iter().filter(|id| !named.contains(id)));
    ids.truncate(usize::try_from(most).unwrap_or_default());
    Ok(ids)
}

/// The newest notes that the index finds by this, and one more than are few.
async fn newest(database: &Database, found_by: &str) -> Result<Vec<i64>, Error> {
    let most = FEW + 1;
    Ok(sqlx::query_scalar!(
        r#"SELECT rowid AS "id!: i64" FROM note_text WHERE note_text MATCH ?
           ORDER BY rowid DESC LIMIT ?"#,
        found_by,
        most
    )
    .fetch_all(&database.readers)
    .await?)
}

/// The notes from this number on that the index finds by this, newest first. The index is read
/// forwards: backwards it would go past the number until it finds another.
async fn since(database: &Database, found_by: &str, oldest: i64) -> Result<Vec<i64>, Error> {
    let mut ids = sqlx::query_scalar!(
        r#"SELECT rowid AS "id!: i64" FROM note_text WHERE note_text MATCH ? AND rowid >= ?"#,
        found_by,
        oldest
    )
    .fetch_all(&database.readers)
    .await?;
    ids.reverse();
    Ok(ids)
}

/// These notes as the index ranks them by the words that not too many notes have; none where every
/// word is common.
async fn ranked(database: &Database, words: &Words, ids: &[i64]) -> Result<Vec<i64>, Error> {
    let mut rare = Vec::new();
    for word in &words.0 {
        if !is_common(database, word).await? {
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
    .fetch_all(&database.readers)
    .await?)
}

async fn is_common(database: &Database, word: &str) -> Result<bool, Error> {
    let enough = COMMON + 1;
    let count = sqlx::query_scalar!(
        r#"SELECT count(*) AS "count!: i64"
           FROM (SELECT rowid FROM note_text WHERE note_text MATCH ? LIMIT ?)"#,
        word,
        enough
    )
    .fetch_one(&database.readers)
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
async fn begun(database: &Database, typed: &str, words: &Words) -> Result<Option<Words>, Error> {
    let last = folded(typed.split_whitespace().next_back().unwrap_or_default());
    // One letter begins half the words there are.
    if last.chars().count() < 2 || !last.chars().all(char::is_alphanumeric) {
        return Ok(None);
    }
    let found = beginning_with(database, &last).await?;
    let found: Vec<String> = found.iter().filter_map(|word| phrase(word)).collect();
    if found.is_empty() {
        return Ok(None);
    }
    let mut words = words.0.clone();
    words.pop();
    words.push(format!("({})", found.join(" OR ")));
    Ok(Some(Words(words)))
}

/// The words of the index that begin so, in their order. From each it is a leap to the next: asked
/// for all at once, the index would go through every place where any of them stands.
async fn beginning_with(database: &Database, beginning: &str) -> Result<Vec<String>, Error> {
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
    .fetch_all(&database.readers)
    .await?)
}

/// Small letters without accents, as the index holds words.
fn folded(word: &str) -> String {
    let apart = DecomposingNormalizer::new_nfd().normalize(word);
    let letters = apart.chars().filter(|letter| !('\u{300}'..='\u{36f}').contains(letter));
    letters.flat_map(char::to_lowercase).collect()
}

/// What was typed, in the language of the index: each word in quotation marks, which make it a word
/// whatever it holds.
struct Words(Vec<String>);

impl Words {
    /// None where no word was typed.
    fn read(typed: &str) -> Option<Self> {
        let words: Vec<String> = typed.split_whitespace().filter_map(phrase).take(WORDS).collect();
        (!words.is_empty()).then_some(Self(words))
    }

    /// All of them must be there.
    fn all(&self) -> String {
        self.0.join(" AND ")
    }
}

/// One word, or several that stand together. None where there is no letter and no digit in it. A
/// character of private use is no letter of any word: the marks of the index are made of them.
fn phrase(text: &str) -> Option<String> {
    let kept = |letter: &char| {
        *letter != '"' && !letter.is_control() && !('\u{e000}'..='\u{f8ff}').contains(letter)
    };
    let text: String = text.chars().filter(kept).take(LETTERS).collect();
    text.chars().any(char::is_alphanumeric).then(|| format!("\"{text}\""))
}
