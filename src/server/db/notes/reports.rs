//! Reports of danger by whoever sent them: how many a member sent of late, and all of one member's settled
//! at once.

use serde::Deserialize;
use sqlx::{Sqlite, Transaction};

use super::read_to::{ReadTo, check_read};
use super::recorded::record;
use super::{Error, current, text};
use crate::db::Database;
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::reports::{DAY, may_report, may_settle_own};
use crate::rules::notes::state::{Act, StandIns};
use crate::rules::notes::{NoteId, VersionId};

/// A member who reported several notes that are hidden by it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sender {
    /// Who.
    pub member: MemberId,
    /// Their name.
    pub name: String,
    /// The notes, those reported first before the others.
    pub notes: Vec<Reported>,
    /// Their newest report: what comes later was not read.
    pub last: i64,
}

/// A note that is hidden by a report.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct Reported {
    /// Its number.
    pub id: i64,
    /// Its title.
    pub title: String,
    /// The wording that was reported.
    pub version: i64,
    /// The newest correction of it, none as 0.
    pub correction: i64,
}

/// The reports of one member, read up to this one.
#[derive(Clone, Copy, Debug)]
pub struct Of {
    /// Who sent them.
    pub member: MemberId,
    /// The newest that was read.
    pub last: i64,
}

/// A note as it stood when the reports were read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AsRead {
    /// The note.
    pub note: NoteId,
    /// The wording that was reported.
    pub version: VersionId,
    /// The newest correction of it, none as 0.
    pub correction: i64,
}

/// How many notes of one member are settled at once.
pub const MOST_AT_ONCE: usize = 50;

