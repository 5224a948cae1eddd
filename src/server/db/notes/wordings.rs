//! The rows of the wordings: one query that reads them all, one that writes a draft. This file and the
//! view `shown_note` are the places where the SQL names the fields of a note.

use serde::Deserialize;
use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::rules::auth::MemberId;
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::belongs::Thing;
use crate::rules::notes::fields::Done;
use crate::rules::notes::found::Sense;
use crate::rules::notes::state::Subject;
use crate::rules::notes::wording::Wording;
use crate::rules::notes::{NoteId, VersionId};

/// A wording as the database has it.
#[derive(Debug)]
pub(in crate::db) struct WordingRow {
    pub(in crate::db) note: i64,
    pub(in crate::db) id: i64,
    pub(in crate::db) state: String,
    pub(in crate::db) is_pressure: bool,
    pub(in crate::db) is_warning: bool,
    pub(in crate::db) title: String,
    pub(in crate::db) text: String,
    /// JSON of [`Done`].
    done: String,
    pub(in crate::db) made_at: UnixSeconds,
    pub(in crate::db) saved_at: UnixSeconds,
    pub(in crate::db) decided_at: Option<UnixSeconds>,
    pub(in crate::db) reason: String,
    pub(in crate::db) form_key: String,
    pub(in crate::db) is_turned_back: bool,
    /// The author's wording that this one mends.
    pub(in crate::db) mended_from: Option<i64>,
    /// Who mended it, if they are in the club still.
    pub(in crate::db) mended_by: Option<String>,
    pub(in crate::db) inspected_at: Option<UnixSeconds>,
    /// JSON of entries.
    things: String,
}

/// A thing as the database names it.
#[derive(Debug, Deserialize)]
pub(super) struct Entry {
    id: String,
    title: String,
}

impl WordingRow {
    /// What was done.
    pub(in crate::db) fn done(&self) -> Result<Done, sqlx::Error> {
        serde_json::from_str(&self.done).map_err(|error| sqlx::Error::Decode(error.into()))
    }

    /// What the wording belongs to.
    pub(in crate::db) fn things(&self) -> Result<Vec<Thing>, sqlx::Error> {
        let entries = serde_json::from_str(&self.things);
        Ok(things(entries.map_err(|error| sqlx::Error::Decode(error.into()))?))
    }
}

/// Every wording of a note, oldest first.
pub(super) async fn of_note(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
) -> Result<Vec<WordingRow>, sqlx::Error> {
    rows(transaction, (Some(note), None, None)).await
}

/// This wording of a note.
pub(super) async fn one(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
    VersionId(version): VersionId,
) -> Result<Option<WordingRow>, sqlx::Error> {
    Ok(rows(transaction, (Some(note), None, Some(version))).await?.pop())
}

/// Every wording of every note of a member's, note by note, each note's oldest first.
pub(in crate::db) async fn of_author(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(author): MemberId,
) -> Result<Vec<WordingRow>, sqlx::Error> {
    rows(transaction, (None, Some(author), None)).await
}

async fn rows(
    transaction: &mut Transaction<'_, Sqlite>,
    (note, author, version): (Option<i64>, Option<i64>, Option<i64>),
) -> Result<Vec<WordingRow>, sqlx::Error> {
    sqlx::query_as!(
        WordingRow,
        r#"SELECT note_id AS note, version.id, state, is_pressure AS "is_pressure: bool",
             is_warning AS "is_warning: bool", title, text,
             json_object('material', material, 'thread', thread, 'drill', drill, 'depth', depth,
               'lubricant', lubricant, 'speed', speed, 'machine', machine, 'source', source) AS "done!: String",
             version.made_at, saved_at, decided_at, reason, version.form_key,
             turned_back_at IS NOT NULL AS "is_turned_back!: bool", mended_from, inspected_at,
             (SELECT name FROM member WHERE member.id = mended_by) AS "mended_by?: String",
             (SELECT json_group_array(json_object('id', entry.id, 'title', entry.title))
              FROM note_entry JOIN reference_entry AS entry ON entry.id = note_entry.entry_id
              WHERE note_entry.version_id = version.id) AS "things!: String"
           FROM note JOIN note_version AS version ON version.note_id = note.id
           WHERE (note.id = ?1 OR note.author_id = ?2) AND (?3 IS NULL OR version.id = ?3)
           ORDER BY note.id, version.id"#,
        note,
        author,
        version
    )
    .fetch_all(&mut **transaction)
    .await
}

/// What is written of a wording.
#[derive(Clone, Copy)]
pub(super) struct Written<'a> {
    pub(super) wording: &'a Wording,
    /// The state it is in from then on, as the database has it.
    pub(super) state: &'static str,
    /// The key of the form it comes from.
    pub(super) form_key: &'a str,
}

/// Writes the wording into a version on its author's desk, and puts that into its state.
pub(super) async fn write(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    VersionId(version): VersionId,
    Written { wording, state, form_key }: Written<'_>,
) -> Result<(), Error> {
    let is_pressure = wording.subject == Subject::Pressure;
    let is_warning = wording.sense == Sense::Warning;
    let done = serde_json::to_string(&wording.done);
    let done = done.map_err(|error| sqlx::Error::Encode(error.into()))?;
    // What a moderator asked for stays on the desk until the note is sent in again. A clock that was
    // put back must not make the text unwritable.
    sqlx::query!(
        "UPDATE note_version
         SET state = ?1, is_pressure = ?2, title = ?3, text = ?4,
             material = ?5 ->> 'material', thread = ?5 ->> 'thread', drill = ?5 ->> 'drill',
             depth = ?5 ->> 'depth', lubricant = ?5 ->> 'lubricant', speed = ?5 ->> 'speed',
             machine = ?5 ->> 'machine', source = ?5 ->> 'source', saved_at = max(made_at, ?6),
             reason = CASE WHEN ?1 = 'draft' THEN reason ELSE '' END, form_key = ?8,
             is_warning = ?9
         WHERE id = ?7 AND state = 'draft'",
        state,
        is_pressure,
        wording.title,
        wording.text,
        done,
        now,
        version,
        form_key,
        is_warning
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!("DELETE FROM note_entry WHERE version_id = ?", version)
        .execute(&mut **transaction)
        .await?;
    for thing in &wording.things {
        sqlx::query!(
            "INSERT INTO note_entry (version_id, entry_id) SELECT ?, id FROM reference_entry WHERE id = ?",
            version,
            thing.id
        )
        .execute(&mut **transaction)
        .await?;
    }
    Ok(())
}

/// The things of a wording, in the order of their addresses, by their names in the tables; one that
/// has left them keeps its old name.
pub(super) fn things(entries: Vec<Entry>) -> Vec<Thing> {
    let thing = |entry: Entry| {
        crate::rules::notes::belongs::at(&entry.id)
            .unwrap_or(Thing { id: entry.id, title: entry.title })
    };
    let mut things: Vec<Thing> = entries.into_iter().map(thing).collect();
    things.sort_by(|one, other| one.id.cmp(&other.id));
    things
}
