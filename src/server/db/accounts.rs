//! A member's own account: what a sign-in asks of it, its password, its second factor.

use sqlx::{Sqlite, Transaction};

use super::{Database, Error, acts, feeds, people, sessions, spare_codes};
use crate::rules::auth::second_factor::{FAR_AHEAD, Secret, Step};
use crate::rules::auth::{MemberId, Rights, SignedIn, TokenHash};
use crate::rules::clock::UnixSeconds;

/// What a sign-in needs to know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Account {
    /// Number.
    pub id: MemberId,
    /// The name shown.
    pub name: String,
    /// The name as names are compared.
    pub key: String,
    /// The password's hash.
    pub password_hash: String,
    /// Rights.
    pub rights: Rights,
    /// The second factor, where one is set up.
    pub second_factor: Option<(Secret, Option<Step>)>,
    /// How many spare codes are left.
    pub spare_codes: i64,
    /// Whether the secretary has stopped it.
    pub is_stopped: bool,
    /// When the member joined.
    pub joined_at: UnixSeconds,
    /// Wrong passwords and codes since the last sign-in.
    pub failures: i64,
    /// When the last of them was.
    pub failed_at: Option<UnixSeconds>,
    /// Up to when they have read what became of their notes.
    pub news_read_at: UnixSeconds,
}

/// What was right beside the password: the step of a code, or a spare one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Given {
    /// A code of the device.
    Step(Step),
    /// A spare code: what it is kept by.
    Spare {
        /// Its mark.
        mark: String,
        /// The hash that it was held against.
        hash: String,
    },
}

struct AccountRow {
    id: i64,
    name: String,
    name_key: String,
    password_hash: String,
    is_moderator: i64,
    is_inspector: i64,
    is_secretary: i64,
    totp_secret: Option<Vec<u8>>,
    totp_step: Option<i64>,
    spare_codes: i64,
    joined_at: i64,
    stopped_at: Option<i64>,
    failures: i64,
    failed_at: Option<i64>,
    news_read_at: i64,
}

impl From<AccountRow> for Account {
    fn from(row: AccountRow) -> Self {
        Self {
            id: MemberId(row.id),
            name: row.name,
            key: row.name_key,
            password_hash: row.password_hash,
            rights: super::people::rights(row.is_moderator, row.is_inspector, row.is_secretary),
            second_factor: row
                .totp_secret
                .and_then(|secret| Secret::kept(&secret))
                .map(|secret| (secret, row.totp_step)),
            spare_codes: row.spare_codes,
            is_stopped: row.stopped_at.is_some(),
            joined_at: row.joined_at,
            failures: row.failures,
            failed_at: row.failed_at,
            news_read_at: row.news_read_at,
        }
    }
}

/// The account of this name, as names are compared.
///
/// # Errors
/// The database cannot be read.
pub async fn named(database: &Database, key: &str) -> Result<Option<Account>, Error> {
    let row = sqlx::query_as!(
        AccountRow,
        r#"SELECT id, name, name_key, password_hash, is_moderator, is_inspector, is_secretary,
             totp_secret, totp_step, joined_at, stopped_at, failures, failed_at, news_read_at,
             (SELECT count(*) FROM spare_code WHERE spare_code.member_id = member.id AND used_at IS NULL)
               AS "spare_codes!: i64"
           FROM member WHERE name_key = ?"#,
        key
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.map(Account::from))
}

