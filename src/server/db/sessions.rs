//! Sessions: who is signed in.

use sqlx::{Sqlite, Transaction};

use super::notes::open::{self, Whose};
use super::{Database, Error};
use crate::rules::auth::{MemberId, Rights, SignedIn, TokenHash};
use crate::rules::clock::UnixSeconds;

/// A session nobody used for so long is over: a phone left in a drawer.
pub const IDLE: UnixSeconds = 14 * 24 * 60 * 60;
/// A session is over after so long, used or not.
pub const LONGEST: UnixSeconds = 30 * 24 * 60 * 60;
/// The time of last use is written this often at most, so that reading costs no write.
const SEEN_EVERY: UnixSeconds = 60 * 60;

/// The most sessions of one member: every device of a household, and a few that were forgotten.
pub const MOST: i64 = 20;
/// How long a session waits for its code after the password was right.
pub const CODE_WAITS: UnixSeconds = 10 * 60;
/// Characters kept of what a browser says of itself.
const AGENT: usize = 200;

/// A session about to begin.
#[derive(Clone, Copy, Debug)]
pub struct New<'a> {
    /// The hash of its token.
    pub token: TokenHash,
    /// The browser in its own words.
    pub agent: &'a str,
}

/// A session as its member sees it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Open {
    /// Its number.
    pub number: i64,
    /// When it began.
    pub made_at: UnixSeconds,
    /// When it was last used, to the hour.
    pub seen_at: UnixSeconds,
    /// When the member last gave the password, and the code where one is due.
    pub proved_at: UnixSeconds,
    /// The browser in its own words.
    pub agent: String,
}

/// The member of this session, if it stands and every factor was given.
///
/// # Errors
/// The database cannot be read.
pub async fn find(
    database: &Database,
    token: TokenHash,
    now: UnixSeconds,
) -> Result<Option<SignedIn>, Error> {
    let token = token.bytes();
    let (idle_since, made_since) = (now - IDLE, now - LONGEST);
    let row = sqlx::query!(
        r#"SELECT session.number AS "number!", session.seen_at, session.proved_at,
             member.id AS "id!", member.name, member.is_moderator, member.is_inspector,
             member.is_secretary, member.totp_secret IS NOT NULL AS "has_second_factor!: bool",
             member.news_read_at
           FROM session JOIN member ON member.id = session.member_id
           WHERE session.token_hash = ? AND session.seen_at > ? AND session.made_at > ?
             AND member.stopped_at IS NULL"#,
        token,
        idle_since,
        made_since
    )
    .fetch_optional(&database.readers)
    .await?;
    let Some(row) = row else { return Ok(None) };
    let Some(proved_at) = row.proved_at else { return Ok(None) };
    if now - row.seen_at > SEEN_EVERY {
        match seen(database, token, now).await {
            // What can be read is read, also while nothing can be written.
            Err(error) if error.is_passing() => {
                tracing::warn!(%error, "the last use of a session could not be written");
            }
            written => written?,
        }
    }
    let rights = Rights {
        moderator: row.is_moderator != 0,
        inspector: row.is_inspector != 0,
        secretary: row.is_secretary != 0,
    };
    let whose = Whose { id: MemberId(row.id), rights, news_read_at: row.news_read_at };
    Ok(Some(SignedIn {
        id: MemberId(row.id),
        name: row.name,
        rights,
        open: open::of(database, now, whose).await?,
        session: row.number,
        proved_at,
        has_second_factor: row.has_second_factor,
    }))
}

/// Writes when a session was last used.
async fn seen(database: &Database, token: &[u8], now: UnixSeconds) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    sqlx::query!(
        "UPDATE session SET seen_at = ? WHERE token_hash = ? AND seen_at < ?",
        now,
        token,
        now
    )
    .execute(&mut *transaction)
    .await?;
    Ok(database.commit(transaction).await?)
}

