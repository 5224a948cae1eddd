//! The last decision about a note, which whoever made it can take back for a minute. Its rows are kept as they
//! stood before; the database forgets them as soon as anything else happens to the note.

use serde::Deserialize;
use sqlx::{Sqlite, Transaction};

use super::current::subject;
use super::decided::What;
use super::recorded::record;
use super::{Error, current, text};
use crate::db::Database;
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;
use crate::rules::notes::decision::Undoable;
use crate::rules::notes::state::{Act, Last, NoteState, OnItsWay, Refused, UNDO};

/// The rows of a note as JSON, before something is decided about it.
#[derive(Clone, Debug)]
pub(super) struct Before(String);

/// What of them says how the note stood.
#[derive(Deserialize)]
struct Stood {
    hidden_at: Option<i64>,
    for_inspector: i64,
    versions: Vec<StoodVersion>,
}

#[derive(Deserialize)]
struct StoodVersion {
    state: String,
    is_pressure: i64,
}

impl Stood {
    fn state(&self) -> NoteState {
        let in_state = |state: &str| {
            let found = self.versions.iter().find(|version| version.state == state);
            found.map(|version| subject(version.is_pressure == 1))
        };
        let draft = in_state("draft").map(|_| OnItsWay::Draft);
        NoteState {
            on_its_way: in_state("waiting").map(OnItsWay::Waiting).or(draft),
            shown: in_state("shown"),
            hidden: self.hidden_at.map(|_| subject(self.for_inspector == 1)),
            is_withdrawn: false,
        }
    }
}

/// Reads the rows, in the transaction that is about to decide.
pub(super) async fn before(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
) -> Result<Before, Error> {
    let before = sqlx::query_scalar!(
        r#"SELECT json_object(
             'shown_version', shown_version, 'shown_at', shown_at, 'hidden_at', hidden_at,
             'confirmed_at', confirmed_at,
             'for_inspector', EXISTS (SELECT 1 FROM safety_report WHERE note_id = note.id
               AND settled_at IS NULL AND kind <> 'usual'),
             'newest', (SELECT max(id) FROM note_version WHERE note_id = note.id),
             'asked', coalesce((SELECT max(id) FROM change_asked WHERE note_id = note.id), 0),
             'versions', json((SELECT json_group_array(json_object('id', id, 'state', state,
                 'is_pressure', is_pressure, 'decided_at', decided_at, 'decided_by', decided_by,
                 'reason', reason, 'turned_back_at', turned_back_at, 'inspected_at', inspected_at))
               FROM note_version WHERE note_id = note.id AND state IN ('draft', 'waiting', 'shown'))),
             'reports', json((SELECT json_group_array(id) FROM safety_report
               WHERE note_id = note.id AND settled_at IS NULL))) AS "before!: String"
           FROM note WHERE id = ?"#,
        note
    )
    .fetch_one(&mut **transaction)
    .await?;
    Ok(Before(before))
}