/// The account with this number.
///
/// # Errors
/// The database cannot be read.
pub async fn numbered(
    database: &Database,
    MemberId(id): MemberId,
) -> Result<Option<Account>, Error> {
    let row = sqlx::query_as!(
        AccountRow,
        r#"SELECT id, name, name_key, password_hash, is_moderator, is_inspector, is_secretary,
             totp_secret, totp_step, joined_at, stopped_at, failures, failed_at, news_read_at,
             (SELECT count(*) FROM spare_code WHERE spare_code.member_id = member.id AND used_at IS NULL)
               AS "spare_codes!: i64"
           FROM member WHERE id = ?"#,
        id
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(row.map(Account::from))
}

/// Notes that a password or a code was wrong. A name that nobody has costs the same write.
///
/// # Errors
/// The database cannot be written.
pub async fn refuse(
    database: &Database,
    now: UnixSeconds,
    account: Option<&Account>,
    detail: &str,
) -> Result<(), Error> {
    let id = account.map_or(0, |account| account.id.0);
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE member SET failures = failures + 1, failed_at = ? WHERE id = ?", now, id)
        .execute(&mut *transaction)
        .await?;
    let subject = account.map(|account| format!("member/{}", account.id.0)).unwrap_or_default();
    acts::record(&mut transaction, now, None, "sign-in-refused", &subject, detail).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Begins a session after the right password. Where a code is due it waits for the code.
///
/// # Errors
/// The database cannot be written.
pub async fn sign_in(
    database: &Database,
    now: UnixSeconds,
    account: &Account,
    session: sessions::New<'_>,
    held: &[TokenHash],
) -> Result<(), Error> {
    let proved_at = account.second_factor.is_none().then_some(now);
    let mut transaction = database.write().await?;
    for held in held {
        sessions::end_by_token(&mut transaction, *held).await?;
    }
    sessions::insert(&mut transaction, now, account.id, session, proved_at).await?;
    if proved_at.is_some() {
        arrived(&mut transaction, now, account).await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Takes the code of a waiting session: the session ends, and one with a new token begins. False
/// where the code was taken meanwhile.
///
/// # Errors
/// The database cannot be written.
pub async fn sign_in_with_code(
    database: &Database,
    now: UnixSeconds,
    account: &Account,
    given: &Given,
    session: sessions::New<'_>,
    waiting: TokenHash,
) -> Result<bool, Error> {
    let mut transaction = database.write().await?;
    if !take(&mut transaction, now, account, given).await? {
        return Ok(false);
    }
    sessions::end_by_token(&mut transaction, waiting).await?;
    sessions::insert(&mut transaction, now, account.id, session, Some(now)).await?;
    arrived(&mut transaction, now, account).await?;
    database.commit(transaction).await?;
    Ok(true)
}

async fn arrived(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    account: &Account,
) -> Result<(), Error> {
    let id = account.id.0;
    sqlx::query!("UPDATE member SET failures = 0 WHERE id = ?", id)
        .execute(&mut **transaction)
        .await?;
    let by = Some((account.id, account.name.as_str()));
    acts::record(transaction, now, by, "sign-in", &format!("member/{id}"), "").await
}

/// Takes a code that proves a member once more. False where it was taken meanwhile.
///
/// # Errors
/// The database cannot be written.
pub async fn take_code(
    database: &Database,
    now: UnixSeconds,
    account: &Account,
    given: &Given,
) -> Result<bool, Error> {
    let mut transaction = database.write().await?;
    let taken = take(&mut transaction, now, account, given).await?;
    database.commit(transaction).await?;
    Ok(taken)
}

async fn take(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    account: &Account,
    given: &Given,
) -> Result<bool, Error> {
    match given {
        Given::Step(step) => take_step(transaction, account.id, *step).await,
        Given::Spare { mark, hash } => {
            let of = (account.id, account.name.as_str());
            spare_codes::take(transaction, now, of, (mark, hash)).await
        }
    }
}

async fn take_step(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
    step: Step,
) -> Result<bool, Error> {
    let far_ahead = step + FAR_AHEAD;
    let taken = sqlx::query!(
        "UPDATE member SET totp_step = ?1 WHERE id = ?2 AND totp_secret IS NOT NULL
           AND (totp_step IS NULL OR totp_step < ?1 OR totp_step > ?3)",
        step,
        member,
        far_ahead
    )
    .execute(&mut **transaction)
    .await?;
    Ok(taken.rows_affected() == 1)
}

/// Ends the session with this token; whose it was goes into the record.
///
/// # Errors
/// The database cannot be written.
pub async fn sign_out(
    database: &Database,
    now: UnixSeconds,
    member: Option<&SignedIn>,
    tokens: &[TokenHash],
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    for token in tokens {
        sessions::end_by_token(&mut transaction, *token).await?;
    }
    if let Some(member) = member {
        act_of(&mut transaction, now, member, "sign-out").await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Keeps another hash of the same password, unless the password was changed meanwhile.
///
/// # Errors
/// The database cannot be written.
pub async fn renew_hash(
    database: &Database,
    MemberId(member): MemberId,
    old: &str,
    new: &str,
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    sqlx::query!(
        "UPDATE member SET password_hash = ? WHERE id = ? AND password_hash = ?",
        new,
        member,
        old
    )
    .execute(&mut *transaction)
    .await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Sets a new password. Every session of the member ends, and one with a new token begins here.
///
/// # Errors
/// The database cannot be written.
pub async fn set_password(
    database: &Database,
    now: UnixSeconds,
    member: &SignedIn,
    password_hash: &str,
    session: sessions::New<'_>,
) -> Result<(), Error> {
    let id = member.id.0;
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE member SET password_hash = ? WHERE id = ?", password_hash, id)
        .execute(&mut *transaction)
        .await?;
    sqlx::query!("DELETE FROM slip WHERE member_id = ? AND used_at IS NULL", id)
        .execute(&mut *transaction)
        .await?;
    feeds::forget(&mut transaction, member.id).await?;
    sessions::end_all(&mut transaction, member.id).await?;
    sessions::insert(&mut transaction, now, member.id, session, Some(now)).await?;
    act_of(&mut transaction, now, member, "password-changed").await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Sets up the second factor with the step of the code that proved it; the sessions elsewhere end, and
/// the one at hand goes on under a new token.
///
/// # Errors
/// The database cannot be written.
pub async fn set_second_factor(
    database: &Database,
    now: UnixSeconds,
    member: &SignedIn,
    (secret, step): (&Secret, Step),
    token: TokenHash,
) -> Result<(), Error> {
    let (id, secret, number) = (member.id.0, secret.bytes(), member.session);
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE member SET totp_secret = ?, totp_step = ? WHERE id = ?", secret, step, id)
        .execute(&mut *transaction)
        .await?;
    spare_codes::drop_all(&mut transaction, member.id).await?;
    sqlx::query!("DELETE FROM session WHERE member_id = ? AND number <> ?", id, number)
        .execute(&mut *transaction)
        .await?;
    sessions::rename(&mut transaction, member, token, member.proved_at).await?;
    act_of(&mut transaction, now, member, "second-factor-set").await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Takes the second factor away; the session at hand goes on under a new token. False where the member
/// is the only secretary: then nobody could tell that it was she who did so.
///
/// # Errors
/// The database cannot be written.
pub async fn drop_second_factor(
    database: &Database,
    now: UnixSeconds,
    member: &SignedIn,
    token: TokenHash,
) -> Result<bool, Error> {
    let id = member.id.0;
    let mut transaction = database.write().await?;
    if member.rights.secretary && people::secretaries(&mut transaction).await? < 2 {
        return Ok(false);
    }
    sqlx::query!("UPDATE member SET totp_secret = NULL, totp_step = NULL WHERE id = ?", id)
        .execute(&mut *transaction)
        .await?;
    spare_codes::drop_all(&mut transaction, member.id).await?;
    sessions::rename(&mut transaction, member, token, member.proved_at).await?;
    act_of(&mut transaction, now, member, "second-factor-dropped").await?;
    database.commit(transaction).await?;
    Ok(true)
}

async fn act_of(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    member: &SignedIn,
    what: &'static str,
) -> Result<(), Error> {
    let by = Some((member.id, member.name.as_str()));
    acts::record(transaction, now, by, what, &format!("member/{}", member.id.0), "").await
}