/// Settles every open report on the note.
pub(super) async fn settle(
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

/// Keeps that the note shows again, with the report that had hidden it.
pub(super) async fn showed(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    note: i64,
) -> Result<(), Error> {
    sqlx::query!(
        "UPDATE safety_report SET showed_at = ?1
         WHERE id = (SELECT max(id) FROM safety_report WHERE note_id = ?2 AND hid = 1)",
        now,
        note
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Whoever shows a reported wording on pressure again is an inspector, and has read it.
pub(super) async fn inspected(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    version: i64,
) -> Result<(), Error> {
    sqlx::query!(
        "UPDATE note_version SET inspected_at = ? WHERE id = ? AND is_pressure = 1",
        now,
        version
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Refuses another report by a member who has sent as many as one may in a day.
pub(super) async fn check(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: &SignedIn,
) -> Result<(), Error> {
    let MemberId(member) = by.id;
    // Neither a clock that was put forward nor one that was put back shuts anybody out for longer.
    let (from, until) = (now - DAY, now + DAY);
    let sent = sqlx::query_scalar!(
        r#"SELECT count(*) AS "sent!: i64" FROM safety_report
           WHERE member_id = ? AND made_at > ? AND made_at < ?"#,
        member,
        from,
        until
    )
    .fetch_one(&mut **transaction)
    .await?;
    if may_report(sent, by.rights) { Ok(()) } else { Err(Error::TooManyReports) }
}

/// The members who hid two notes or more that this one may show again, whoever hid most first; not this one, where
/// somebody else could look.
///
/// # Errors
/// The database cannot be read.
pub async fn senders(
    database: &Database,
    reader: &SignedIn,
    others: StandIns,
) -> Result<Vec<Sender>, Error> {
    let may_own = may_settle_own(reader.rights, others);
    let (moderates, inspects) =
        (reader.rights.may(Right::Moderate), reader.rights.may(Right::Inspect));
    let MemberId(own) = reader.id;
    let rows = sqlx::query!(
        r#"SELECT member.id AS "member!: i64", member.name AS "name!: String",
             max(of_it.last) AS "last!: i64",
             json_group_array(json_object('id', of_it.id, 'title', of_it.title, 'version', of_it.version,
               'correction', of_it.correction)) AS "notes!: String"
           FROM (
             SELECT report.member_id, note.id, shown.title, shown.id AS version, max(report.id) AS last,
               coalesce((SELECT max(correction.id) FROM correction
                         WHERE correction.note_id = note.id), 0) AS correction
             FROM safety_report AS report
             JOIN note ON note.id = report.note_id
             JOIN note_version AS shown ON shown.id = note.shown_version
             WHERE report.settled_at IS NULL AND note.hidden_at IS NOT NULL
               AND note.withdrawn_at IS NULL AND note.author_id IS NOT ?3
               AND iif(shown.is_pressure = 1 OR EXISTS (
                 SELECT 1 FROM safety_report AS other WHERE other.note_id = note.id
                   AND other.settled_at IS NULL AND other.kind <> 'usual'), ?2, ?1)
             GROUP BY report.member_id, note.id ORDER BY last
           ) AS of_it
           JOIN member ON member.id = of_it.member_id
           GROUP BY member.id HAVING count(*) > 1 ORDER BY count(*) DESC, member.id"#,
        moderates,
        inspects,
        own
    )
    .fetch_all(&database.readers)
    .await?;
    let sender = |notes: Vec<Reported>, (member, name, last)| Sender {
        member: MemberId(member),
        name,
        notes,
        last,
    };
    rows.into_iter()
        .filter(|row| may_own || row.member != own)
        .map(|row| {
            let notes = serde_json::from_str(&row.notes);
            let notes = notes.map_err(|error| sqlx::Error::Decode(error.into()))?;
            Ok(sender(notes, (row.member, row.name, row.last)))
        })
        .collect()
}

/// Settles every report of a member's that was read: a note shows again where no other report is open on
/// it. Left as they are: notes that this member may not show, and those of which another wording is shown or
/// another correction stands meanwhile. How many reports were settled.
///
/// # Errors
/// The database cannot be written.
pub async fn settle_all(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    of: Of,
    notes: &[AsRead],
) -> Result<u64, Error> {
    let (MemberId(reader), MemberId(sender)) = (by.id, of.member);
    let mut transaction = database.write().await?;
    let mut settled = 0;
    let stand_ins = current::stand_ins(&mut transaction, by.id).await?;
    if sender == reader && !may_settle_own(by.rights, stand_ins) {
        return Ok(0);
    }
    for AsRead { note, version, correction } in notes.iter().take(MOST_AT_ONCE).copied() {
        let NoteId(id) = note;
        let current = match current::one_of_many(&mut transaction, note, by, stand_ins).await {
            Err(Error::Nothing) => continue,
            current => current?,
        };
        if current.check(Act::Settle, by).is_err() || current.shown != Some(version.0) {
            continue;
        }
        // Of the reports only this member's are settled, up to the one that was read.
        let read_to = ReadTo { report: i64::MAX, correction };
        match check_read(&mut transaction, note, read_to).await {
            Err(Error::OutOfDate) => continue,
            read => read?,
        }
        let done = sqlx::query!(
            "UPDATE safety_report SET settled_at = ?, settled_by = ?
             WHERE note_id = ? AND member_id = ? AND id <= ? AND settled_at IS NULL",
            now,
            reader,
            id,
            sender,
            of.last
        )
        .execute(&mut *transaction)
        .await?;
        if done.rows_affected() == 0 {
            continue;
        }
        settled += done.rows_affected();
        let shows = sqlx::query!(
            "UPDATE note SET hidden_at = NULL WHERE id = ?1 AND NOT EXISTS (
               SELECT 1 FROM safety_report WHERE note_id = ?1 AND settled_at IS NULL)",
            id
        )
        .execute(&mut *transaction)
        .await?;
        if shows.rows_affected() > 0 {
            inspected(&mut transaction, now, version.0).await?;
            showed(&mut transaction, now, id).await?;
            text::follow(&mut transaction, id).await?;
        }
        record(&mut transaction, note, by, now, ("note-report-settled", "")).await?;
    }
    database.commit(transaction).await?;
    Ok(settled)
}
