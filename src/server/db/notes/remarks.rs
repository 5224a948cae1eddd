//! What members remark on a shown note: sent in, decided about, taken back. The same words sent twice are one remark.

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::Error;
use super::author::Author;
use super::current::{self, subject};
use super::recorded::record;
use crate::db::{self, Database, acts};
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::remarks::{self as rules, State};
use crate::rules::notes::state::{self, StandIns, Subject, Who};
use crate::rules::notes::{NoteId, VersionId, pressure};

/// The most remarks that are listed at once.
pub const MOST: i64 = 50;
/// The most on the page of a note: the newest.
pub const ON_PAGE: i64 = 100;

/// A remark beside its note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// Its number.
    pub id: i64,
    /// Whose it is; none where they have left the club.
    pub by: Option<Author>,
    /// Where it stands.
    pub state: State,
    /// What it speaks of.
    pub subject: Subject,
    /// The wording it was made on.
    pub of: VersionId,
    /// As typed.
    pub text: String,
    /// When it was sent in.
    pub made_at: UnixSeconds,
    /// Why it was not taken.
    pub reason: String,
}

/// A remark to decide about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Its number.
    pub id: i64,
    /// The note.
    pub note: i64,
    /// What that is called.
    pub title: String,
    /// Whose it is; none where they have left the club.
    pub by: Option<String>,
    /// Whether it is the reader's own.
    pub is_own: bool,
    /// Where it stands.
    pub state: State,
    /// Whose it is to pass.
    pub subject: Subject,
    /// As typed.
    pub text: String,
    /// When it was sent in.
    pub made_at: UnixSeconds,
}

/// Sends a remark in on the wording that is shown. `read` is the wording that was read; none stands for the one that
/// is shown.
///
/// # Errors
/// The rules are against it, another wording is shown meanwhile, or the database cannot be written.
pub async fn add(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    (note, read): (NoteId, Option<VersionId>),
    text: &str,
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let act = state::Act::Remark(pressure::subject(text));
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    current.check(act, by)?;
    let shown = current.shown.ok_or(state::Refused::NotShown)?;
    if read.is_some_and(|VersionId(read)| read != shown) {
        return Err(Error::OutOfDate);
    }
    // On a note that is the inspector's a remark is too.
    let is_pressure = current.state.asks(act) == Subject::Pressure;
    let added = sqlx::query!(
        "INSERT INTO remark (note_id, version_id, member_id, is_pressure, text, made_at)
         VALUES (?, ?, ?, ?, ?, ?)
         ON CONFLICT (note_id, member_id, text) WHERE state IN ('waiting', 'shown') DO NOTHING",
        id,
        shown,
        member,
        is_pressure,
        text,
        now
    )
    .execute(&mut *transaction)
    .await?;
    if added.rows_affected() > 0 {
        record(&mut transaction, note, by, now, ("note-remarked", text)).await?;
    }
    database.commit(transaction).await?;
    Ok(())
}

/// Decides about a remark, or takes one back; the number of its note.
///
/// # Errors
/// The rules are against it, or the database cannot be written.
pub async fn decide(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    (remark, act): (i64, rules::Act),
    reason: &str,
) -> Result<NoteId, Error> {
    let MemberId(member) = by.id;
    let mut transaction = database.write().await?;
    let row = sqlx::query!(
        r#"SELECT remark.note_id, remark.member_id, remark.state,
             remark.is_pressure OR coalesce(shown.is_pressure, 0) AS "is_pressure!: bool"
           FROM remark JOIN note ON note.id = remark.note_id
           LEFT JOIN note_version AS shown ON shown.id = note.shown_version
           WHERE remark.id = ?"#,
        remark
    )
    .fetch_optional(&mut *transaction)
    .await?
    .ok_or(rules::Refused::NotYours)?;
    let subject = subject(row.is_pressure);
    let StandIns { moderators, inspectors } = current::stand_ins(&mut transaction, by.id).await?;
    let others = if subject == Subject::Pressure { inspectors } else { moderators };
    let who = Who { is_author: row.member_id == Some(member), rights: by.rights, others };
    let after = rules::after(act, (State::read(&row.state), subject), who)?;
    let word = after.word();
    match act {
        rules::Act::TakeBack => {
            sqlx::query!("UPDATE remark SET state = ? WHERE id = ?", word, remark)
                .execute(&mut *transaction)
                .await?;
        }
        rules::Act::Show | rules::Act::Decline => {
            let is_pressure = row.is_pressure;
            sqlx::query!(
                "UPDATE remark SET state = ?, is_pressure = ?, decided_at = ?, decided_by = ?, reason = ?
                 WHERE id = ?",
                word,
                is_pressure,
                now,
                member,
                reason,
                remark
            )
            .execute(&mut *transaction)
            .await?;
        }
    }
    let what = match act {
        rules::Act::Show => "note-remark-shown",
        rules::Act::Decline => "note-remark-declined",
        rules::Act::TakeBack => "note-remark-taken-back",
    };
    let note = NoteId(row.note_id);
    record(&mut transaction, note, by, now, (what, reason)).await?;
    database.commit(transaction).await?;
    Ok(note)
}