/// Keeps them for the minute, in the transaction that has decided, when all else in it is done.
pub(super) async fn keep(
    transaction: &mut Transaction<'_, Sqlite>,
    (NoteId(note), version): (NoteId, i64),
    by: &SignedIn,
    now: UnixSeconds,
    (decided, Before(before)): (Undoable, Before),
) -> Result<(), Error> {
    let (MemberId(member), what) = (by.id, decided.decision().word());
    let (from, until) = (now - UNDO, now + UNDO);
    sqlx::query!("DELETE FROM undoable WHERE decided_at NOT BETWEEN ? AND ?", from, until)
        .execute(&mut **transaction)
        .await?;
    sqlx::query!(
        "INSERT OR REPLACE INTO undoable (note_id, what, version_id, decided_by, decided_at, before)
         VALUES (?, ?, ?, ?, ?, ?)",
        note,
        what,
        version,
        member,
        now,
        before
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// The title of the note that this member decided about within the minute, where nothing else has happened to it
/// since and they can undo it.
///
/// # Errors
/// The database cannot be read.
pub async fn title(
    database: &Database,
    now: UnixSeconds,
    MemberId(member): MemberId,
    NoteId(note): NoteId,
) -> Result<Option<String>, Error> {
    let (from, until) = (now - UNDO, now + UNDO);
    let title = sqlx::query_scalar!(
        "SELECT version.title FROM undoable JOIN note_version AS version ON version.id = version_id
         WHERE undoable.note_id = ? AND undoable.decided_by = ? AND undoable.decided_at BETWEEN ? AND ?",
        note,
        member,
        from,
        until
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(title)
}

/// Takes the decision back: every row of the note is as it was.
///
/// # Errors
/// It was somebody else's, the minute is over, something else has happened to the note since, or the database
/// cannot be written.
pub async fn undo(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
) -> Result<(), Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let mut transaction = database.write().await?;
    let current = current::read(&mut transaction, note, by).await?;
    let last = sqlx::query!(
        "SELECT what, decided_by, decided_at, before FROM undoable WHERE note_id = ?",
        id
    )
    .fetch_optional(&mut *transaction)
    .await?;
    let Some(last) = last else {
        let since = decided_last(&mut transaction, id, member).await?;
        let is_over = since.is_some_and(|at| (now - at).abs() > UNDO);
        return Err(if is_over { Refused::TooLate } else { Refused::WentOn }.into());
    };
    let stood: Stood =
        serde_json::from_str(&last.before).map_err(|error| sqlx::Error::Decode(error.into()))?;
    let act = Act::Undo(Last {
        before: stood.state(),
        is_theirs: last.decided_by == member,
        seconds: now - last.decided_at,
    });
    current.check(act, by)?;
    restore(&mut transaction, id, &last.before).await?;
    text::follow(&mut transaction, id).await?;
    record(&mut transaction, note, by, now, ("note-decision-undone", &last.what)).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// When this member decided about the note, if that is the last that the record has of it. What could be undone is
/// cleared away when its minute is over.
async fn decided_last(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
    member: i64,
) -> Result<Option<UnixSeconds>, Error> {
    let subject = format!("note/{note}");
    let last = sqlx::query!(
        r#"SELECT at, member_id, what FROM act WHERE subject = ? ORDER BY id DESC LIMIT 1"#,
        subject
    )
    .fetch_optional(&mut **transaction)
    .await?;
    let is_theirs = |what: &str| What::read(what).is_some_and(What::can_be_undone);
    Ok(last
        .filter(|last| last.member_id == Some(member) && is_theirs(&last.what))
        .map(|last| last.at))
}

/// Puts every row back. What is to be shown once more follows what is shown no more: a note has one of each.
async fn restore(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
    before: &str,
) -> Result<(), Error> {
    sqlx::query!(
        "UPDATE note SET shown_version = ?2 ->> 'shown_version', shown_at = ?2 ->> 'shown_at',
           hidden_at = ?2 ->> 'hidden_at', confirmed_at = ?2 ->> 'confirmed_at' WHERE id = ?1",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    // What a small fix made goes.
    sqlx::query!(
        "DELETE FROM note_version WHERE note_id = ?1 AND id > ?2 ->> 'newest'",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "DELETE FROM change_asked WHERE note_id = ?1 AND id > ?2 ->> 'asked'",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "UPDATE note_version SET state = 'replaced' WHERE note_id = ?1 AND id IN (
           SELECT value ->> 'id' FROM json_each(?2, '$.versions'))",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "UPDATE note_version SET state = was.value ->> 'state', is_pressure = was.value ->> 'is_pressure',
           decided_at = was.value ->> 'decided_at', decided_by = was.value ->> 'decided_by',
           reason = was.value ->> 'reason', turned_back_at = was.value ->> 'turned_back_at',
           inspected_at = was.value ->> 'inspected_at'
         FROM json_each(?2, '$.versions') AS was
         WHERE note_version.note_id = ?1 AND note_version.id = was.value ->> 'id'",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "UPDATE safety_report SET settled_at = NULL, settled_by = NULL WHERE note_id = ?1 AND id IN (
           SELECT value FROM json_each(?2, '$.reports'))",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "UPDATE safety_report SET showed_at = NULL WHERE ?2 ->> 'hidden_at' IS NOT NULL
           AND id = (SELECT max(id) FROM safety_report WHERE note_id = ?1 AND hid = 1)",
        note,
        before
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}
