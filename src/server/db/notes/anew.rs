//! The stored wordings judged anew by rules of pressure that have changed since. What is heard now and was not
//! before is the inspector's: what waits goes to them, and what is shown is hidden until they have looked.

use std::time::{Duration, Instant};

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::read::{self, Note, WordingState};
use super::{Error, remarks, text};
use crate::db::{Database, acts};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::state::Subject;
use crate::rules::notes::{NoteId, VersionId};

/// How many wordings are judged at once.
const BATCH: i64 = 100;
/// Why a note is hidden.
const UNREAD: &str = "Its words are now heard to speak of boilers, steam or pressure, and no inspector has read it. \
    To be safe it is hidden until an inspector has looked.";

/// How far it came.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Judged {
    /// How many were heard that were not before.
    pub heard: usize,
    /// Whether some are left.
    pub is_more: bool,
}

/// One wording that is heard now.
struct Heard {
    note: i64,
    version: i64,
    is_shown: bool,
}

/// Judges what was judged by other rules, for so long. What is left comes with the next call.
///
/// # Errors
/// The database cannot be read or written.
pub async fn judge(
    database: &Database,
    now: UnixSeconds,
    rule: &str,
    time: Duration,
) -> Result<Judged, Error> {
    let began = Instant::now();
    let mut judged = Judged::default();
    loop {
        let last = sqlx::query!("SELECT rule, judged_up_to FROM pressure_rule WHERE id = 1")
            .fetch_one(&database.readers)
            .await?;
        let up_to = if last.rule == rule { last.judged_up_to } else { 0 };
        if up_to == i64::MAX {
            return Ok(judged);
        }
        let (heard, up_to) = batch(database, up_to).await?;
        judged.heard += heard.len();
        let mut transaction = database.write().await?;
        for heard in heard {
            give_to_the_inspector(&mut transaction, now, heard).await?;
        }
        // The remarks are few and short: all at once, behind the last of the wordings.
        if up_to == i64::MAX {
            judged.heard += remarks::judge(&mut transaction, now).await?;
        }
        sqlx::query!(
            "UPDATE pressure_rule SET rule = ?, judged_up_to = ? WHERE id = 1",
            rule,
            up_to
        )
        .execute(&mut *transaction)
        .await?;
        database.commit(transaction).await?;
        if began.elapsed() >= time {
            return Ok(Judged { is_more: up_to != i64::MAX, ..judged });
        }
    }
}

/// Those of the next wordings that are heard, and up to which they were judged. What an inspector turned back to a
/// usual note stays one.
async fn batch(database: &Database, up_to: i64) -> Result<(Vec<Heard>, i64), Error> {
    let mut reading = database.readers.begin().await?;
    let rows = sqlx::query!(
        "SELECT version.id, version.note_id FROM note_version AS version
         JOIN note ON note.id = version.note_id
         WHERE version.id > ? AND version.state IN ('waiting', 'shown') AND version.is_pressure = 0
           AND version.turned_back_at IS NULL AND note.withdrawn_at IS NULL
         ORDER BY version.id LIMIT ?",
        up_to,
        BATCH
    )
    .fetch_all(&mut *reading)
    .await?;
    let is_full = i64::try_from(rows.len()).is_ok_and(|count| count == BATCH);
    let last = rows.last().filter(|_| is_full).map_or(i64::MAX, |row| row.id);
    let mut notes = Vec::with_capacity(rows.len());
    for row in rows {
        let note = read::within(&mut reading, NoteId(row.note_id)).await?;
        notes.extend(note.map(|note| (note, VersionId(row.id))));
    }
    let work = move || notes.iter().filter_map(|(note, version)| heard(note, *version)).collect();
    let heard = spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?;
    Ok((heard, last))
}

fn heard(note: &Note, version: VersionId) -> Option<Heard> {
    let judged = note.versions.iter().find(|held| held.id == version)?;
    let is_shown = judged.state == WordingState::Shown;
    let above: Vec<&str> = match is_shown {
        true => note.standing_corrections().map(|said| said.text.as_str()).collect(),
        false => Vec::new(),
    };
    let is_heard = judged.wording.heard(&above) == Subject::Pressure;
    is_heard.then_some(Heard { note: note.id.0, version: version.0, is_shown })
}

async fn give_to_the_inspector(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    Heard { note, version, is_shown }: Heard,
) -> Result<(), Error> {
    // It may have been decided about since it was read.
    let changed = sqlx::query!(
        "UPDATE note_version SET is_pressure = 1 WHERE id = ? AND is_pressure = 0
           AND turned_back_at IS NULL AND state IN ('waiting', 'shown')",
        version
    )
    .execute(&mut **transaction)
    .await?;
    if changed.rows_affected() == 0 {
        return Ok(());
    }
    let subject = format!("note/{note}");
    acts::record(transaction, now, None, "note-heard", &subject, "").await?;
    if !is_shown {
        return Ok(());
    }
    // What takes the place of a text that is the inspector's is the inspector's too.
    sqlx::query!(
        "UPDATE note_version SET is_pressure = 1 WHERE note_id = ? AND state = 'waiting'",
        note
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "INSERT INTO safety_report (note_id, kind, text, made_at, hid)
         SELECT id, 'unread', ?, ?, hidden_at IS NULL FROM note WHERE id = ?",
        UNREAD,
        now,
        note
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!("UPDATE note SET hidden_at = coalesce(hidden_at, ?) WHERE id = ?", now, note)
        .execute(&mut **transaction)
        .await?;
    text::follow(transaction, note).await
}
