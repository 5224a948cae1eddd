//! The slips that nobody used: what the secretary sees of those that may still be used, and making one void; and of
//! those that ran out, and putting one away.
//!
//! A slip is named by its mark: the token is nowhere, and its hash stays in the database.

use super::{Database, Error, acts};
use crate::rules::auth::{Rights, SignedIn, TokenHash};
use crate::rules::clock::UnixSeconds;

/// A slip that nobody used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenSlip {
    /// What it is called: see [`TokenHash::mark`].
    pub mark: String,
    /// What it is good for.
    pub lets: Lets,
    /// Who made it; none where the program did, or the maker has left.
    pub made_by: Option<String>,
    /// Until when it may be used, or might have been.
    pub ends_at: UnixSeconds,
}

/// What a slip lets its bearer do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lets {
    /// Join.
    Join {
        /// Who it is for, as the maker wrote it; may be empty.
        meant_for: String,
        /// What the new member may do.
        rights: Rights,
    },
    /// Choose a new password.
    Reset {
        /// The name of whoever forgot theirs.
        name: String,
        /// Whether it is a code that is read out.
        is_read_out: bool,
    },
}

/// Every open slip, the one that ends first at the top.
///
/// # Errors
/// The database cannot be read.
pub async fn all(database: &Database, now: UnixSeconds) -> Result<Vec<OpenSlip>, Error> {
    unused(database, now, false).await
}

/// Those of members' that ran out unused, until they are put away or forgotten: whoever each was for did not come.
///
/// # Errors
/// The database cannot be read.
pub async fn run_out(database: &Database, now: UnixSeconds) -> Result<Vec<OpenSlip>, Error> {
    unused(database, now, true).await
}

async fn unused(
    database: &Database,
    now: UnixSeconds,
    has_run_out: bool,
) -> Result<Vec<OpenSlip>, Error> {
    let rows = sqlx::query!(
        r#"SELECT slip.token_hash, slip.is_moderator, slip.is_inspector, slip.is_secretary,
             slip.meant_for, slip.ends_at,
             slip.code_hash IS NOT NULL AS "is_read_out!: bool", member.name AS "name?: String", maker.name AS "made_by?: String"
           FROM slip
           LEFT JOIN member ON member.id = slip.member_id
           LEFT JOIN member AS maker ON maker.id = slip.made_by
           WHERE slip.used_at IS NULL AND (slip.ends_at <= ?1) = ?2 AND (NOT ?2 OR slip.made_by IS NOT NULL)
           ORDER BY slip.ends_at, slip.token_hash"#,
        now,
        has_run_out
    )
    .fetch_all(&database.readers)
    .await?;
    let open = rows.into_iter().filter_map(|row| {
        let rights = super::people::rights(row.is_moderator, row.is_inspector, row.is_secretary);
        let lets = match row.name {
            Some(name) => Lets::Reset { name, is_read_out: row.is_read_out },
            None => Lets::Join { meant_for: row.meant_for, rights },
        };
        let mark = TokenHash::kept(&row.token_hash)?.mark();
        Some(OpenSlip { mark, lets, made_by: row.made_by, ends_at: row.ends_at })
    });
    Ok(open.collect())
}

/// Makes an open slip void: its link answers as one that was used. False where no open slip has this
/// mark, because it was used or ended meanwhile, or is void already.
///
/// # Errors
/// The database cannot be written.
pub async fn make_void(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    mark: &str,
) -> Result<bool, Error> {
    delete(database, now, by, (mark, false)).await
}

/// Puts a slip away that ran out unused. False where none has this mark.
///
/// # Errors
/// The database cannot be written.
pub async fn put_away(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    mark: &str,
) -> Result<bool, Error> {
    delete(database, now, by, (mark, true)).await
}

async fn delete(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    (mark, has_run_out): (&str, bool),
) -> Result<bool, Error> {
    let mut transaction = database.write().await?;
    let unused = sqlx::query_scalar!(
        "SELECT token_hash FROM slip WHERE used_at IS NULL AND (ends_at <= ?1) = ?2",
        now,
        has_run_out
    )
    .fetch_all(&mut *transaction)
    .await?;
    let named = |hash: &Vec<u8>| TokenHash::kept(hash).is_some_and(|hash| hash.mark() == mark);
    let Some(token) = unused.into_iter().find(named) else { return Ok(false) };
    let slip = sqlx::query!(
        r#"DELETE FROM slip WHERE token_hash = ?
           RETURNING member_id, is_moderator, is_inspector, is_secretary, meant_for"#,
        token
    )
    .fetch_one(&mut *transaction)
    .await?;
    let (subject, detail) = match slip.member_id {
        Some(member) => (format!("member/{member}"), "for a new password".to_owned()),
        None => {
            let rights =
                super::people::rights(slip.is_moderator, slip.is_inspector, slip.is_secretary);
            let rights = super::people::in_words(rights);
            (String::new(), format!("to join: {rights}; {}", slip.meant_for))
        }
    };
    let by = Some((by.id, by.name.as_str()));
    let what = if has_run_out { "slip-put-away" } else { "slip-made-void" };
    acts::record(&mut transaction, now, by, what, &subject, &detail).await?;
    database.commit(transaction).await?;
    Ok(true)
}
