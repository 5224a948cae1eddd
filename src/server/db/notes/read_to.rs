//! What whoever decides has read beside the wording: the reports on it, and the corrections above it.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::rules::notes::NoteId;

/// What was read around the wording: the newest report and the newest correction, none as 0.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ReadTo {
    /// The number of the newest open report.
    pub report: i64,
    /// The number of the newest correction.
    pub correction: i64,
}

/// Refuses whoever has not read every open report on the note and every correction that stands above it.
pub(super) async fn check_read(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
    read_to: ReadTo,
) -> Result<(), Error> {
    let is_unread = sqlx::query_scalar!(
        r#"SELECT EXISTS (SELECT 1 FROM safety_report
             WHERE note_id = ?1 AND id > ?2 AND settled_at IS NULL)
           OR EXISTS (SELECT 1 FROM correction JOIN note ON note.id = correction.note_id
             WHERE note_id = ?1 AND correction.id > ?3 AND correction.made_at >= note.shown_at)
             AS "is_unread!: bool""#,
        note,
        read_to.report,
        read_to.correction
    )
    .fetch_one(&mut **transaction)
    .await?;
    if is_unread { Err(Error::OutOfDate) } else { Ok(()) }
}
