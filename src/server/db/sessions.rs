//! Sessions: who is signed in.

use super::{Database, Error};
use crate::server::auth::{MemberId, Rights, SignedIn, TokenHash};
use crate::server::clock::UnixSeconds;

/// A session nobody used for so long is over: a phone left in a drawer.
pub const IDLE: UnixSeconds = 14 * 24 * 60 * 60;
/// A session is over after so long, used or not.
pub const LONGEST: UnixSeconds = 30 * 24 * 60 * 60;
/// The time of last use is written this often at most, so that reading costs no write.
const SEEN_EVERY: UnixSeconds = 60 * 60;

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
             member.is_secretary, member.totp_secret IS NOT NULL AS "has_second_factor!: bool"
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
        let mut transaction = database.write().await?;
        sqlx::query!(
            "UPDATE session SET seen_at = ? WHERE token_hash = ? AND seen_at < ?",
            now,
            token,
            now
        )
        .execute(&mut *transaction)
        .await?;
        transaction.commit().await?;
    }
    Ok(Some(SignedIn {
        id: MemberId(row.id),
        name: row.name,
        rights: Rights {
            moderator: row.is_moderator != 0,
            inspector: row.is_inspector != 0,
            secretary: row.is_secretary != 0,
        },
        session: row.number,
        proved_at,
        has_second_factor: row.has_second_factor,
    }))
}
