//! Slips: one-time links to join with, or to choose a new password with.

use sqlx::{Sqlite, Transaction};

use super::{Database, Error, acts, feeds, sessions};
use crate::rules::auth::{MemberId, Name, Rights, SignedIn, TokenHash};
use crate::rules::clock::UnixSeconds;

/// How long a slip to join stands: a fortnight, from one club night to the next but one.
pub const JOIN_LASTS: UnixSeconds = 14 * 24 * 60 * 60;
/// How long a printed slip for a new password stands: from one club night to the next.
pub const RESET_LASTS: UnixSeconds = 7 * 24 * 60 * 60;
/// How long a code for a new password stands that is read out.
pub const READ_OUT_LASTS: UnixSeconds = 60 * 60;
/// Whom the link that the server prints at its start is meant for.
const FIRST: &str = "the first secretary";

/// A slip to join, as it is found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joining {
    /// What the new member may do.
    pub rights: Rights,
    /// Who it is for, as the maker wrote it; may be empty.
    pub meant_for: String,
}

/// A slip for a new password, as it is found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resetting {
    /// Whose.
    pub member: MemberId,
    /// Their name.
    pub name: String,
}

/// What came of joining.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joined {
    /// A new member.
    Member(MemberId),
    /// The slip was used meanwhile, or is too old, or never was one.
    Spent,
    /// Another member has a name that looks the same.
    NameTaken,
}

/// Somebody about to join.
#[derive(Clone, Copy, Debug)]
pub struct Newcomer<'a> {
    /// Their name.
    pub name: &'a Name,
    /// Their password's hash.
    pub password_hash: &'a str,
    /// The session to begin.
    pub session: sessions::New<'a>,
}

