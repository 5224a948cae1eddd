//! Earlier notes that say much the same as one that is written: its author's own, and those that readers see.

use tokio::task::spawn_blocking;

use super::Error;
use crate::db::Database;
use crate::rules::auth::MemberId;
use crate::rules::notes::NoteId;
use crate::rules::notes::alike::{Runs, telling};
use crate::rules::notes::wording::Wording;

/// As many of either kind are compared.
const MOST: i64 = 10;

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
    let candidates = sqlx::query!(
        r#"SELECT id AS "id!: i64", title AS "title!: String", text AS "text!: String" FROM (
             SELECT note.id, version.title, version.text
             FROM note JOIN note_version AS version ON version.id =
               (SELECT max(id) FROM note_version WHERE note_id = note.id AND state IN ('waiting', 'shown'))
             WHERE note.author_id = ?1 AND note.id <> ?2 AND note.withdrawn_at IS NULL
             ORDER BY note.id DESC LIMIT ?4)
           UNION
           SELECT id, title, text FROM (
             SELECT shown_note.id, version.title, version.text
             FROM shown_note JOIN note_version AS version ON version.id = shown_note.version_id
             WHERE shown_note.id <> ?2 AND shown_note.id IN (
               SELECT rowid FROM note_text WHERE note_text MATCH ?3 ORDER BY rowid DESC LIMIT ?4))"#,
        author,
        own,
        words,
        MOST
    )
    .fetch_all(&database.readers)
    .await?;
    let text = format!("{}\n{}", wording.title, wording.text);
    let work = move || {
        let runs = Runs::of(&text);
        let is_like = |text: &str| Runs::of(text).are_like(&runs);
        let found = candidates
            .into_iter()
            .find(|other| is_like(&format!("{}\n{}", other.title, other.text)));
        found.map(|other| Like { note: NoteId(other.id), title: other.title })
    };
    Ok(spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?)
}

/// Keeps for whoever decides that what waits of this note is like an earlier one.
///
/// # Errors
/// The database cannot be written.
pub async fn keep(database: &Database, NoteId(note): NoteId, like: NoteId) -> Result<(), Error> {
    let NoteId(like) = like;
    let mut transaction = database.write().await?;
    sqlx::query!(
        "UPDATE note_version SET like_note = ? WHERE note_id = ? AND state = 'waiting'",
        like,
        note
    )
    .execute(&mut *transaction)
    .await?;
    database.commit(transaction).await?;
    Ok(())
}
