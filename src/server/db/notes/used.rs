//! What members said of the drills they used on a job.

use super::Error;
use crate::db::Database;
use crate::rules::notes::found::{Found, Sense};
use crate::rules::notes::used::{Judged, Said};

/// The most that is read: what was said last.
const MOST: i64 = 300;

/// What was said of drills in the shown notes that belong to one thing of each of these lists, and found of them, the
/// latest first. Left out are notes with a correction above them, and whoever has left the club: of several notes
/// nobody can tell whether one hand wrote them.
///
/// # Errors
/// The database cannot be read.
pub async fn said(database: &Database, things: [&[String]; 2]) -> Result<Vec<Said>, Error> {
    let [one, other] = things.map(|things| serde_json::to_string(things).unwrap_or_default());
    let rows = sqlx::query!(
        r#"WITH told AS (
               SELECT shown_note.id AS id, shown_note.version_id AS version_id
               FROM shown_note
               WHERE version_id IN (SELECT version_id FROM note_entry
                                    WHERE entry_id IN (SELECT value FROM json_each(?1)))
                 AND version_id IN (SELECT version_id FROM note_entry
                                    WHERE entry_id IN (SELECT value FROM json_each(?2)))
                 AND NOT is_corrected
           )
           SELECT told.id AS "note!: i64", version.drill AS "drill!: String",
               version.material AS "done_in!: String", version.thread AS "thread!: String",
               version.is_warning AS "is_warning!: bool", by_whom.member_id AS "member!: i64",
               by_whom.worked AS "worked?: bool", by_whom.material AS "material!: String",
               by_whom.size AS "size!: String"
           FROM told
           JOIN note_version AS version ON version.id = told.version_id
           JOIN (
               SELECT id AS note_id, shown_version AS version_id, author_id AS member_id, NULL AS worked,
                   '' AS material, '' AS size, shown_at AS said_at
               FROM note WHERE author_id IS NOT NULL
               UNION ALL
               SELECT note_id, version_id, member_id, worked, material, size, made_at FROM verdict
           ) AS by_whom ON by_whom.note_id = told.id AND by_whom.version_id = told.version_id
           ORDER BY by_whom.said_at DESC, told.id DESC LIMIT ?3"#,
        one,
        other,
        MOST
    )
    .fetch_all(&database.readers)
    .await?;
    let said = rows.into_iter().map(|row| Said {
        member: row.member,
        note: row.note,
        drill: row.drill,
        material: row.done_in,
        thread: row.thread,
        sense: Sense::of(row.is_warning),
        verdict: row.worked.map(|worked| Judged {
            found: if worked { Found::Worked } else { Found::DidNot },
            material: row.material,
            size: row.size,
        }),
    });
    Ok(said.collect())
}
