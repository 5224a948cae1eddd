//! What happens to a note once it is shown: corrections, reports of danger, withdrawal.

use tokio::task::spawn_blocking;

use super::decide::Reviewed;
use super::read_to::{ReadTo, check_read};
use super::recorded::record;
use super::{Error, current, read, remarks, reports, text, undo, wordings};
use crate::db::Database;
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::decision::Undoable;
use crate::rules::notes::pressure;
use crate::rules::notes::state::{Act, OnItsWay, Subject};
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
    // A wording that was shown never changes: what the correction says above it holds until it is written.
    let mut reading = database.readers.begin().await?;
    let row = wordings::one(&mut reading, reviewed.note, reviewed.version).await?;
    drop(reading);
    let corrected = row.map(read::wording).transpose()?;
    let typed = correction.to_owned();
    let work = move || match corrected {
        Some(corrected) => corrected.subject_of_a_correction(&typed),
        None => pressure::subject(&typed),
    };
    let said = spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?;
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
    // What stands above a note is read with it: from now on both are the inspector's, and so is what waits to
    // take their place.
    let waits = match after.on_its_way {
        Some(OnItsWay::Waiting(subject)) => current.on_its_way.zip(Some(subject)),
        _ => None,
    };
    for (version, subject) in after.shown.map(|subject| (version, subject)).into_iter().chain(waits)
    {
        let is_pressure = subject == Subject::Pressure;
        // Only an inspector puts such a correction there, and has then read what it stands above.
        sqlx::query!(
            "UPDATE note_version SET is_pressure = ?1, inspected_at = iif(?1 AND state = 'shown', ?2, inspected_at)
             WHERE id = ?3",
            is_pressure,
            now,
            version
        )
        .execute(&mut *transaction)
        .await?;
    }
    text::follow(&mut transaction, note).await?;
    record(&mut transaction, reviewed.note, by, now, ("note-corrected", correction)).await?;
    database.commit(transaction).await?;
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
    let by_another = !current.is_own();
    sqlx::query!(
        "UPDATE note SET withdrawn_at = ?, withdrawn_why = ?, withdrawn_by_another = ? WHERE id = ?",
        now,
        why,
        by_another,
        id
    )
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
    reports::settle(&mut transaction, now, by, id).await?;
    remarks::withdraw_with(&mut transaction, id).await?;
    text::follow(&mut transaction, id).await?;
    record(&mut transaction, note, by, now, ("note-withdrawn", why)).await?;
    database.commit(transaction).await?;
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
    let said = pressure::subject(danger);
    let mut transaction = database.write().await?;
    current::read(&mut transaction, note, by).await?.check(Act::Report(said), by)?;
    let inspects = said == Subject::Pressure && by.rights.may(Right::Inspect);
    let kind = if inspects { "inspector" } else { "usual" };
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
        "INSERT INTO safety_report (note_id, member_id, kind, text, made_at, hid)
         SELECT id, ?, ?, ?, ?, hidden_at IS NULL FROM note WHERE id = ?",
        member,
        kind,
        danger,
        now,
        id
    )
    .execute(&mut *transaction)
    .await?;
    sqlx::query!("UPDATE note SET hidden_at = coalesce(hidden_at, ?) WHERE id = ?", now, id)
        .execute(&mut *transaction)
        .await?;
    text::follow(&mut transaction, id).await?;
    record(&mut transaction, note, by, now, ("note-reported", danger)).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Shows the note again: whoever looked, at the reports and the corrections up to these, found nothing
/// against it.
///
/// # Errors
/// As [`correct`]; or a report or a correction was not read.
pub async fn settle(
    database: &Database,
    reviewed: Reviewed<'_>,
    read_to: ReadTo,
) -> Result<(), Error> {
    let Reviewed { note: NoteId(note), version: VersionId(version), by, now } = reviewed;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, reviewed.note, by).await?;
    current.check(Act::Settle, by)?;
    if current.shown != Some(version) {
        return Err(Error::OutOfDate);
    }
    check_read(&mut transaction, reviewed.note, read_to).await?;
    let before = undo::before(&mut transaction, reviewed.note).await?;
    reports::inspected(&mut transaction, now, version).await?;
    sqlx::query!("UPDATE note SET hidden_at = NULL WHERE id = ?", note)
        .execute(&mut *transaction)
        .await?;
    reports::settle(&mut transaction, now, by, note).await?;
    reports::showed(&mut transaction, now, note).await?;
    text::follow(&mut transaction, note).await?;
    record(&mut transaction, reviewed.note, by, now, ("note-report-settled", "")).await?;
    undo::keep(&mut transaction, (reviewed.note, version), by, now, (Undoable::Settle, before))
        .await?;
    database.commit(transaction).await?;
    Ok(())
}
