//! The rows of the reference: one for each thread system, thread, drill and material.

use super::{Database, Error};
use crate::server::clock::UnixSeconds;
use crate::server::entries::Entry;

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
    transaction.commit().await?;
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
