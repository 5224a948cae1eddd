//! The log: who did what to whom and when, written in the transaction of the act itself.

use sqlx::{Sqlite, Transaction};

use super::{Database, Error};
use crate::rules::auth::MemberId;
use crate::rules::clock::UnixSeconds;

/// How many a page shows.
pub const PAGE: i64 = 50;
/// How long the record is kept.
pub const KEPT: UnixSeconds = 2 * 365 * 24 * 60 * 60;
/// The most characters of a detail.
const LONGEST: usize = 2000;

/// One act.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Act {
    /// Its number.
    pub id: i64,
    /// When.
    pub at: UnixSeconds,
    /// By whom; empty where nobody was signed in.
    pub name: String,
    /// What was done.
    pub what: String,
    /// To what.
    pub subject: String,
    /// The rest.
    pub detail: String,
}

/// Writes an act into the record. `what` is a word of ours with hyphens, `subject` such as `member/3`.
///
/// # Errors
/// The database cannot be written.
pub(in crate::db) async fn record(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: Option<(MemberId, &str)>,
    what: &'static str,
    subject: &str,
    detail: &str,
) -> Result<(), Error> {
    let (id, name) = by.map_or((None, ""), |(MemberId(id), name)| (Some(id), name));
    let detail: String = detail.chars().take(LONGEST).collect();
    sqlx::query!(
        "INSERT INTO act (at, member_id, member_name, what, subject, detail) VALUES (?, ?, ?, ?, ?, ?)",
        now,
        id,
        name,
        what,
        subject,
        detail
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// A page of the record, newest first: the acts before this number, or the newest of all.
///
/// # Errors
/// The database cannot be read.
pub async fn before(database: &Database, id: Option<i64>) -> Result<Vec<Act>, Error> {
    let id = id.unwrap_or(i64::MAX);
    let acts = sqlx::query_as!(
        Act,
        "SELECT id, at, member_name AS name, what, subject, detail FROM act
         WHERE id < ? ORDER BY id DESC LIMIT ?",
        id,
        PAGE
    )
    .fetch_all(&database.readers)
    .await?;
    Ok(acts)
}

/// When the newest act was done, if any was.
///
/// # Errors
/// The database cannot be read.
pub async fn newest(database: &Database) -> Result<Option<UnixSeconds>, Error> {
    let at = sqlx::query_scalar!(r#"SELECT max(at) AS "at: i64" FROM act"#)
        .fetch_one(&database.readers)
        .await?;
    Ok(at)
}

/// Drops what is older than the record is kept.
///
/// # Errors
/// The database cannot be written.
pub async fn forget_old(database: &Database, now: UnixSeconds) -> Result<u64, Error> {
    let before = now - KEPT;
    let mut transaction = database.write().await?;
    let dropped = sqlx::query!("DELETE FROM act WHERE at < ?", before)
        .execute(&mut *transaction)
        .await?
        .rows_affected();
    database.commit(transaction).await?;
    Ok(dropped)
}
