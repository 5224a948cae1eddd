//! What members remark on a shown note: sent in, decided about, taken back. The same words sent twice are one remark.

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::Error;
use super::author::Author;
use super::current::{self, CurrentNote, subject};
use super::recorded::record;
use crate::db::{self, Database, acts};
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::remarks::{self as rules, Below, State, WAIT_IN_ALL, WAIT_ON_NOTE};
use crate::rules::notes::state::{self, Others, StandIns, Subject, Who};
use crate::rules::notes::{NoteId, VersionId, pressure};

/// The most remarks that are listed at once.
pub const MOST: i64 = 50;
/// The most shown ones on the page of a note: the newest.
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
    /// Below whose note it stands.
    pub below: Below,
    /// Where it stands.
    pub state: State,
    /// Whose it is to pass.
    pub subject: Subject,
    /// As typed.
    pub text: String,
    /// When it was sent in.
    pub made_at: UnixSeconds,
}

/// The remarks to decide about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToDecide {
    /// Those on this page.
    pub listed: Vec<Listed>,
    /// The place of the first of them.
    pub from: i64,
    /// How many there are on all pages.
    pub all: i64,
    /// Who else could decide.
    pub stand_ins: StandIns,
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
    let said = pressure::subject(text);
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    let shown = current.shown.ok_or(state::Refused::NotShown);
    if read.is_some_and(|VersionId(read)| shown.is_ok_and(|shown| read != shown)) {
        current.check(state::Act::Remark(said), by)?;
        return Err(Error::OutOfDate);
    }
    send_in(&mut transaction, now, by, (note, &current), (text, said)).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// A remark on the wording that is shown, in words that speak of this, waits from now on.
pub(super) async fn send_in(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: &SignedIn,
    (note, current): (NoteId, &CurrentNote),
    (text, said): (&str, Subject),
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let act = state::Act::Remark(said);
    current.check(act, by)?;
    let shown = current.shown.ok_or(state::Refused::NotShown)?;
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
    .execute(&mut **transaction)
    .await?;
    if added.rows_affected() == 0 {
        return Ok(());
    }
    let wait = sqlx::query!(
        r#"SELECT count(*) AS "in_all!: i64", coalesce(sum(note_id = ?2), 0) AS "on_note!: i64"
           FROM remark WHERE member_id = ?1 AND state = 'waiting'"#,
        member,
        id
    )
    .fetch_one(&mut **transaction)
    .await?;
    if wait.on_note > WAIT_ON_NOTE {
        return Err(rules::Refused::ManyOnNote.into());
    }
    if wait.in_all > WAIT_IN_ALL {
        return Err(rules::Refused::ManyInAll.into());
    }
    record(transaction, note, by, now, ("note-remarked", text)).await?;
    Ok(())
}

/// A remark, what is done to it, and where it stood when that was decided, if that is known.
pub type Done = (i64, rules::Act, Option<State>);

/// Decides about a remark, or takes one back; the number of its note, and where it stood before.
///
/// # Errors
/// The rules are against it, or the database cannot be written.
pub async fn decide(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    (remark, act, read): Done,
    reason: &str,
) -> Result<(NoteId, State), Error> {
    let MemberId(member) = by.id;
    let mut transaction = database.write().await?;
    let row = sqlx::query!(
        r#"SELECT remark.note_id, remark.member_id, remark.state, note.author_id,
             remark.is_pressure OR coalesce(shown.is_pressure, 0) AS "is_pressure!: bool",
             EXISTS (SELECT 1 FROM member AS third
               WHERE third.id <> ?2 AND third.id IS NOT remark.member_id AND third.stopped_at IS NULL
                 AND CASE WHEN remark.is_pressure OR coalesce(shown.is_pressure, 0)
                   THEN third.is_inspector ELSE third.is_moderator OR third.is_secretary END)
               AS "third!: bool"
           FROM remark JOIN note ON note.id = remark.note_id
           LEFT JOIN note_version AS shown ON shown.id = note.shown_version
           WHERE remark.id = ?1"#,
        remark,
        member
    )
    .fetch_optional(&mut *transaction)
    .await?
    .ok_or(rules::Refused::NotYours)?;
    let subject = subject(row.is_pressure);
    let StandIns { moderators, inspectors } = current::stand_ins(&mut transaction, by.id).await?;
    let others = if subject == Subject::Pressure { inspectors } else { moderators };
    let who = Who { is_author: row.member_id == Some(member), rights: by.rights, others };
    let was = State::read(&row.state);
    let below = below(row.author_id == Some(member), row.third);
    let after = rules::after(act, (was, subject), below, who)?;
    rules::as_read(read, was)?;
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
    Ok((note, was))
}

const fn below(is_own: bool, third: bool) -> Below {
    match (is_own, third) {
        (false, _) => Below::Anothers,
        (true, true) => Below::Own(Others::Can),
        (true, false) => Below::Own(Others::Nobody),
    }
}

