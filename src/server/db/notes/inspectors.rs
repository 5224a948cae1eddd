//! The inspectors, and the notes that wait for one.

use super::Error;
use crate::db::{Database, people};
use crate::rules::auth::MemberId;
use crate::rules::notes::inspection::Inspector;

/// Every inspector who can sign in.
///
/// # Errors
/// The database cannot be read.
pub async fn all(database: &Database) -> Result<Vec<Inspector>, Error> {
    let rows = sqlx::query!(
        "SELECT id, is_moderator, is_inspector, is_secretary FROM member
         WHERE is_inspector = 1 AND stopped_at IS NULL ORDER BY id"
    )
    .fetch_all(&database.readers)
    .await?;
    let inspector = rows.into_iter().map(|row| Inspector {
        id: MemberId(row.id),
        rights: people::rights(row.is_moderator, row.is_inspector, row.is_secretary),
    });
    Ok(inspector.collect())
}

/// The notes that wait for an inspector, each as its author; none for one who has left the club. A note
/// waits because a wording of it does, or because a report hides it.
///
/// # Errors
/// The database cannot be read.
pub async fn awaiting(database: &Database) -> Result<Vec<Option<MemberId>>, Error> {
    let authors = sqlx::query_scalar!(
        r#"SELECT note.author_id AS "author: i64" FROM note_version AS version
           JOIN note ON note.id = version.note_id
           WHERE version.state = 'waiting' AND version.is_pressure = 1
             AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL
           UNION ALL
           SELECT note.author_id FROM note JOIN note_version AS shown ON shown.id = note.shown_version
           WHERE note.hidden_at IS NOT NULL AND note.withdrawn_at IS NULL AND (shown.is_pressure = 1
             OR EXISTS (SELECT 1 FROM safety_report WHERE note_id = note.id AND settled_at IS NULL
                          AND kind <> 'usual'))"#
    )
    .fetch_all(&database.readers)
    .await?;
    Ok(authors.into_iter().map(|author| author.map(MemberId)).collect())
}
