//! What a moderator or inspector decides about a waiting wording. If two decide at once, the first counts
//! and the second is told so.

use super::read_to::{ReadTo, check_read};
use super::recorded::record;
use super::{Error, current, read, reports, text, undo, verdicts, wordings};
use crate::db::{Database, acts};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::decision::Undoable;
use crate::rules::notes::state::{Act, OnItsWay, Refused, Subject};
use crate::rules::notes::{NoteId, VersionId};
use sqlx::{Sqlite, Transaction};

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

/// Shows the wording from now on, in the place of the one shown before. Where that was reported, the reports
/// are settled by it.
///
/// # Errors
/// The rules are against it; it was decided or taken back meanwhile; a report, or a correction that would go
/// with the wording shown before, was not read; or the database cannot be written.
pub async fn pass(
    database: &Database,
    reviewed: Reviewed<'_>,
    read_to: ReadTo,
) -> Result<(), Error> {
    let Reviewed { version: VersionId(version), by, now, .. } = reviewed;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    let after = current.check(Act::Pass, by)?;
    if current.on_its_way != Some(version) {
        return Err(Error::OutOfDate);
    }
    check_read(&mut transaction, reviewed.note, read_to).await?;
    let before = undo::before(&mut transaction, reviewed.note).await?;
    let is_pressure = after.shown == Some(Subject::Pressure);
    let settles = current.state.hidden.is_some();
    show(&mut transaction, reviewed, version, (is_pressure, settles)).await?;
    let detail = if current.is_own() { "their own note: nobody else could decide" } else { "" };
    record(&mut transaction, reviewed.note, by, now, ("note-shown", detail)).await?;
    undo::keep(&mut transaction, (reviewed.note, version), by, now, (Undoable::Pass, before))
        .await?;
    database.commit(transaction).await?;
    Ok(())
}

/// The waiting wording with this number takes the place of the one shown before.
pub(super) async fn show(
    transaction: &mut Transaction<'_, Sqlite>,
    Reviewed { note: NoteId(note), by, now, .. }: Reviewed<'_>,
    version: i64,
    (is_pressure, settles): (bool, bool),
) -> Result<(), Error> {
    let MemberId(member) = by.id;
    sqlx::query!(
        "UPDATE note_version SET state = 'replaced' WHERE note_id = ? AND state = 'shown'",
        note
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "UPDATE note_version SET state = 'shown', is_pressure = ?1, decided_at = ?2, decided_by = ?3, reason = '',
           inspected_at = iif(?1, ?2, NULL)
         WHERE id = ?4 AND state = 'waiting'",
        is_pressure,
        now,
        member,
        version
    )
    .execute(&mut **transaction)
    .await?;
    // A correction stands above the wording that was shown when it was made: this one is shown after it,
    // also where both come in one second, or the clock was put back.
    sqlx::query!(
        "UPDATE note SET shown_version = ?1, hidden_at = NULL, shown_at = max(?2, coalesce(
           (SELECT max(made_at) + 1 FROM correction WHERE note_id = ?3), 0))
         WHERE id = ?3",
        version,
        now,
        note
    )
    .execute(&mut **transaction)
    .await?;
    if settles {
        reports::settle(transaction, now, by, note).await?;
    }
    // What was found of the wording before says nothing of this one.
    verdicts::confirm(transaction, note).await?;
    text::follow(transaction, note).await
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

/// Hands what stands in the queue to the inspector.
///
/// # Errors
/// As [`pass`].
pub async fn hand_over(database: &Database, reviewed: Reviewed<'_>) -> Result<(), Error> {
    hand_on(database, reviewed, (Act::HandOver, "note-handed-over")).await
}

/// Turns what stands in the queue back to a usual note: the inspector has looked.
///
/// # Errors
/// As [`pass`].
pub async fn turn_back(database: &Database, reviewed: Reviewed<'_>) -> Result<(), Error> {
    hand_on(database, reviewed, (Act::TurnBack, "note-turned-back")).await
}

async fn hand_on(
    database: &Database,
    reviewed: Reviewed<'_>,
    (act, what): (Act, &'static str),
) -> Result<(), Error> {
    let Reviewed { note, version: VersionId(version), by, now } = reviewed;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    let after = current.check(act, by)?;
    if current.queued() != Some(version) {
        return Err(Error::OutOfDate);
    }
    let before = undo::before(&mut transaction, note).await?;
    let waits = match after.on_its_way {
        Some(OnItsWay::Waiting(subject)) => current.on_its_way.zip(Some(subject)),
        _ => None,
    };
    let turned_back_at = (act == Act::TurnBack).then_some(now);
    for (version, subject) in waits.into_iter().chain(current.shown.zip(after.shown)) {
        let is_pressure = subject == Subject::Pressure;
        // What stays as it is was neither handed over nor turned back.
        sqlx::query!(
            "UPDATE note_version SET is_pressure = ?1, turned_back_at = ?2
             WHERE id = ?3 AND is_pressure <> ?1",
            is_pressure,
            turned_back_at,
            version
        )
        .execute(&mut *transaction)
        .await?;
    }
    record(&mut transaction, note, by, now, (what, "")).await?;
    let decided = if act == Act::TurnBack { Undoable::TurnBack } else { Undoable::HandOver };
    undo::keep(&mut transaction, (note, version), by, now, (decided, before)).await?;
    database.commit(transaction).await?;
    Ok(())
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
    let before = undo::before(&mut transaction, reviewed.note).await?;
    if act == Act::AskForChange {
        keep_what_was_asked(&mut transaction, reviewed, reason).await?;
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
    let recorded = Some((by.id, by.name.as_str()));
    acts::record(&mut transaction, now, recorded, what, &format!("note/{note}"), reason).await?;
    let decided = if act == Act::Decline { Undoable::Decline } else { Undoable::Change };
    undo::keep(&mut transaction, (reviewed.note, version), by, now, (decided, before)).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// The wording goes once another is sent in: whoever then decides reads what was asked, and of what.
async fn keep_what_was_asked(
    transaction: &mut Transaction<'_, Sqlite>,
    Reviewed { note: NoteId(note), version, by, now }: Reviewed<'_>,
    reason: &str,
) -> Result<(), Error> {
    let MemberId(member) = by.id;
    let row = wordings::one(transaction, NoteId(note), version).await?;
    let words = row.map(read::wording).transpose()?.map(|wording| wording.as_lines());
    let words = words.unwrap_or_default();
    sqlx::query!(
        "INSERT INTO change_asked (note_id, asked_by, asked_at, reason, words) VALUES (?, ?, ?, ?, ?)",
        note,
        member,
        now,
        reason,
        words
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}