/// Makes a slip to join; `by` is none where the program itself makes it.
///
/// # Errors
/// The database cannot be written.
pub async fn invite(
    database: &Database,
    now: UnixSeconds,
    by: Option<&SignedIn>,
    token: TokenHash,
    rights: Rights,
    meant_for: &str,
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    insert_join(&mut transaction, now, by, token, rights, meant_for).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Makes a slip to join as a member for each of these, or none.
///
/// # Errors
/// The database cannot be written.
pub async fn invite_all(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    slips: &[(TokenHash, &str)],
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    for (token, meant_for) in slips {
        let rights = Rights::default();
        insert_join(&mut transaction, now, Some(by), *token, rights, meant_for).await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Makes the slip that the first secretary joins with, if the club has no secretary. An earlier one
/// of the program's own that nobody used is void from now on.
///
/// # Errors
/// The database cannot be written.
pub async fn invite_first_secretary(
    database: &Database,
    now: UnixSeconds,
    token: TokenHash,
) -> Result<bool, Error> {
    let mut transaction = database.write().await?;
    if super::people::secretaries(&mut transaction).await? > 0 {
        return Ok(false);
    }
    sqlx::query!(
        "DELETE FROM slip WHERE purpose = 'join' AND is_secretary = 1 AND made_by IS NULL AND used_at IS NULL"
    )
    .execute(&mut *transaction)
    .await?;
    let rights = Rights { secretary: true, ..Rights::default() };
    insert_join(&mut transaction, now, None, token, rights, FIRST).await?;
    database.commit(transaction).await?;
    Ok(true)
}

async fn insert_join(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: Option<&SignedIn>,
    token: TokenHash,
    rights: Rights,
    meant_for: &str,
) -> Result<(), Error> {
    let ends_at = now + JOIN_LASTS;
    let made_by = by.map(|member| member.id.0);
    let token = token.bytes();
    sqlx::query!(
        "INSERT INTO slip (token_hash, purpose, is_moderator, is_inspector, is_secretary, meant_for,
           made_by, made_at, ends_at) VALUES (?, 'join', ?, ?, ?, ?, ?, ?, ?)",
        token,
        rights.moderator,
        rights.inspector,
        rights.secretary,
        meant_for,
        made_by,
        now,
        ends_at
    )
    .execute(&mut **transaction)
    .await?;
    let by = by.map(|member| (member.id, member.name.as_str()));
    let detail = format!("{}; {meant_for}", super::people::in_words(rights));
    acts::record(transaction, now, by, "slip-to-join", "", &detail).await
}

/// Makes a printed slip for a new password. Earlier ones of that member are void from now on; the
/// password itself stands until the slip is used. False where there is no such member.
///
/// # Errors
/// The database cannot be written.
pub async fn reset(
    database: &Database,
    now: UnixSeconds,
    by: Option<&SignedIn>,
    token: TokenHash,
    member: MemberId,
) -> Result<bool, Error> {
    insert_reset(database, now, by, (token, None), member).await
}

/// The same with a code to read out, by its hash. The token opens nothing until the code was given.
///
/// # Errors
/// The database cannot be written.
pub async fn reset_read_out(
    database: &Database,
    now: UnixSeconds,
    by: Option<&SignedIn>,
    (token, code_hash): (TokenHash, &str),
    member: MemberId,
) -> Result<bool, Error> {
    insert_reset(database, now, by, (token, Some(code_hash)), member).await
}

async fn insert_reset(
    database: &Database,
    now: UnixSeconds,
    by: Option<&SignedIn>,
    (token, code_hash): (TokenHash, Option<&str>),
    MemberId(member): MemberId,
) -> Result<bool, Error> {
    let mut transaction = database.write().await?;
    let known = sqlx::query_scalar!("SELECT id FROM member WHERE id = ?", member)
        .fetch_optional(&mut *transaction)
        .await?;
    if known.is_none() {
        return Ok(false);
    }
    sqlx::query!("DELETE FROM slip WHERE member_id = ? AND used_at IS NULL", member)
        .execute(&mut *transaction)
        .await?;
    let lasts = if code_hash.is_some() { READ_OUT_LASTS } else { RESET_LASTS };
    let (token, ends_at) = (token.bytes(), now + lasts);
    let made_by = by.map(|member| member.id.0);
    sqlx::query!(
        "INSERT INTO slip (token_hash, code_hash, purpose, member_id, made_by, made_at, ends_at)
         VALUES (?, ?, 'reset', ?, ?, ?, ?)",
        token,
        code_hash,
        member,
        made_by,
        now,
        ends_at
    )
    .execute(&mut *transaction)
    .await?;
    let by = by.map(|member| (member.id, member.name.as_str()));
    let detail = if code_hash.is_some() { "to read out" } else { "" };
    let subject = format!("member/{member}");
    acts::record(&mut transaction, now, by, "slip-to-reset", &subject, detail).await?;
    database.commit(transaction).await?;
    Ok(true)
}

/// The open slip with a code to read out of the member with this name: its token and the code, both hashed.
///
/// # Errors
/// The database cannot be read.
pub async fn read_out(
    database: &Database,
    key: &str,
    now: UnixSeconds,
) -> Result<Option<(TokenHash, String)>, Error> {
    let row = sqlx::query!(
        r#"SELECT slip.token_hash, slip.code_hash AS "code_hash!"
           FROM slip JOIN member ON member.id = slip.member_id
           WHERE member.name_key = ? AND slip.code_hash IS NOT NULL AND slip.used_at IS NULL
             AND slip.ends_at > ?"#,
        key,
        now
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.and_then(|row| Some((TokenHash::kept(&row.token_hash)?, row.code_hash))))
}

/// Gives a slip whose code was right a new token, for whoever gave it: that of an earlier time opens nothing
/// any more. False where the slip was used or made void meanwhile.
///
/// # Errors
/// The database cannot be written.
pub async fn open_read_out(
    database: &Database,
    now: UnixSeconds,
    slip: TokenHash,
    token: TokenHash,
) -> Result<bool, Error> {
    let (slip, token) = (slip.bytes(), token.bytes());
    let mut transaction = database.write().await?;
    let opened = sqlx::query!(
        "UPDATE slip SET token_hash = ? WHERE token_hash = ? AND used_at IS NULL AND ends_at > ?",
        token,
        slip,
        now
    )
    .execute(&mut *transaction)
    .await?;
    database.commit(transaction).await?;
    Ok(opened.rows_affected() == 1)
}

/// The slip to join with this token, if it may still be used.
///
/// # Errors
/// The database cannot be read.
pub async fn to_join(
    database: &Database,
    token: TokenHash,
    now: UnixSeconds,
) -> Result<Option<Joining>, Error> {
    let token = token.bytes();
    let row = sqlx::query!(
        "SELECT is_moderator, is_inspector, is_secretary, meant_for FROM slip
         WHERE token_hash = ? AND purpose = 'join' AND used_at IS NULL AND ends_at > ?",
        token,
        now
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.map(|row| Joining {
        rights: super::people::rights(row.is_moderator, row.is_inspector, row.is_secretary),
        meant_for: row.meant_for,
    }))
}

/// The slip for a new password with this token, if it may still be used.
///
/// # Errors
/// The database cannot be read.
pub async fn to_reset(
    database: &Database,
    token: TokenHash,
    now: UnixSeconds,
) -> Result<Option<Resetting>, Error> {
    let token = token.bytes();
    let row = sqlx::query!(
        "SELECT member.id, member.name FROM slip JOIN member ON member.id = slip.member_id
         WHERE slip.token_hash = ? AND slip.purpose = 'reset' AND slip.used_at IS NULL
           AND slip.ends_at > ?",
        token,
        now
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.map(|row| Resetting { member: MemberId(row.id), name: row.name }))
}

/// Uses a slip to join: makes the member and begins a session, or changes nothing.
///
/// # Errors
/// The database cannot be written.
pub async fn join(
    database: &Database,
    now: UnixSeconds,
    token: TokenHash,
    newcomer: Newcomer<'_>,
) -> Result<Joined, Error> {
    let token = token.bytes();
    let mut transaction = database.write().await?;
    let slip = sqlx::query!(
        "UPDATE slip SET used_at = ? WHERE token_hash = ? AND purpose = 'join' AND used_at IS NULL
           AND ends_at > ? RETURNING is_moderator, is_inspector, is_secretary",
        now,
        token,
        now
    )
    .fetch_optional(&mut *transaction)
    .await?;
    let Some(slip) = slip else { return Ok(Joined::Spent) };
    let (shown, key) = (newcomer.name.shown(), newcomer.name.key());
    let names = sqlx::query_scalar!("SELECT name FROM member").fetch_all(&mut *transaction).await?;
    if names.iter().any(|name| newcomer.name.looks_like(name)) {
        return Ok(Joined::NameTaken);
    }
    let id = sqlx::query!(
        "INSERT INTO member (name, name_key, password_hash, is_moderator, is_inspector, is_secretary,
           joined_at) VALUES (?, ?, ?, ?, ?, ?, ?)",
        shown,
        key,
        newcomer.password_hash,
        slip.is_moderator,
        slip.is_inspector,
        slip.is_secretary,
        now
    )
    .execute(&mut *transaction)
    .await?
    .last_insert_rowid();
    if slip.is_secretary != 0 {
        // The link that the server printed is for a club without one, and now stands open for nobody.
        sqlx::query!(
            "DELETE FROM slip WHERE purpose = 'join' AND made_by IS NULL AND meant_for = ?
               AND used_at IS NULL",
            FIRST
        )
        .execute(&mut *transaction)
        .await?;
    }
    let member = MemberId(id);
    sessions::insert(&mut transaction, now, member, newcomer.session, Some(now)).await?;
    acts::record(
        &mut transaction,
        now,
        Some((member, shown)),
        "joined",
        &format!("member/{id}"),
        "",
    )
    .await?;
    database.commit(transaction).await?;
    Ok(Joined::Member(member))
}

/// Uses a slip for a new password: sets it and ends every session of the member. False where the
/// slip is spent.
///
/// # Errors
/// The database cannot be written.
pub async fn use_to_reset(
    database: &Database,
    now: UnixSeconds,
    token: TokenHash,
    password_hash: &str,
) -> Result<bool, Error> {
    let token = token.bytes();
    let mut transaction = database.write().await?;
    let slip = sqlx::query!(
        r#"UPDATE slip SET used_at = ? WHERE token_hash = ? AND purpose = 'reset' AND used_at IS NULL
           AND ends_at > ? RETURNING member_id AS "member_id!""#,
        now,
        token,
        now
    )
    .fetch_optional(&mut *transaction)
    .await?;
    let Some(slip) = slip else { return Ok(false) };
    sqlx::query!(
        "UPDATE member SET password_hash = ?, failures = 0 WHERE id = ?",
        password_hash,
        slip.member_id
    )
    .execute(&mut *transaction)
    .await?;
    feeds::forget(&mut transaction, MemberId(slip.member_id)).await?;
    sessions::end_all(&mut transaction, MemberId(slip.member_id)).await?;
    let subject = format!("member/{}", slip.member_id);
    acts::record(&mut transaction, now, None, "password-reset", &subject, "").await?;
    database.commit(transaction).await?;
    Ok(true)
}

/// Drops slips that ended a month ago.
///
/// # Errors
/// The database cannot be written.
pub async fn forget_old(database: &Database, now: UnixSeconds) -> Result<(), Error> {
    let before = now - 30 * 24 * 60 * 60;
    let mut transaction = database.write().await?;
    sqlx::query!("DELETE FROM slip WHERE ends_at < ?", before).execute(&mut *transaction).await?;
    database.commit(transaction).await?;
    Ok(())
}
