//! What became of a member's notes and remarks since they last said that they had read it.

use crate::db::{Database, Error};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::news::NewsKind;
use crate::rules::notes::open::MOST_NEWS;

/// Something that concerns a member.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Concern {
    /// What it is.
    pub kind: NewsKind,
    /// The number of what it is about; with the kind its name for good.
    pub number: i64,
    /// The note.
    pub note: i64,
    /// What that is called.
    pub title: String,
    /// A reason, a correction or a remark; of a verdict in what and at what size.
    pub text: String,
    /// When.
    pub at: UnixSeconds,
}

/// A row of the view `concern`.
pub(in crate::db) struct Row {
    pub(in crate::db) kind: String,
    pub(in crate::db) number: i64,
    pub(in crate::db) note: i64,
    pub(in crate::db) title: String,
    pub(in crate::db) text: String,
    pub(in crate::db) at: UnixSeconds,
}

/// What they say; an error where the view has a word that the rules do not know.
pub(in crate::db) fn concerns(rows: Vec<Row>) -> Result<Vec<Concern>, Error> {
    let concern = |Row { kind, number, note, title, text, at }: Row| {
        let unknown =
            || sqlx::Error::Decode(format!("there is no news that is called {kind}").into());
        let kind = NewsKind::read(&kind).ok_or_else(unknown)?;
        Ok(Concern { kind, number, note, title, text, at })
    };
    rows.into_iter().map(concern).collect()
}

/// What was told: up to when, and how much since the last time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// When the newest of it was.
    pub until: UnixSeconds,
    /// How much it was.
    pub count: i64,
}

/// What is new to a member, the oldest first. What they are asked to change is none of it: that stands with the note
/// until it is changed.
///
/// # Errors
/// The database cannot be read.
pub async fn of(database: &Database, MemberId(id): MemberId) -> Result<Vec<Concern>, Error> {
    let read_at = sqlx::query_scalar!("SELECT news_read_at FROM member WHERE id = ?", id);
    let Some(read_at) = read_at.fetch_optional(&database.readers).await? else {
        return Ok(Vec::new());
    };
    let asked = NewsKind::Change.word();
    let rows = sqlx::query_as!(
        Row,
        r#"SELECT kind AS "kind!: String", number AS "number!: i64", note_id AS "note!: i64",
             title AS "title!: String", text AS "text!: String", at AS "at!: i64"
           FROM concern WHERE member_id = ?1 AND at > ?2 AND kind <> ?3 AND by_id IS NOT ?1
           ORDER BY at, kind, number LIMIT ?4"#,
        id,
        read_at,
        asked,
        MOST_NEWS
    );
    concerns(rows.fetch_all(&database.readers).await?)
}

/// Keeps that a member has read what was told. False where it was more by the time of the last of it: then nothing is
/// kept. Less may be left of it, where something was taken back or undone since.
///
/// # Errors
/// The database cannot be written.
pub async fn have_read(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    told: Told,
) -> Result<bool, Error> {
    let (MemberId(id), until) = (by.id, told.until.min(now));
    let mut transaction = database.write().await?;
    let read_at = sqlx::query_scalar!("SELECT news_read_at FROM member WHERE id = ?", id)
        .fetch_one(&mut *transaction)
        .await?;
    if read_at >= until {
        return Ok(true);
    }
    let asked = NewsKind::Change.word();
    let count = sqlx::query_scalar!(
        r#"SELECT count(*) AS "count!: i64" FROM concern
           WHERE member_id = ?1 AND at > ?2 AND at <= ?3 AND kind <> ?4 AND by_id IS NOT ?1"#,
        id,
        read_at,
        until,
        asked
    )
    .fetch_one(&mut *transaction)
    .await?;
    let read_at = match count {
        count if count == told.count => until,
        // As much was told as is at once, and its last second may go on: that second is told again, unless it is all.
        _ if told.count >= MOST_NEWS => until.saturating_sub(1).max(read_at + 1),
        count if count < told.count => until,
        _ => return Ok(false),
    };
    sqlx::query!("UPDATE member SET news_read_at = ? WHERE id = ?", read_at, id)
        .execute(&mut *transaction)
        .await?;
    database.commit(transaction).await?;
    Ok(true)
}