/// The remarks that this member decides about, the longest waiting first: those that wait; or of one note also those
/// that are shown. And who else could decide.
///
/// # Errors
/// The database cannot be read.
pub async fn to_decide(
    database: &Database,
    reader: &SignedIn,
    of: Option<NoteId>,
) -> Result<(Vec<Listed>, StandIns), Error> {
    let mut reading = database.readers.begin().await?;
    let stand_ins = current::stand_ins(&mut reading, reader.id).await?;
    let (MemberId(own), of) = (reader.id, of.map(|NoteId(id)| id));
    let (moderates, inspects) =
        (reader.rights.may(Right::Moderate), reader.rights.may(Right::Inspect));
    let rows = sqlx::query!(
        r#"SELECT remark.id, remark.note_id, shown.title AS "title!: String",
             member.name AS "by?: String", remark.member_id, remark.state, remark.text,
             remark.made_at,
             remark.is_pressure OR shown.is_pressure AS "is_pressure!: bool"
           FROM remark JOIN note ON note.id = remark.note_id
           JOIN note_version AS shown ON shown.id = note.shown_version
           LEFT JOIN member ON member.id = remark.member_id
           WHERE note.withdrawn_at IS NULL
             AND (remark.state = 'waiting' OR (remark.note_id = ?1 AND remark.state = 'shown'))
             AND (?1 IS NULL OR remark.note_id = ?1)
             AND (?2 OR (?3 AND (remark.is_pressure OR shown.is_pressure)))
           ORDER BY remark.state = 'shown', remark.id LIMIT ?4"#,
        of,
        moderates,
        inspects,
        MOST
    )
    .fetch_all(&mut *reading)
    .await?;
    let listed = rows.into_iter().map(|row| Listed {
        id: row.id,
        note: row.note_id,
        title: row.title,
        by: row.by,
        is_own: row.member_id == Some(own),
        state: State::read(&row.state),
        subject: subject(row.is_pressure),
        text: row.text,
        made_at: row.made_at,
    });
    Ok((listed.collect(), stand_ins))
}

/// The newest on one note that were not taken back, oldest first.
pub(super) async fn of_note(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
) -> Result<Vec<Remark>, Error> {
    let rows = sqlx::query!(
        r#"SELECT remark.id, remark.state, remark.is_pressure AS "is_pressure: bool",
             remark.version_id, remark.text, remark.made_at, remark.reason,
             member.id AS "by?: i64", member.name AS "name?: String"
           FROM remark LEFT JOIN member ON member.id = remark.member_id
           WHERE remark.note_id = ? AND remark.state <> 'withdrawn'
           ORDER BY remark.id DESC LIMIT ?"#,
        note,
        ON_PAGE
    )
    .fetch_all(&mut **transaction)
    .await?;
    let remarks = rows.into_iter().rev().map(|row| Remark {
        id: row.id,
        by: row.by.zip(row.name).map(|(id, name)| Author { id: MemberId(id), name }),
        state: State::read(&row.state),
        subject: subject(row.is_pressure),
        of: VersionId(row.version_id),
        text: row.text,
        made_at: row.made_at,
        reason: row.reason,
    });
    Ok(remarks.collect())
}

/// What was remarked on a note goes with it.
pub(super) async fn withdraw_with(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), sqlx::Error> {
    sqlx::query!(
        "UPDATE remark SET state = 'withdrawn' WHERE note_id = ? AND state IN ('waiting', 'shown')",
        note
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Of a member who leaves the club what was shown stays, without a name, where their notes do; all else goes.
pub(in crate::db) async fn forget(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
    keeps_shown: bool,
) -> Result<(), db::Error> {
    sqlx::query!(
        "DELETE FROM remark WHERE member_id = ? AND NOT (?2 AND state = 'shown')",
        member,
        keeps_shown
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// Judges the remarks by new rules of pressure: what is heard now waits for the inspector, also where it was shown. How
/// many were heard.
pub(super) async fn judge(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
) -> Result<usize, Error> {
    let rows = sqlx::query!(
        "SELECT id, note_id, text FROM remark
         WHERE is_pressure = 0 AND state IN ('waiting', 'shown') ORDER BY id"
    )
    .fetch_all(&mut **transaction)
    .await?;
    let work = move || {
        let heard = rows.into_iter().filter(|row| pressure::speaks_of_it(&row.text));
        heard.map(|row| (row.id, row.note_id)).collect::<Vec<_>>()
    };
    let heard = spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?;
    for (remark, note) in &heard {
        sqlx::query!("UPDATE remark SET is_pressure = 1, state = 'waiting' WHERE id = ?", remark)
            .execute(&mut **transaction)
            .await?;
        let subject = format!("note/{note}");
        acts::record(transaction, now, None, "note-heard", &subject, "a remark").await?;
    }
    Ok(heard.len())
}
