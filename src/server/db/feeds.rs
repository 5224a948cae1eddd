//! The feed of one member: its token, of which only the hash is kept, and what stands in it.

use sqlx::{Sqlite, Transaction};

use super::notes::news::{self, Concern, Row};
use super::{Database, Error, acts};
use crate::rules::auth::{MemberId, Rights, SignedIn, TokenHash};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::news::NewsKind;

/// The most entries of a feed.
const MOST: i64 = 50;

/// Whose feed it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Owner {
    /// Who.
    pub id: MemberId,
    /// What they may do.
    pub rights: Rights,
    /// Whether a second factor is set up.
    pub has_second_factor: bool,
    /// Up to when they have read what is new.
    pub news_read_at: UnixSeconds,
}

/// Gives the member's feed this token in the place of any other.
///
/// # Errors
/// The database cannot be written.
pub async fn set(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    token: TokenHash,
) -> Result<(), Error> {
    let (MemberId(id), hash) = (by.id, token.bytes());
    let mut transaction = database.write().await?;
    sqlx::query!(
        "INSERT INTO feed (member_id, token_hash, made_at) VALUES (?, ?, ?)
         ON CONFLICT (member_id) DO UPDATE SET token_hash = excluded.token_hash, made_at = excluded.made_at",
        id,
        hash,
        now
    )
    .execute(&mut *transaction)
    .await?;
    let who = Some((by.id, by.name.as_str()));
    acts::record(&mut transaction, now, who, "feed-made", &format!("member/{id}"), "").await?;
    Ok(database.commit(transaction).await?)
}

/// Makes the member's feed void.
///
/// # Errors
/// The database cannot be written.
pub async fn make_void(database: &Database, now: UnixSeconds, by: &SignedIn) -> Result<(), Error> {
    let MemberId(id) = by.id;
    let mut transaction = database.write().await?;
    let gone =
        sqlx::query!("DELETE FROM feed WHERE member_id = ?", id).execute(&mut *transaction).await?;
    if gone.rows_affected() > 0 {
        let who = Some((by.id, by.name.as_str()));
        acts::record(&mut transaction, now, who, "feed-void", &format!("member/{id}"), "").await?;
    }
    Ok(database.commit(transaction).await?)
}

/// The feed of a member has no address any more: whoever had their password may have made it.
pub(super) async fn forget(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(id): MemberId,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM feed WHERE member_id = ?", id).execute(&mut **transaction).await?;
    Ok(())
}

/// When the member's feed was given its token, if it has one.
///
/// # Errors
/// The database cannot be read.
pub async fn made_at(
    database: &Database,
    MemberId(id): MemberId,
) -> Result<Option<UnixSeconds>, Error> {
    let made = sqlx::query_scalar!("SELECT made_at FROM feed WHERE member_id = ?", id);
    Ok(made.fetch_optional(&database.readers).await?)
}

/// Whose feed has this token; nobody's where they are stopped.
///
/// # Errors
/// The database cannot be read.
pub async fn owner(database: &Database, token: TokenHash) -> Result<Option<Owner>, Error> {
    let hash = token.bytes();
    let row = sqlx::query!(
        r#"SELECT member.id AS "id!: i64", is_moderator AS "moderator: bool",
             is_inspector AS "inspector: bool", is_secretary AS "secretary: bool",
             totp_secret IS NOT NULL AS "has_second_factor!: bool", news_read_at
           FROM feed JOIN member ON member.id = feed.member_id
           WHERE feed.token_hash = ? AND member.stopped_at IS NULL"#,
        hash
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.map(|row| Owner {
        id: MemberId(row.id),
        rights: Rights {
            moderator: row.moderator,
            inspector: row.inspector,
            secretary: row.secretary,
        },
        has_second_factor: row.has_second_factor,
        news_read_at: row.news_read_at,
    }))
}

/// What concerns a member, newest first; but for what others found of their notes, which their pages count.
///
/// # Errors
/// The database cannot be read.
pub async fn concerns(database: &Database, MemberId(id): MemberId) -> Result<Vec<Concern>, Error> {
    let found = NewsKind::ALL.iter().filter(|kind| kind.is_found());
    let found = serde_json::json!(found.map(|kind| kind.word()).collect::<Vec<_>>()).to_string();
    let rows = sqlx::query_as!(
        Row,
        r#"SELECT kind AS "kind!: String", number AS "number!: i64", note_id AS "note!: i64",
             title AS "title!: String", text AS "text!: String", at AS "at!: i64"
           FROM concern
           WHERE member_id = ?1 AND kind NOT IN (SELECT value FROM json_each(?3))
           ORDER BY at DESC, number DESC LIMIT ?2"#,
        id,
        MOST,
        found
    );
    news::concerns(rows.fetch_all(&database.readers).await?)
}
