//! A small fix of whoever decides: the waiting wording is shown in their words. The author's own stays with the
//! note, so that its author sees who changed what.

use super::decide::{self, Reviewed};
use super::read_to::{ReadTo, check_read};
use super::recorded::record;
use super::wordings::{self, Written};
use super::{Error, current, undo};
use crate::db::Database;
use crate::rules::auth::MemberId;
use crate::rules::notes::VersionId;
use crate::rules::notes::decision::Undoable;
use crate::rules::notes::state::{Act, Subject};
use crate::rules::notes::wording::Wording;

/// What an author's wording is marked with that was shown in other words.
const SHOWN_MENDED: &str = "Shown with a small fix.";

/// Shows the wording that was read in these words.
///
/// # Errors
/// As [`decide::pass`]; or it is their own note, or the words are an inspector's to pass.
pub async fn mend(
    database: &Database,
    reviewed: Reviewed<'_>,
    read_to: ReadTo,
    mended: &Wording,
) -> Result<(), Error> {
    let Reviewed { note, version: VersionId(version), by, now } = reviewed;
    let MemberId(member) = by.id;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    let after = current.check(Act::Mend(mended.subject), by)?;
    if current.on_its_way != Some(version) {
        return Err(Error::OutOfDate);
    }
    check_read(&mut transaction, note, read_to).await?;
    let before = undo::before(&mut transaction, note).await?;
    sqlx::query!(
        "UPDATE note_version SET state = 'declined', decided_at = ?, decided_by = ?, reason = ?
         WHERE id = ? AND state = 'waiting'",
        now,
        member,
        SHOWN_MENDED,
        version
    )
    .execute(&mut *transaction)
    .await?;
    let shown = sqlx::query_scalar!(
        r#"INSERT INTO note_version (note_id, state, title, text, made_at, saved_at, mended_by, mended_from)
           VALUES (?1, 'draft', '', '', ?2, ?2, ?3, ?4) RETURNING id AS "id!""#,
        note.0,
        now,
        member,
        version
    )
    .fetch_one(&mut *transaction)
    .await?;
    // No form of its author's was filled with it: a later one of theirs reads it first.
    let written = Written { wording: mended, state: "waiting", form_key: "" };
    wordings::write(&mut transaction, now, VersionId(shown), written).await?;
    let is_pressure = after.shown == Some(Subject::Pressure);
    let settles = current.state.hidden.is_some();
    decide::show(&mut transaction, reviewed, shown, (is_pressure, settles)).await?;
    record(&mut transaction, note, by, now, ("note-shown", "with a small fix")).await?;
    undo::keep(&mut transaction, (note, shown), by, now, (Undoable::Pass, before)).await?;
    database.commit(transaction).await?;
    Ok(())
}
