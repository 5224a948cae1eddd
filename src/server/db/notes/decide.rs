//! What a moderator or inspector decides about a waiting wording. If two decide at once, the first counts
//! and the second is told so.

use super::{Error, current, text};
use crate::db::{Database, acts};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::state::{Act, Refused};
use crate::rules::notes::{NoteId, VersionId};

/// The wording that was read, and by whom.
#[derive(Clone, Copy, Debug)]
pub struct Reviewed<'a> {
    /// The note.
    pub note: NoteId,
    /// The wording.
    pub version: VersionId,
    /// Who read it and decides.
    pub by: &'a SignedIn,
    /// When.
    pub now: UnixSeconds,
}

/// Shows the wording from now on, in the place of the one shown before.
///
/// # Errors
/// The rules are against it, it was decided or taken back meanwhile, or the database cannot be written.
pub async fn pass(database: &Database, reviewed: Reviewed<'_>) -> Result<(), Error> {
    let Reviewed { note: NoteId(note), version: VersionId(version), by, now } = reviewed;
    let MemberId(member) = by.id;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    current.check(Act::Pass, by)?;
    if current.on_its_way != Some(version) {
        return Err(Error::OutOfDate);
    }
    sqlx::query!(
        "UPDATE note_version SET state = 'replaced' WHERE note_id = ? AND state = 'shown'",
        note
    )
    .execute(&mut *transaction)
    .await?;
    sqlx::query!(
        "UPDATE note_version SET state = 'shown', decided_at = ?, decided_by = ?, reason = ''
         WHERE id = ? AND state = 'waiting'",
        now,
        member,
        version
    )
    .execute(&mut *transaction)
    .await?;
    // A correction stands above the wording that was shown when it was made: this one is shown after it,
    // also where both come in one second, or the clock was put back.
    sqlx::query!(
        "UPDATE note SET shown_version = ?1, shown_at = max(?2, coalesce(
           (SELECT max(made_at) + 1 FROM correction WHERE note_id = ?3), 0))
         WHERE id = ?3",
        version,
        now,
        note
    )
    .execute(&mut *transaction)
    .await?;
    text::follow(&mut transaction, note).await?;
    let detail = if current.is_own() { "their own note: nobody else could decide" } else { "" };
    let by = Some((by.id, by.name.as_str()));
    acts::record(&mut transaction, now, by, "note-shown", &format!("note/{note}"), detail).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Gives the wording back to its author, with what to change.
///
/// # Errors
/// As [`pass`].
pub async fn ask_for_change(
    database: &Database,
    reviewed: Reviewed<'_>,
    what: &str,
) -> Result<(), Error> {
    send_back(database, reviewed, (Act::AskForChange, "draft", "note-change-asked"), what).await
}

/// Does not take the wording, with the reason.
///
/// # Errors
/// As [`pass`].
pub async fn decline(database: &Database, reviewed: Reviewed<'_>, why: &str) -> Result<(), Error> {
    send_back(database, reviewed, (Act::Decline, "declined", "note-declined"), why).await
}

async fn send_back(
    database: &Database,
    reviewed: Reviewed<'_>,
    (act, state, what): (Act, &str, &'static str),
    reason: &str,
) -> Result<(), Error> {
    let Reviewed { note: NoteId(note), version: VersionId(version), by, now } = reviewed;
    let MemberId(member) = by.id;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    current.check(act, by)?;
    if current.on_its_way != Some(version) {
        return Err(Error::OutOfDate);
    }
    let changed = sqlx::query!(
        "UPDATE note_version SET state = ?, decided_at = ?, decided_by = ?, reason = ?
         WHERE id = ? AND state = 'waiting'",
        state,
        now,
        member,
        reason,
        version
    )
    .execute(&mut *transaction)
    .await?;
    if changed.rows_affected() == 0 {
        return Err(Refused::NotWaiting.into());
    }
    let by = Some((by.id, by.name.as_str()));
    acts::record(&mut transaction, now, by, what, &format!("note/{note}"), reason).await?;
    database.commit(transaction).await?;
    Ok(())
}
