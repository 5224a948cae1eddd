//! What was done to a shown note, in the record of acts.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::db::acts;
use crate::rules::auth::SignedIn;
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;

/// Records it, in the transaction that does it.
pub(super) async fn record(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
    by: &SignedIn,
    now: UnixSeconds,
    (what, detail): (&'static str, &str),
) -> Result<(), Error> {
    // The record holds two thousand characters; the whole text stands with the note.
    let detail: String = detail.chars().take(2000).collect();
    let by = Some((by.id, by.name.as_str()));
    acts::record(transaction, now, by, what, &format!("note/{note}"), &detail).await?;
    Ok(())
}
