//! What is open for a member: notes of their own that they are asked to change, what is new to them, what waits for
//! their decision, and the slips that nobody used.

use crate::db::{Database, Error};
use crate::rules::auth::{MemberId, Right, Rights};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::news::NewsKind;
use crate::rules::notes::open::{MOST_NEWS, Open};

/// Whose it is.
#[derive(Clone, Copy, Debug)]
pub struct Whose {
    /// Who.
    pub id: MemberId,
    /// What they may do.
    pub rights: Rights,
    /// Up to when they have read what is new.
    pub news_read_at: UnixSeconds,
}

/// What is open for a member.
///
/// # Errors
/// The database cannot be read.
pub async fn of(
    database: &Database,
    now: UnixSeconds,
    Whose { id: MemberId(id), rights, news_read_at }: Whose,
) -> Result<Open, Error> {
    let (moderates, inspects) = (rights.may(Right::Moderate), rights.may(Right::Inspect));
    // What a member wrote themselves is not theirs to decide, but for a secretary where nobody else could; nor is a
    // remark on their own note, where somebody could who did not make it. As the rules have it. For who decides
    // nothing, none of it is looked for.
    let manages = rights.may(Right::Manage);
    let (most, asked) = (MOST_NEWS + 1, NewsKind::Change.word());
    // Both states are named where one is meant: the index of what is on its way knows them so.
    let row = sqlx::query!(
        r#"WITH alone (usual, pressure) AS (
             SELECT iif(?4, NOT EXISTS (SELECT 1 FROM member WHERE id <> ?1 AND stopped_at IS NULL
                 AND (is_moderator = 1 OR is_secretary = 1)), 0),
               iif(?4, NOT EXISTS (SELECT 1 FROM member WHERE id <> ?1 AND stopped_at IS NULL
                 AND is_inspector = 1), 0)),
           waits (what, at) AS (
             SELECT 'note', version.saved_at
             FROM note_version AS version JOIN note ON note.id = version.note_id, alone
             WHERE (?2 OR ?3) AND version.state = 'waiting' AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL
               AND (note.author_id IS NOT ?1 OR iif(version.is_pressure, alone.pressure, alone.usual))
               AND (?2 OR (?3 AND version.is_pressure = 1))
             UNION ALL
             SELECT 'note', note.hidden_at
             FROM note JOIN note_version AS shown ON shown.id = note.shown_version, alone
             WHERE (?2 OR ?3) AND note.hidden_at IS NOT NULL AND note.withdrawn_at IS NULL
               AND (note.author_id IS NOT ?1 OR iif(shown.is_pressure OR EXISTS (
                 SELECT 1 FROM safety_report AS report WHERE report.note_id = note.id
                   AND report.settled_at IS NULL AND report.kind <> 'usual'), alone.pressure, alone.usual))
               AND (?2 OR (?3 AND (shown.is_pressure = 1 OR EXISTS (
                 SELECT 1 FROM safety_report AS report WHERE report.note_id = note.id
                   AND report.settled_at IS NULL AND report.kind <> 'usual'))))
             UNION ALL
             SELECT 'remark', remark.made_at
             FROM remark JOIN note ON note.id = remark.note_id
             JOIN note_version AS shown ON shown.id = note.shown_version, alone
             WHERE (?2 OR ?3) AND remark.state = 'waiting' AND note.withdrawn_at IS NULL
               AND (remark.member_id IS NOT ?1
                 OR iif(remark.is_pressure OR shown.is_pressure, alone.pressure, alone.usual))
               AND (note.author_id IS NOT ?1 OR NOT EXISTS (SELECT 1 FROM member AS third
                 WHERE third.id <> ?1 AND third.id IS NOT remark.member_id AND third.stopped_at IS NULL
                   AND iif(remark.is_pressure OR shown.is_pressure,
                     third.is_inspector, third.is_moderator OR third.is_secretary)))
               AND (?2 OR (?3 AND (remark.is_pressure = 1 OR shown.is_pressure = 1)))
           )
           SELECT
             (SELECT count(*) FROM note JOIN note_version AS version ON version.note_id = note.id
              WHERE note.author_id = ?1 AND note.withdrawn_at IS NULL
                AND version.state IN ('draft', 'waiting') AND version.state = 'draft'
                AND version.reason <> '') AS "asked!: i64",
             (SELECT count(*) FROM (SELECT 1 FROM concern WHERE member_id = ?1 AND at > ?5
                AND kind <> ?8 AND by_id IS NOT ?1 LIMIT ?7)) AS "news!: i64",
             iif(?4, (SELECT count(*) FROM slip WHERE used_at IS NULL AND ends_at <= ?6
                AND made_by IS NOT NULL), 0) AS "slips!: i64",
             (SELECT count(*) FROM waits WHERE what = 'note') AS "notes!: i64",
             (SELECT count(*) FROM waits WHERE what = 'remark') AS "remarks!: i64",
             coalesce((SELECT max(at) FROM waits), 0) AS "newest!: i64""#,
        id,
        moderates,
        inspects,
        manages,
        news_read_at,
        now,
        most,
        asked
    )
    .fetch_one(&database.readers)
    .await?;
    Ok(Open {
        asked: row.asked,
        news: row.news,
        notes: row.notes,
        remarks: row.remarks,
        newest: row.newest,
        slips: manages.then_some(row.slips),
    })
}
