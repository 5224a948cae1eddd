//! Earlier notes that say much the same as one that is written: its author's own, and those that readers see.

use tokio::task::spawn_blocking;

use super::Error;
use crate::db::Database;
use crate::rules::auth::MemberId;
use crate::rules::notes::NoteId;
use crate::rules::notes::alike::{Said, telling};
use crate::rules::notes::belongs::Group;
use crate::rules::notes::wording::Wording;

/// As many of either kind are compared.
const MOST: i64 = 10;
/// Of what belongs to the same things so much is looked at, the newest first.
const LOOKED_AT: i64 = 200;

/// An earlier note that says much the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Like {
    /// Its number.
    pub note: NoteId,
    /// Its title.
    pub title: String,
}

/// The first found that is like this wording of the author's, which stands in `own` if it is kept already.
///
/// # Errors
/// The database cannot be read.
pub async fn find(
    database: &Database,
    MemberId(author): MemberId,
    own: Option<NoteId>,
    wording: &Wording,
) -> Result<Option<Like>, Error> {
    let own = own.map_or(0, |NoteId(id)| id);
    let words: Vec<String> =
        telling(&wording.title).into_iter().map(|word| format!("\"{word}\"")).collect();
    // A word of ours that stands in no note, where the title has none to look for.
    let words = if words.is_empty() { "\"\u{e000}none\"".to_owned() } else { words.join(" ") };
    let named = |group: Option<Group>| {
        let things = wording.things.iter();
        let things = things.filter(|thing| group.is_none_or(|group| group.holds(thing)));
        serde_json::Value::from_iter(things.map(|thing| thing.id.as_str())).to_string()
    };
    let things = named(None);
    let (threads, materials) = (named(Some(Group::Threads)), named(Some(Group::Materials)));
    let candidates = sqlx::query!(
        r#"SELECT id AS "id!: i64", title AS "title!: String", text AS "text!: String",
             (SELECT author_id FROM note WHERE note.id = said.id) IS ?1 AND EXISTS (SELECT 1 FROM note_entry WHERE version_id = said.version_id
               AND entry_id IN (SELECT value FROM json_each(?6))) AND EXISTS (
               SELECT 1 FROM note_entry WHERE version_id = said.version_id
               AND entry_id IN (SELECT value FROM json_each(?7))) AS "are_close!: bool"
           FROM (
           SELECT * FROM (
             SELECT note.id, version.id AS version_id, version.title, version.text
             FROM note JOIN note_version AS version ON version.id =
               (SELECT max(id) FROM note_version WHERE note_id = note.id AND state IN ('waiting', 'shown'))
             WHERE note.author_id = ?1 AND note.id <> ?2 AND note.withdrawn_at IS NULL
             ORDER BY note.id DESC LIMIT ?4)
           UNION
           SELECT * FROM (
             SELECT shown_note.id, version.id, version.title, version.text
             FROM shown_note JOIN note_version AS version ON version.id = shown_note.version_id
             WHERE shown_note.id <> ?2 AND shown_note.id IN (
               SELECT rowid FROM note_text WHERE note_text MATCH ?3 ORDER BY rowid DESC LIMIT ?4))
           UNION
           SELECT * FROM (
             SELECT shown_note.id, version.id, version.title, version.text
             FROM (SELECT version_id, count(*) AS shared FROM (
                 SELECT version_id FROM note_entry WHERE entry_id IN (SELECT value FROM json_each(?5))
                 ORDER BY version_id DESC LIMIT ?8)
               GROUP BY version_id) AS near
             JOIN shown_note ON shown_note.version_id = near.version_id
             JOIN note_version AS version ON version.id = near.version_id
             WHERE shown_note.id <> ?2
             ORDER BY near.shared DESC, shown_note.id DESC LIMIT ?4)) AS said"#,
        author,
        own,
        words,
        MOST,
        things,
        threads,
        materials,
        LOOKED_AT
    )
    .fetch_all(&database.readers)
    .await?;
    let (title, text) = (wording.title.clone(), wording.text.clone());
    let work = move || {
        let said = Said::of(&title, &text);
        let found = candidates
            .into_iter()
            .find(|other| Said::of(&other.title, &other.text).are_like(&said, other.are_close));
        found.map(|other| Like { note: NoteId(other.id), title: other.title })
    };
    Ok(spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?)
}

/// Keeps for whoever decides that what waits of each of these notes is like an earlier one.
///
/// # Errors
/// The database cannot be written.
pub async fn keep(database: &Database, found: &[(NoteId, NoteId)]) -> Result<(), Error> {
    if found.is_empty() {
        return Ok(());
    }
    let mut transaction = database.write().await?;
    for (NoteId(note), NoteId(like)) in found {
        sqlx::query!(
            "UPDATE note_version SET like_note = ? WHERE note_id = ? AND state = 'waiting'",
            like,
            note
        )
        .execute(&mut *transaction)
        .await?;
    }
    database.commit(transaction).await?;
    Ok(())
}
