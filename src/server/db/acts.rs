//! The record of acts: who did what to whom or what.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::server::auth::MemberId;
use crate::server::clock::UnixSeconds;

/// Writes one act, in the transaction of the act itself.
///
/// # Errors
/// The database cannot be written.
pub(in crate::server::db) async fn record(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: Option<(MemberId, &str)>,
    what: &'static str,
    subject: &str,
    detail: &str,
) -> Result<(), Error> {
    let (member, name) = by.map_or((None, ""), |(MemberId(id), name)| (Some(id), name));
    sqlx::query!(
        "INSERT INTO act (at, member_id, member_name, what, subject, detail) VALUES (?, ?, ?, ?, ?, ?)",
        now,
        member,
        name,
        what,
        subject,
        detail
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}
