//! What members found of a shown note: counted, changed, taken back by them, or taken away by a moderator.

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::recorded::record;
use super::{Error, current, remarks, text};
use crate::db::{self, Database};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::elsewhere::is_elsewhere;
use crate::rules::notes::found::{Found, Sense};
use crate::rules::notes::pressure;
use crate::rules::notes::state::{Act, Refused};
use crate::rules::notes::{NoteId, VersionId};

/// One member's verdict on a note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// What they found.
    pub found: Found,
    /// In what material, as typed.
    pub material: String,
    /// At what size, as typed.
    pub size: String,
}

/// Counts what a member found of the wording that is shown; each has one verdict, and may change it. A verdict is shown
/// unread: why it was so is a remark of theirs, which waits as every remark does; empty says nothing. `read` is the
/// wording that was read; none stands for the one that is shown.
///
/// # Errors
/// The rules are against it, another wording is shown meanwhile, or the database cannot be written.
pub async fn judge(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    (note, read): (NoteId, Option<VersionId>),
    (verdict, why): (&Verdict, &str),
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let worked = verdict.found == Found::Worked;
    let shown_unread = format!("{} {}", verdict.material, verdict.size);
    // A word of one field and the next of another are a pair too.
    let heard = [shown_unread.clone(), format!("{shown_unread} {why}")];
    let heard = spawn_blocking(move || heard.map(|typed| pressure::subject(&typed))).await;
    let [said, with_why] = heard.map_err(|error| sqlx::Error::Io(error.into()))?;
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    // Whatever is said beside a note of pressure is read as being about that.
    let said = match current.state.shown {
        Some(shown) if !shown_unread.trim().is_empty() => shown.with(said),
        _ => said,
    };
    current.check(Act::Judge(said), by)?;
    let shown = current.shown.ok_or(Refused::NotShown)?;
    if read.is_some_and(|VersionId(read)| read != shown) {
        return Err(Error::OutOfDate);
    }
    let things = sqlx::query_scalar!("SELECT entry_id FROM note_entry WHERE version_id = ?", shown)
        .fetch_all(&mut *transaction)
        .await?;
    let is_elsewhere = is_elsewhere(&things, [&verdict.material, &verdict.size]);
    let changed = sqlx::query!(
        "INSERT INTO verdict (note_id, member_id, version_id, worked, material, size, is_elsewhere, made_at)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (note_id, member_id) DO UPDATE
         SET version_id = excluded.version_id, worked = excluded.worked, material = excluded.material,
             size = excluded.size, is_elsewhere = excluded.is_elsewhere, made_at = excluded.made_at
         WHERE version_id <> excluded.version_id OR worked <> excluded.worked
           OR material <> excluded.material OR size <> excluded.size",
        id,
        member,
        shown,
        worked,
        verdict.material,
        verdict.size,
        is_elsewhere,
        now
    )
    .execute(&mut *transaction)
    .await?;
    if changed.rows_affected() > 0 {
        confirm(&mut transaction, id).await?;
        let found = if worked { "worked" } else { "did not work" };
        record(&mut transaction, note, by, now, ("note-judged", found)).await?;
    }
    if !why.is_empty() {
        let is_warning = sqlx::query_scalar!(
            r#"SELECT is_warning AS "is_warning: bool" FROM note_version WHERE id = ?"#,
            shown
        )
        .fetch_one(&mut *transaction)
        .await?;
        let remark = format!("{}: {why}", Sense::of(is_warning).answer(verdict.found));
        remarks::send_in(&mut transaction, now, by, (note, &current), (&remark, with_why)).await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Takes a member's verdict away: their own, or another's by whoever moderates the note.
///
/// # Errors
/// As [`judge`].
pub async fn take_away(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    of: MemberId,
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, of);
    let (act, what) = if of == by.id {
        (Act::TakeBack, "note-verdict-taken-back")
    } else {
        (Act::TakeAway, "note-verdict-taken-away")
    };
    let mut transaction = database.write().await?;
    current::read(&mut transaction, note, by).await?.check(act, by)?;
    let gone = sqlx::query!("DELETE FROM verdict WHERE note_id = ? AND member_id = ?", id, member)
        .execute(&mut *transaction)
        .await?;
    if gone.rows_affected() > 0 {
        confirm(&mut transaction, id).await?;
        record(&mut transaction, note, by, now, (what, "")).await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Takes away every verdict of a member who leaves the club.
pub(in crate::db) async fn forget(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<(), db::Error> {
    let notes = sqlx::query_scalar!(
        r#"DELETE FROM verdict WHERE member_id = ? RETURNING note_id AS "note!: i64""#,
        member
    )
    .fetch_all(&mut **transaction)
    .await?;
    for note in notes {
        confirm(transaction, note).await?;
    }
    Ok(())
}

/// The note is marked by what members find of the wording that is shown now.
pub(super) async fn confirm(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), sqlx::Error> {
    sqlx::query!(
        "UPDATE note SET confirmed_at =
           (SELECT max(made_at) FROM verdict WHERE version_id = note.shown_version AND worked = 1
             AND NOT is_elsewhere)
         WHERE id = ?1",
        note
    )
    .execute(&mut **transaction)
    .await?;
    text::mark(transaction, note).await
}
