//! What happens to a note once it is shown: corrections, reports of danger, withdrawal.

use sqlx::{Sqlite, Transaction};

use super::decide::Reviewed;
use super::recorded::record;
use super::{Error, current, reports, text};
use crate::db::Database;
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::pressure;
use crate::rules::notes::state::{Act, Subject};
use crate::rules::notes::{NoteId, VersionId};

/// Puts a correction above the wording that was read.
///
/// # Errors
/// The rules are against it, another wording is shown meanwhile, or the database cannot be written.
pub async fn correct(
    database: &Database,
    reviewed: Reviewed<'_>,
    correction: &str,
) -> Result<(), Error> {
    let Reviewed { note: NoteId(note), version: VersionId(version), by, now } = reviewed;
    let MemberId(member) = by.id;
    let said = pressure::subject(correction);
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    let after = current.check(Act::Correct(said), by)?;
    if current.shown != Some(version) {
        return Err(Error::OutOfDate);
    }
    let same = sqlx::query_scalar!(
        r#"SELECT EXISTS (SELECT 1 FROM correction JOIN note ON note.id = correction.note_id
             WHERE note_id = ? AND text = ? AND correction.made_at >= note.shown_at) AS "same!: bool""#,
        note,
        correction
    )
    .fetch_one(&mut *transaction)
    .await?;
    if same {
        // The form came twice.
        return Ok(());
    }
    // A clock that was put back must not place it before the wording it stands above.
    sqlx::query!(
        "INSERT INTO correction (note_id, text, made_by, made_at)
         SELECT id, ?, ?, max(?, shown_at) FROM note WHERE id = ?",
        correction,
        member,
        now,
        note
    )
    .execute(&mut *transaction)
    .await?;
    // What stands above a note is read with it: from now on both are the inspector's.
    let is_pressure = after.shown == Some(Subject::Pressure);
    sqlx::query!("UPDATE note_version SET is_pressure = ? WHERE id = ?", is_pressure, version)
        .execute(&mut *transaction)
        .await?;
    text::follow(&mut transaction, note).await?;
    record(&mut transaction, reviewed.note, by, now, ("note-corrected", correction)).await?;
    transaction.commit().await?;
    Ok(())
}

/// Takes the note back, with the reason; open reports are settled by it. What was on its way waits no longer:
/// its author keeps the words, or takes back with it what nobody has read but they and the queue.
///
/// # Errors
/// The rules are against it, or the database cannot be written.
pub async fn withdraw(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    why: &str,
) -> Result<(), Error> {
    let NoteId(id) = note;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    current.check(Act::Withdraw, by)?;
    sqlx::query!("UPDATE note SET withdrawn_at = ?, withdrawn_why = ? WHERE id = ?", now, why, id)
        .execute(&mut *transaction)
        .await?;
    if current.shown.is_some() {
        sqlx::query!(
            "UPDATE note_version SET state = 'draft' WHERE note_id = ? AND state = 'waiting'",
            id
        )
        .execute(&mut *transaction)
        .await?;
    } else {
        sqlx::query!(
            "DELETE FROM note_version WHERE note_id = ? AND state IN ('draft', 'waiting')",
            id
        )
        .execute(&mut *transaction)
        .await?;
    }
    settle_reports(&mut transaction, now, by, id).await?;
    text::follow(&mut transaction, id).await?;
    record(&mut transaction, note, by, now, ("note-withdrawn", why)).await?;
    transaction.commit().await?;
    Ok(())
}

/// Hides the note at once, until somebody has looked.
///
/// # Errors
/// As [`withdraw`].
pub async fn report(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    danger: &str,
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let mut transaction = database.write().await?;
    current::read(&mut transaction, note, by).await?.check(Act::Report, by)?;
    let same = sqlx::query_scalar!(
        r#"SELECT EXISTS (SELECT 1 FROM safety_report
             WHERE note_id = ? AND member_id = ? AND text = ? AND settled_at IS NULL) AS "same!: bool""#,
        id,
        member,
        danger
    )
    .fetch_one(&mut *transaction)
    .await?;
    if same {
        return Ok(());
    }
    reports::check(&mut transaction, now, by).await?;
    sqlx::query!(
        "INSERT INTO safety_report (note_id, member_id, text, made_at) VALUES (?, ?, ?, ?)",
        id,
        member,
        danger,
        now
    )
    .execute(&mut *transaction)
    .await?;
    sqlx::query!("UPDATE note SET hidden_at = coalesce(hidden_at, ?) WHERE id = ?", now, id)
        .execute(&mut *transaction)
        .await?;
    text::follow(&mut transaction, id).await?;
    record(&mut transaction, note, by, now, ("note-reported", danger)).await?;
    transaction.commit().await?;
    Ok(())
}

/// Shows the note again: whoever looked, at the reports up to this one, found nothing against it.
///
/// # Errors
/// As [`correct`]; or it was reported once more meanwhile.
pub async fn settle(database: &Database, reviewed: Reviewed<'_>, last: i64) -> Result<(), Error> {
    let Reviewed { note: NoteId(note), version: VersionId(version), by, now } = reviewed;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    current.check(Act::Settle, by)?;
    let is_unread = sqlx::query_scalar!(
        r#"SELECT EXISTS (SELECT 1 FROM safety_report
             WHERE note_id = ? AND id > ? AND settled_at IS NULL) AS "is_unread!: bool""#,
        note,
        last
    )
    .fetch_one(&mut *transaction)
    .await?;
    if current.shown != Some(version) || is_unread {
        return Err(Error::OutOfDate);
    }
    sqlx::query!("UPDATE note SET hidden_at = NULL WHERE id = ?", note)
        .execute(&mut *transaction)
        .await?;
    settle_reports(&mut transaction, now, by, note).await?;
    text::follow(&mut transaction, note).await?;
    record(&mut transaction, reviewed.note, by, now, ("note-report-settled", "")).await?;
    transaction.commit().await?;
    Ok(())
}

async fn settle_reports(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: &SignedIn,
    note: i64,
) -> Result<(), Error> {
    let MemberId(member) = by.id;
    sqlx::query!(
        "UPDATE safety_report SET settled_at = ?, settled_by = ? WHERE note_id = ? AND settled_at IS NULL",
        now,
        member,
        note
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}
