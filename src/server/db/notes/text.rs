//! The words by which the shown notes are found: kept in the transaction that shows or hides a note.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::server::notes::markdown;
use crate::server::notes::wording::Wording;

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
        let lines = wording.done.lines();
        let done: Vec<&str> = lines.iter().map(|(_, typed)| *typed).chain(things).collect();
        Self { title: wording.title.clone(), text, done: done.join(" · ") }
    }
}

/// The note is found by these words from now on, and by no others.
pub(super) async fn put(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
    words: &Words,
) -> Result<(), Error> {
    take(transaction, note).await?;
    sqlx::query!(
        "INSERT INTO note_text (rowid, title, text, done) VALUES (?, ?, ?, ?)",
        note,
        words.title,
        words.text,
        words.done
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

/// The note is found by no words.
pub(super) async fn take(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM note_text WHERE rowid = ?", note).execute(&mut **transaction).await?;
    Ok(())
}