/// The member whose session waits for a code, if it waits still.
///
/// # Errors
/// The database cannot be read.
pub async fn waiting_for_code(
    database: &Database,
    token: TokenHash,
    now: UnixSeconds,
) -> Result<Option<MemberId>, Error> {
    let (token, since) = (token.bytes(), now - CODE_WAITS);
    let id = sqlx::query_scalar!(
        "SELECT member_id FROM session JOIN member ON member.id = session.member_id
         WHERE token_hash = ? AND proved_at IS NULL AND made_at > ? AND stopped_at IS NULL",
        token,
        since
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(id.map(MemberId))
}

/// The sessions of a member that stand, the one used last first.
///
/// # Errors
/// The database cannot be read.
pub async fn of_member(
    database: &Database,
    MemberId(member): MemberId,
    now: UnixSeconds,
) -> Result<Vec<Open>, Error> {
    let (idle_since, made_since) = (now - IDLE, now - LONGEST);
    let open = sqlx::query_as!(
        Open,
        r#"SELECT number, made_at, seen_at, proved_at AS "proved_at!", agent FROM session
           WHERE member_id = ? AND proved_at IS NOT NULL AND seen_at > ? AND made_at > ?
           ORDER BY seen_at DESC, number DESC"#,
        member,
        idle_since,
        made_since
    )
    .fetch_all(&database.readers)
    .await?;
    Ok(open)
}

/// Begins a session; `proved_at` is none while a code is due.
pub(super) async fn insert(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    MemberId(member): MemberId,
    session: New<'_>,
    proved_at: Option<UnixSeconds>,
) -> Result<(), Error> {
    let token = session.token.bytes();
    let agent: String = session.agent.chars().take(AGENT).collect();
    sqlx::query!(
        "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, proved_at, agent)
         VALUES (?, (SELECT COALESCE(MAX(number), 0) + 1 FROM session), ?, ?, ?, ?, ?)",
        token,
        member,
        now,
        now,
        proved_at,
        agent
    )
    .execute(&mut **transaction)
    .await?;
    end_oldest(transaction, MemberId(member)).await
}

/// Ends the oldest of a member's sessions past what one may have, of those that wait for a code and of
/// those that stand each for themselves: who knows a password and has no code ends nobody's session.
pub(super) async fn end_oldest(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<(), Error> {
    sqlx::query!(
        "DELETE FROM session WHERE member_id = ?1 AND number IN (
           SELECT number FROM (
             SELECT number, row_number() OVER (
               PARTITION BY proved_at IS NULL ORDER BY number DESC) AS place
             FROM session WHERE member_id = ?1)
           WHERE place > ?2)",
        member,
        MOST
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Ends the session with this token, whoever's it is.
pub(super) async fn end_by_token(
    transaction: &mut Transaction<'_, Sqlite>,
    token: TokenHash,
) -> Result<(), Error> {
    let token = token.bytes();
    sqlx::query!("DELETE FROM session WHERE token_hash = ?", token)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

/// Ends every session of a member.
pub(super) async fn end_all(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM session WHERE member_id = ?", member)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

/// Ends one session of this member, by its number; another's is left alone.
///
/// # Errors
/// The database cannot be written.
pub async fn end(database: &Database, member: &SignedIn, number: i64) -> Result<(), Error> {
    let id = member.id.0;
    let mut transaction = database.write().await?;
    sqlx::query!("DELETE FROM session WHERE member_id = ? AND number = ?", id, number)
        .execute(&mut *transaction)
        .await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Ends every session of this member but the one at hand.
///
/// # Errors
/// The database cannot be written.
pub async fn end_others(database: &Database, member: &SignedIn) -> Result<(), Error> {
    let (id, number) = (member.id.0, member.session);
    let mut transaction = database.write().await?;
    sqlx::query!("DELETE FROM session WHERE member_id = ? AND number <> ?", id, number)
        .execute(&mut *transaction)
        .await?;
    database.commit(transaction).await?;
    Ok(())
}

/// The member has given the password, and the code where one is due, once more. The session goes on
/// under a new token: whoever has the old one is out.
///
/// # Errors
/// The database cannot be written.
pub async fn prove(
    database: &Database,
    member: &SignedIn,
    now: UnixSeconds,
    token: TokenHash,
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    rename(&mut transaction, member, token, now).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Gives the session at hand a new token, and with it this time of its proof.
pub(super) async fn rename(
    transaction: &mut Transaction<'_, Sqlite>,
    member: &SignedIn,
    token: TokenHash,
    proved_at: UnixSeconds,
) -> Result<(), Error> {
    let (id, number, token) = (member.id.0, member.session, token.bytes());
    sqlx::query!(
        "UPDATE session SET token_hash = ?, proved_at = ?
         WHERE member_id = ? AND number = ? AND proved_at IS NOT NULL",
        token,
        proved_at,
        id,
        number
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Drops the sessions that are over.
///
/// # Errors
/// The database cannot be written.
pub async fn forget_old(database: &Database, now: UnixSeconds) -> Result<(), Error> {
    let (idle_since, made_since, waiting_since) = (now - IDLE, now - LONGEST, now - CODE_WAITS);
    let mut transaction = database.write().await?;
    sqlx::query!(
        "DELETE FROM session WHERE seen_at <= ? OR made_at <= ? OR (proved_at IS NULL AND made_at <= ?)",
        idle_since,
        made_since,
        waiting_since
    )
    .execute(&mut *transaction)
    .await?;
    database.commit(transaction).await?;
    Ok(())
}
