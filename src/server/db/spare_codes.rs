//! Spare codes: ten of a member's, each good once in place of a code of the second factor.

use sqlx::{Sqlite, Transaction};

use super::{Database, Error, acts};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;

/// A new one as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct New {
    /// Its first two digits.
    pub mark: String,
    /// The hash of all its digits.
    pub hash: String,
}

/// Gives the member these, and no others are good any more. False where they have no second factor.
///
/// # Errors
/// The database cannot be written.
pub async fn set(
    database: &Database,
    now: UnixSeconds,
    member: &SignedIn,
    codes: &[New],
) -> Result<bool, Error> {
    let id = member.id.0;
    let mut transaction = database.write().await?;
    let known =
        sqlx::query_scalar!("SELECT id FROM member WHERE id = ? AND totp_secret IS NOT NULL", id)
            .fetch_optional(&mut *transaction)
            .await?;
    if known.is_none() {
        return Ok(false);
    }
    drop_all(&mut transaction, member.id).await?;
    for New { mark, hash } in codes {
        sqlx::query!(
            "INSERT INTO spare_code (member_id, mark, code_hash) VALUES (?, ?, ?)",
            id,
            mark,
            hash
        )
        .execute(&mut *transaction)
        .await?;
    }
    let (by, subject) = (Some((member.id, member.name.as_str())), format!("member/{id}"));
    acts::record(&mut transaction, now, by, "spare-codes-made", &subject, "").await?;
    database.commit(transaction).await?;
    Ok(true)
}

/// The hash of a member's unused code with this mark.
///
/// # Errors
/// The database cannot be read.
pub async fn hash(
    database: &Database,
    MemberId(member): MemberId,
    mark: &str,
) -> Result<Option<String>, Error> {
    Ok(sqlx::query_scalar!(
        "SELECT code_hash FROM spare_code WHERE member_id = ? AND mark = ? AND used_at IS NULL",
        member,
        mark
    )
    .fetch_optional(&database.readers)
    .await?)
}

/// Uses the code with this mark and this hash; false where it was used meanwhile, or is none: another may have taken its
/// mark since it was checked.
pub(super) async fn take(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    (MemberId(member), name): (MemberId, &str),
    (mark, hash): (&str, &str),
) -> Result<bool, Error> {
    let taken = sqlx::query!(
        "UPDATE spare_code SET used_at = ? WHERE member_id = ? AND mark = ? AND code_hash = ? AND used_at IS NULL",
        now,
        member,
        mark,
        hash
    )
    .execute(&mut **transaction)
    .await?;
    if taken.rows_affected() == 0 {
        return Ok(false);
    }
    let left = sqlx::query_scalar!(
        "SELECT count(*) FROM spare_code WHERE member_id = ? AND used_at IS NULL",
        member
    )
    .fetch_one(&mut **transaction)
    .await?;
    let (subject, detail) = (format!("member/{member}"), format!("{left} left"));
    let by = Some((MemberId(member), name));
    acts::record(transaction, now, by, "spare-code-used", &subject, &detail).await?;
    Ok(true)
}

/// Drops all of a member's: they go with the second factor they stand in for.
pub(super) async fn drop_all(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM spare_code WHERE member_id = ?", member)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}
