//! The notes that readers see, in lists: all from the view `shown_note`, which holds nothing else.

use serde::Deserialize;
use tokio::task::spawn_blocking;

use super::Error;
use super::current::subject;
use super::wordings::{Entry, things};
use crate::db::Database;
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;
use crate::rules::notes::fields::Done;
use crate::rules::notes::found::Sense;
use crate::rules::notes::wording::Wording;

/// One shown note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Number.
    pub id: i64,
    /// The wording that readers see.
    pub wording: Wording,
    /// The author's name; none where they have left the club.
    pub author: Option<String>,
    /// When it was begun.
    pub made_at: UnixSeconds,
    /// When this wording was passed.
    pub shown_at: UnixSeconds,
    /// When a member last found that it works.
    pub confirmed_at: Option<UnixSeconds>,
    /// How many members found that it works.
    pub worked: i64,
    /// How many found that it does not.
    pub did_not: i64,
    /// The corrections above it, newest first.
    pub corrections: Vec<Correction>,
    /// When an inspector read this wording, where that is known.
    pub inspected_at: Option<UnixSeconds>,
}

/// A moderator's correction.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct Correction {
    /// Markdown.
    pub text: String,
    /// When it was made.
    pub made_at: UnixSeconds,
}

/// Which notes are wanted.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filter {
    /// Those that belong to one of these things, where some are named.
    pub on: Vec<String>,
    /// Those a member found to work.
    pub confirmed_only: bool,
    /// Those with a correction above them.
    pub corrected_only: bool,
}

impl Listed {
    /// When its text last changed for a reader: the wording was shown, or a correction put above it.
    #[must_use]
    pub fn changed_at(&self) -> UnixSeconds {
        let corrected = self.corrections.iter().map(|correction| correction.made_at);
        corrected.fold(self.shown_at, UnixSeconds::max)
    }
}

/// Shown notes that pass the filter with a smaller number than `before`, newest first.
///
/// # Errors
/// The database cannot be read.
pub async fn shown(
    database: &Database,
    filter: &Filter,
    before: Option<i64>,
    most: i64,
) -> Result<Vec<Listed>, Error> {
    let before = before.unwrap_or(i64::MAX);
    let (confirmed, corrected) = (filter.confirmed_only, filter.corrected_only);
    let rows = match filter.on.as_slice() {
        [] => {
            sqlx::query_scalar!(
                r#"SELECT note AS "note!: String" FROM shown_note
                   WHERE id < ?1 AND (NOT ?2 OR confirmed_at IS NOT NULL) AND (NOT ?3 OR is_corrected)
                   ORDER BY id DESC LIMIT ?4"#,
                before,
                confirmed,
                corrected,
                most
            )
            .fetch_all(&database.readers)
            .await?
        }
        // No note belongs twice to one thing: it needs no list to be told apart.
        [on] => {
            sqlx::query_scalar!(
                r#"SELECT shown_note.note AS "note!: String"
                   FROM note_entry JOIN shown_note ON shown_note.version_id = note_entry.version_id
                   WHERE note_entry.entry_id = ?5
                     AND id < ?1 AND (NOT ?2 OR confirmed_at IS NOT NULL) AND (NOT ?3 OR is_corrected)
                   ORDER BY id DESC LIMIT ?4"#,
                before,
                confirmed,
                corrected,
                most,
                on
            )
            .fetch_all(&database.readers)
            .await?
        }
        several => {
            let on = serde_json::to_string(several).unwrap_or_default();
            sqlx::query_scalar!(
                r#"SELECT shown_note.note AS "note!: String"
                   FROM (SELECT DISTINCT version_id FROM note_entry
                         WHERE entry_id IN (SELECT value FROM json_each(?5))) AS named
                   JOIN shown_note ON shown_note.version_id = named.version_id
                   WHERE id < ?1 AND (NOT ?2 OR confirmed_at IS NOT NULL) AND (NOT ?3 OR is_corrected)
                   ORDER BY id DESC LIMIT ?4"#,
                before,
                confirmed,
                corrected,
                most,
                on
            )
            .fetch_all(&database.readers)
            .await?
        }
    };
    // Twenty long notes are milliseconds of work.
    let listed = spawn_blocking(move || rows.iter().filter_map(|row| read(row)).collect()).await;
    Ok(listed.map_err(|error| sqlx::Error::Io(error.into()))?)
}

