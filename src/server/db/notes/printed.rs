//! The notes that are put on paper.

use tokio::task::spawn_blocking;

use super::Error;
use super::lists::{Listed, read};
use crate::db::Database;
use crate::rules::clock::UnixSeconds;

/// The notes whose shown wording was passed between these moments, the earliest first, and how many there are.
///
/// # Errors
/// The database cannot be read.
pub async fn of_span(
    database: &Database,
    (from, until): (UnixSeconds, UnixSeconds),
    most: i64,
) -> Result<(Vec<Listed>, i64), Error> {
    let rows = sqlx::query!(
        r#"SELECT shown_note.note AS "note!: String", count(*) OVER () AS "count!: i64"
           FROM note JOIN shown_note ON shown_note.id = note.id
           WHERE note.shown_at >= ?1 AND note.shown_at < ?2 ORDER BY note.shown_at, note.id LIMIT ?3"#,
        from,
        until,
        most
    )
    .fetch_all(&database.readers)
    .await?;
    let count = rows.first().map_or(0, |row| row.count);
    listed(rows.into_iter().map(|row| row.note).collect(), count).await
}

/// The notes that most members found to work, and how many anybody did.
///
/// # Errors
/// The database cannot be read.
pub async fn best(database: &Database, most: i64) -> Result<(Vec<Listed>, i64), Error> {
    let rows = sqlx::query!(
        r#"SELECT shown_note.note AS "note!: String", count(*) OVER () AS "count!: i64"
           FROM (SELECT version_id, count(*) AS worked FROM verdict
                 WHERE worked = 1 AND NOT is_elsewhere GROUP BY version_id)
             AS confirmed
           JOIN shown_note ON shown_note.version_id = confirmed.version_id
           ORDER BY confirmed.worked DESC, shown_note.id DESC LIMIT ?1"#,
        most
    )
    .fetch_all(&database.readers)
    .await?;
    let count = rows.first().map_or(0, |row| row.count);
    listed(rows.into_iter().map(|row| row.note).collect(), count).await
}

async fn listed(rows: Vec<String>, count: i64) -> Result<(Vec<Listed>, i64), Error> {
    let listed = spawn_blocking(move || rows.iter().filter_map(|row| read(row)).collect());
    Ok((listed.await.map_err(|error| sqlx::Error::Io(error.into()))?, count))
}
