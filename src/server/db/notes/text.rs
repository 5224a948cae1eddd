//! The words and marks by which the shown notes are found: kept in the transaction that shows, hides
//! or confirms a note. What a note is marked by is the view `note_mark`.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::rules::notes::markdown;
use crate::rules::notes::wording::Wording;

/// The words of one wording, worked out before the transaction: nothing slow runs inside it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    title: String,
    text: String,
    done: String,
}

impl Words {
    /// The words of a wording and of the corrections above it.
    #[must_use]
    pub fn of<'a>(wording: &Wording, corrections: impl IntoIterator<Item = &'a str>) -> Self {
        let mut text = String::new();
        for correction in corrections {
            text.push_str(&markdown::plain(correction));
            text.push(' ');
        }
        text.push_str(&markdown::plain(&wording.text));
        let things = wording.things.iter().map(|thing| thing.title.as_str());
        let done = wording.done.filled().map(|(_, typed)| typed);
        let done: Vec<&str> = done.chain(things).collect();
        Self { title: wording.title.clone(), text, done: done.join(" · ") }
    }
}

/// The note is found by these words from now on, and by no others; marked as it stands now.
pub(super) async fn put(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
    words: &Words,
) -> Result<(), Error> {
    remove(transaction, note).await?;
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
) -> Result<(), Error> {
    sqlx::query!(
        "UPDATE note_text SET marks = (SELECT marks FROM note_mark WHERE id = ?1) WHERE rowid = ?1",
        note
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// The note is found by no words.
pub(super) async fn remove(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM note_text WHERE rowid = ?", note).execute(&mut **transaction).await?;
    Ok(())
}