/// The remarks that this member decides about: those that wait; or of one note also those that are shown. Of those that
/// wait the first of each member before the second of any, the longest waiting first. From this place on; from the
/// first where there are not so many.
///
/// # Errors
/// The database cannot be read.
pub async fn to_decide(
    database: &Database,
    reader: &SignedIn,
    (of, from): (Option<NoteId>, i64),
) -> Result<ToDecide, Error> {
    let mut reading = database.readers.begin().await?;
    let stand_ins = current::stand_ins(&mut reading, reader.id).await?;
    let mut first = from;
    let (listed, all) = loop {
        let (listed, all) = page_of(&mut reading, reader, (of, first)).await?;
        if !listed.is_empty() || first == 0 {
            break (listed, all);
        }
        first = 0;
    };
    Ok(ToDecide { listed, from: first, all, stand_ins })
}

async fn page_of(
    reading: &mut Transaction<'_, Sqlite>,
    reader: &SignedIn,
    (of, from): (Option<NoteId>, i64),
) -> Result<(Vec<Listed>, i64), Error> {
    let (MemberId(own), of) = (reader.id, of.map(|NoteId(id)| id));
    let (moderates, inspects) =
        (reader.rights.may(Right::Moderate), reader.rights.may(Right::Inspect));
    let rows = sqlx::query!(
        r#"WITH turned AS (
             SELECT remark.*, shown.title, note.author_id,
               remark.is_pressure OR shown.is_pressure AS for_inspector,
               row_number() OVER (PARTITION BY remark.state, remark.member_id ORDER BY remark.id) AS turn
             FROM remark JOIN note ON note.id = remark.note_id
             JOIN note_version AS shown ON shown.id = note.shown_version
             WHERE note.withdrawn_at IS NULL
               AND (remark.state = 'waiting' OR (remark.note_id = ?1 AND remark.state = 'shown'))
               AND (?1 IS NULL OR remark.note_id = ?1)
               AND (?2 OR (?3 AND (remark.is_pressure OR shown.is_pressure)))),
           placed AS (
             SELECT turned.*, count(*) OVER () AS in_all, row_number() OVER (
               ORDER BY state = 'shown', CASE state WHEN 'shown' THEN 0 ELSE turn END, id) AS place
             FROM turned)
           SELECT placed.id AS "id!: i64", placed.note_id AS "note_id!: i64",
             placed.title AS "title!: String", member.name AS "by?: String",
             placed.member_id AS "member_id?: i64", placed.author_id AS "author_id?: i64",
             placed.state AS "state!: String", placed.text AS "text!: String",
             placed.made_at AS "made_at!: i64", placed.for_inspector AS "is_pressure!: bool",
             placed.in_all AS "in_all!: i64",
             EXISTS (SELECT 1 FROM member AS third
               WHERE third.id <> ?4 AND third.id IS NOT placed.member_id AND third.stopped_at IS NULL
                 AND CASE WHEN placed.for_inspector
                   THEN third.is_inspector ELSE third.is_moderator OR third.is_secretary END)
               AS "third!: bool"
           FROM placed LEFT JOIN member ON member.id = placed.member_id
           WHERE placed.place > ?5 AND placed.place <= ?5 + ?6 ORDER BY placed.place"#,
        of,
        moderates,
        inspects,
        own,
        from,
        MOST
    )
    .fetch_all(&mut **reading)
    .await?;
    let all = rows.first().map_or(0, |row| row.in_all);
    let listed = rows.into_iter().map(|row| Listed {
        id: row.id,
        note: row.note_id,
        title: row.title,
        by: row.by,
        is_own: row.member_id == Some(own),
        below: below(row.author_id == Some(own), row.third),
        state: State::read(&row.state),
        subject: subject(row.is_pressure),
        text: row.text,
        made_at: row.made_at,
    });
    Ok((listed.collect(), all))
}

/// The newest on one note that were not taken back, oldest first: of the shown ones those that go on a page, and apart
/// from them those that wait or were not taken. What waits keeps nothing that is shown away.
pub(super) async fn of_note(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
) -> Result<Vec<Remark>, Error> {
    let rows = sqlx::query!(
        r#"SELECT remark.id AS "id!: i64", remark.state AS "state!: String",
             remark.is_pressure AS "is_pressure!: bool", remark.version_id AS "version_id!: i64",
             remark.text AS "text!: String", remark.made_at AS "made_at!: i64",
             remark.reason AS "reason!: String",
             member.id AS "by?: i64", member.name AS "name?: String"
           FROM (
             SELECT * FROM (SELECT * FROM remark WHERE note_id = ?1 AND state = 'shown'
                            ORDER BY id DESC LIMIT ?2)
             UNION ALL
             SELECT * FROM (SELECT * FROM remark WHERE note_id = ?1 AND state IN ('waiting', 'declined')
                            ORDER BY id DESC LIMIT ?3)) AS remark
           LEFT JOIN member ON member.id = remark.member_id"#,
        note,
        ON_PAGE,
        WAIT_IN_ALL
    )
    .fetch_all(&mut **transaction)
    .await?;
    let remarks = rows.into_iter().map(|row| Remark {
        id: row.id,
        by: row.by.zip(row.name).map(|(id, name)| Author { id: MemberId(id), name }),
        state: State::read(&row.state),
        subject: subject(row.is_pressure),
        of: VersionId(row.version_id),
        text: row.text,
        made_at: row.made_at,
        reason: row.reason,
    });
    let mut remarks: Vec<Remark> = remarks.collect();
    remarks.sort_by_key(|remark| remark.id);
    Ok(remarks)
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