/// The shown notes that belong to both of these things, and how many there are: first those that warn (a
/// correction stands above them, or they say so themselves), then those that did not work for somebody, then the newest
/// confirmed.
///
/// # Errors
/// The database cannot be read.
pub async fn on_both(
    database: &Database,
    [one, other]: [&str; 2],
    most: i64,
) -> Result<(Vec<Listed>, i64), Error> {
    let rows = sqlx::query!(
        r#"SELECT note AS "note!: String", count(*) OVER () AS "count!: i64" FROM shown_note
           WHERE version_id IN (SELECT version_id FROM note_entry WHERE entry_id = ?1)
             AND version_id IN (SELECT version_id FROM note_entry WHERE entry_id = ?2)
           ORDER BY is_corrected OR note ->> 'is_warning' DESC, note ->> 'did_not' > 0 DESC,
             confirmed_at DESC, id DESC LIMIT ?3"#,
        one,
        other,
        most
    )
    .fetch_all(&database.readers)
    .await?;
    let count = rows.first().map_or(0, |row| row.count);
    let listed = spawn_blocking(move || rows.iter().filter_map(|row| read(&row.note)).collect());
    Ok((listed.await.map_err(|error| sqlx::Error::Io(error.into()))?, count))
}

/// The shown notes that belong to one thing of each of these lists, and how many there are: in the order of
/// [`on_both`].
///
/// # Errors
/// The database cannot be read.
pub async fn on_each(
    database: &Database,
    things: [&[String]; 2],
    most: i64,
) -> Result<(Vec<Listed>, i64), Error> {
    let [one, other] = things.map(|things| serde_json::to_string(things).unwrap_or_default());
    let rows = sqlx::query!(
        r#"SELECT note AS "note!: String", count(*) OVER () AS "count!: i64" FROM shown_note
           WHERE version_id IN (SELECT version_id FROM note_entry
                                WHERE entry_id IN (SELECT value FROM json_each(?1)))
             AND version_id IN (SELECT version_id FROM note_entry
                                WHERE entry_id IN (SELECT value FROM json_each(?2)))
           ORDER BY is_corrected OR note ->> 'is_warning' DESC, note ->> 'did_not' > 0 DESC,
             confirmed_at DESC, id DESC LIMIT ?3"#,
        one,
        other,
        most
    )
    .fetch_all(&database.readers)
    .await?;
    let count = rows.first().map_or(0, |row| row.count);
    let listed = spawn_blocking(move || rows.iter().filter_map(|row| read(&row.note)).collect());
    Ok((listed.await.map_err(|error| sqlx::Error::Io(error.into()))?, count))
}

/// What a note is that readers see; none where they see no such note.
///
/// # Errors
/// The database cannot be read.
pub async fn sense(database: &Database, NoteId(id): NoteId) -> Result<Option<Sense>, Error> {
    let warns = sqlx::query_scalar!(
        r#"SELECT version.is_warning AS "is_warning!: bool"
           FROM shown_note JOIN note_version AS version ON version.id = shown_note.version_id
           WHERE shown_note.id = ?"#,
        id
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(warns.map(Sense::of))
}

/// One note as the view has it.
#[derive(Debug, Deserialize)]
struct ShownRow {
    id: i64,
    title: String,
    text: String,
    #[serde(flatten)]
    done: Done,
    is_pressure: i64,
    is_warning: i64,
    author: Option<String>,
    made_at: UnixSeconds,
    shown_at: UnixSeconds,
    confirmed_at: Option<UnixSeconds>,
    worked: i64,
    did_not: i64,
    corrections: Vec<Correction>,
    inspected_at: Option<UnixSeconds>,
    things: Vec<Entry>,
}

/// Reads the view's JSON. The database wrote it, so it can only fail where the view and this struct
/// have parted; the log then says so.
pub(in crate::db) fn read(json: &str) -> Option<Listed> {
    let row: ShownRow = serde_json::from_str(json)
        .inspect_err(|error| tracing::error!(%error, "a shown note cannot be read"))
        .ok()?;
    Some(Listed {
        id: row.id,
        wording: Wording {
            title: row.title,
            text: row.text,
            done: row.done,
            subject: subject(row.is_pressure != 0),
            sense: Sense::of(row.is_warning != 0),
            things: things(row.things),
        },
        author: row.author,
        made_at: row.made_at,
        shown_at: row.shown_at,
        confirmed_at: row.confirmed_at,
        worked: row.worked,
        did_not: row.did_not,
        corrections: row.corrections,
        inspected_at: row.inspected_at,
    })
}
