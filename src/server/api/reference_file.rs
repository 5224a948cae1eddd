//! `/reference.sqlite`: the tables as one SQLite file, with the same figures as the JSON.

use axum::body::Bytes;
use axum::http::header::CONTENT_DISPOSITION;
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use serde::Serialize;
use tokio::sync::OnceCell;

use super::drills::DrillWithNeighbours;
use super::materials::Material;
use super::reply;
use super::threads::{Systems, ThreadWithHoles};
use crate::db::export;
use crate::{Error, entries};
use holewright_core::tables::{drills, materials, threads};

/// What the file is made from.
#[derive(Serialize)]
struct Tables {
    program: &'static str,
    entries: Vec<Entry>,
    #[serde(flatten)]
    systems: Systems,
    threads: Vec<ThreadWithHoles>,
    drills: Vec<DrillWithNeighbours>,
    materials: Vec<Material>,
}

/// An address of the reference, with the digest of its figures.
#[derive(Serialize)]
struct Entry {
    id: String,
    kind: &'static str,
    slug: String,
    title: String,
    digest: String,
}

/// The tables are compiled in, so the file is the same as long as the program runs.
static FILE: OnceCell<Bytes> = OnceCell::const_new();

/// The file. The first program that asks waits while it is made.
///
/// # Errors
/// The file cannot be made, or the program takes another form: 406.
pub async fn download(headers: HeaderMap) -> Result<Response, Error> {
    let file = FILE.get_or_try_init(make).await?;
    let mut response = reply::bytes(&headers, "application/vnd.sqlite3", file.clone())?;
    let name = HeaderValue::from_static("attachment; filename=\"holewright-reference.sqlite\"");
    response.headers_mut().insert(CONTENT_DISPOSITION, name);
    Ok(response)
}

/// Makes the file anew.
///
/// # Errors
/// SQLite refuses.
pub async fn make() -> Result<Bytes, Error> {
    // Every plan figure is worked out once: some hundredths of a second that no other answer
    // should wait for.
    let tables = tokio::task::spawn_blocking(|| serde_json::to_string(&Tables::all()))
        .await
        .map_err(|error| Error::Internal(error.into()))?
        .map_err(|error| Error::Internal(error.into()))?;
    Ok(export::file(&tables).await?.into())
}

impl Tables {
    fn all() -> Self {
        Self {
            program: concat!("Holewright ", env!("CARGO_PKG_VERSION")),
            // A calculator has no figures of its own to stand in a file.
            entries: entries::all()
                .into_iter()
                .filter(|entry| entry.kind != entries::Kind::Calculator)
                .map(Entry::from)
                .collect(),
            systems: Systems::all(),
            threads: threads::all().map(ThreadWithHoles::from).collect(),
            drills: drills::all().iter().map(DrillWithNeighbours::from).collect(),
            materials: materials::all().iter().map(Material::from).collect(),
        }
    }
}

impl From<entries::Entry> for Entry {
    fn from(entry: entries::Entry) -> Self {
        let entries::Entry { id, kind, slug, title, digest } = entry;
        Self { id, kind: kind.as_str(), slug, title, digest }
    }
}
