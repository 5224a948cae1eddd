//! The words and marks by which the shown notes are found: kept in the transaction that shows, corrects,
//! hides or confirms a note, and made there of what readers then see. Made before it, they would lack what
//! somebody else wrote meanwhile. What a note is marked by is the view `note_mark`.

use sqlx::{Sqlite, Transaction};
use tokio::task::spawn_blocking;

use super::Error;
use super::lists::{self, Listed};
use crate::rules::notes::markdown;

/// The words of one note.
struct Words {
    title: String,
    text: String,
    done: String,
}

impl Words {
    /// Those of the wording and of the corrections above it.
    fn of(note: &Listed) -> Self {
        let mut text = String::new();
        for correction in &note.corrections {
            text.push_str(&markdown::plain(&correction.text));
            text.push(' ');
        }
        let wording = &note.wording;
        text.push_str(&markdown::plain(&wording.text));
        let things = wording.things.iter().map(|thing| thing.title.as_str());
        let done = wording.done.filled().map(|(_, typed)| typed);
        let done: Vec<&str> = done.chain(things).collect();
        Self { title: wording.title.clone(), text, done: done.join(" · ") }
    }
}

/// The note is found from now on by the words that readers see of it, and by no others; by none where
/// they do not see it.
pub(super) async fn follow(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM note_text WHERE rowid = ?", note).execute(&mut **transaction).await?;
    let shown =
        sqlx::query_scalar!(r#"SELECT note AS "note!: String" FROM shown_note WHERE id = ?"#, note)
            .fetch_optional(&mut **transaction)
            .await?;
    let work = move || shown.and_then(|note| lists::read(&note)).map(|shown| Words::of(&shown));
    let words = spawn_blocking(work).await.map_err(|error| sqlx::Error::Io(error.into()))?;
    let Some(words) = words else { return Ok(()) };
    sqlx::query!(
        "INSERT INTO note_text (rowid, title, text, done, marks)
         SELECT id, ?2, ?3, ?4, marks FROM note_mark WHERE id = ?1",
        note,
        words.title,
        words.text,
        words.done
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// The note, if it is found at all, is marked as it stands now.
pub(super) async fn mark(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), sqlx::Error> {
    sqlx::query!(
        "UPDATE note_text SET marks = (SELECT marks FROM note_mark WHERE id = ?1) WHERE rowid = ?1",
        note
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}
