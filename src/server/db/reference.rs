//! The rows of the reference: one for each thread system, thread, drill, material and calculator.

use tokio::task::spawn_blocking;

use super::notes::Listed;
use super::notes::lists::read;
use super::{Database, Error};
use crate::entries::Entry;
use crate::rules::clock::UnixSeconds;

/// How many rows a projection touched.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Projected {
    /// New, changed or back again.
    pub written: u64,
    /// Gone from the tables.
    pub retired: u64,
}

/// Makes the rows agree with the entries in one transaction. A row is written only if its figures
/// differ; one whose entry is gone is marked and kept.
///
/// # Errors
/// The database cannot be written.
pub async fn project(
    database: &Database,
    entries: &[Entry],
    now: UnixSeconds,
) -> Result<Projected, Error> {
    let entries = as_json(entries);
    let mut transaction = database.write().await?;
    let written = sqlx::query!(
        "INSERT INTO reference_entry (id, kind, slug, title, digest)
         SELECT value ->> 'id', value ->> 'kind', value ->> 'slug', value ->> 'title', value ->> 'digest'
         FROM json_each(?)
         WHERE true
         ON CONFLICT (id) DO UPDATE
         SET kind = excluded.kind, slug = excluded.slug, title = excluded.title,
             digest = excluded.digest, retired_at = NULL
         WHERE digest <> excluded.digest OR retired_at IS NOT NULL",
        entries
    )
    .execute(&mut *transaction)
    .await?
    .rows_affected();
    let retired = sqlx::query!(
        "UPDATE reference_entry SET retired_at = ?
         WHERE retired_at IS NULL AND id NOT IN (SELECT value ->> 'id' FROM json_each(?))",
        now,
        entries
    )
    .execute(&mut *transaction)
    .await?
    .rows_affected();
    database.commit(transaction).await?;
    Ok(Projected { written, retired })
}

/// The digest of the entry at this address (without its first slash), if it stands.
///
/// # Errors
/// The database cannot be read.
pub async fn digest(database: &Database, id: &str) -> Result<Option<String>, Error> {
    Ok(sqlx::query_scalar!(
        "SELECT digest FROM reference_entry WHERE id = ? AND retired_at IS NULL",
        id
    )
    .fetch_optional(&database.readers)
    .await?)
}

/// An entry's row, with the notes that hang on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EntryWithNotes {
    /// The digest of its figures.
    pub digest: String,
    /// What it is called.
    pub title: String,
    /// The shown notes: the newest confirmed first, then the newest; so many at most.
    pub notes: Vec<Listed>,
    /// How many there are in all.
    pub count: i64,
}

/// The entry at this address (without its first slash), if it stands, and its notes: in one query,
/// since every page asks it.
///
/// # Errors
/// The database cannot be read.
pub async fn with_notes(
    database: &Database,
    id: &str,
    most: i64,
) -> Result<Option<EntryWithNotes>, Error> {
    let row = sqlx::query!(
        r#"SELECT digest, title,
             (SELECT count(*) FROM note_entry
              JOIN shown_note ON shown_note.version_id = note_entry.version_id
              WHERE note_entry.entry_id = ?1) AS "count!: i64",
             (SELECT json_group_array(note) FROM (
                SELECT shown_note.note FROM note_entry
                JOIN shown_note ON shown_note.version_id = note_entry.version_id
                WHERE note_entry.entry_id = ?1
                ORDER BY shown_note.confirmed_at DESC, shown_note.id DESC LIMIT ?2)) AS "notes!: String"
           FROM reference_entry WHERE id = ?1 AND retired_at IS NULL"#,
        id,
        most
    )
    .fetch_optional(&database.readers)
    .await?;
    let Some(row) = row else { return Ok(None) };
    let notes = if row.count == 0 {
        Vec::new()
    } else {
        let notes = spawn_blocking(move || listed(&row.notes)).await;
        notes.map_err(|error| sqlx::Error::Io(error.into()))?
    };
    Ok(Some(EntryWithNotes { digest: row.digest, title: row.title, notes, count: row.count }))
}

fn listed(notes: &str) -> Vec<Listed> {
    let notes: Vec<serde_json::Value> = serde_json::from_str(notes).unwrap_or_default();
    // An array's elements are the view's objects, or their text: SQLite may keep either.
    let json =
        |note: &serde_json::Value| note.as_str().map_or_else(|| note.to_string(), str::to_owned);
    notes.iter().filter_map(|note| read(&json(note))).collect()
}

/// One value for the whole list: one statement then writes every row.
fn as_json(entries: &[Entry]) -> String {
    let rows = entries.iter().map(|entry| {
        serde_json::json!({
            "id": entry.id,
            "kind": entry.kind.as_str(),
            "slug": entry.slug,
            "title": entry.title,
            "digest": entry.digest,
        })
    });
    serde_json::Value::Array(rows.collect()).to_string()
}
