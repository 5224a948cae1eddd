//! The index of the notes' words, asked for what the search needs.

use sqlx::{Sqlite, Transaction};

use crate::db::notes::Error;

/// A word that more notes have says too little of them to rank by: the index would count it in each.
pub(super) const COMMON: i64 = 1000;
/// The most words that a begun word is taken for.
pub(super) const BEGUN: i64 = 60;

/// The notes as they stand at one moment.
pub(super) type Reading<'a> = Transaction<'a, Sqlite>;

/// The newest notes that the index finds by this.
pub(super) async fn newest(
    reading: &mut Reading<'_>,
    found_by: &str,
    most: i64,
) -> Result<Vec<i64>, Error> {
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
pub(super) async fn since(
    reading: &mut Reading<'_>,
    found_by: &str,
    oldest: i64,
) -> Result<Vec<i64>, Error> {
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

/// Whether more notes than are few are found by this.
pub(super) async fn is_common(reading: &mut Reading<'_>, found_by: &str) -> Result<bool, Error> {
    has_more(reading, found_by, COMMON).await
}

/// Whether more notes than so many are found by this.
pub(super) async fn has_more(
    reading: &mut Reading<'_>,
    found_by: &str,
    than: i64,
) -> Result<bool, Error> {
    let enough = than + 1;
    let count = sqlx::query_scalar!(
        r#"SELECT count(*) AS "count!: i64"
           FROM (SELECT rowid FROM note_text WHERE note_text MATCH ? LIMIT ?)"#,
        found_by,
        enough
    )
    .fetch_one(&mut **reading)
    .await?;
    Ok(count > than)
}

/// The words of the index that begin so, in their order. From each it is a leap to the next: asked
/// for all at once, the index would go through every place where any of them stands.
pub(super) async fn beginning_with(
    reading: &mut Reading<'_>,
    beginning: &str,
    most: i64,
) -> Result<Vec<String>, Error> {
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
    .bind(most)
    .fetch_all(&mut **reading)
    .await?)
}
