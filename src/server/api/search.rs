//! The finder: what a few words can mean.

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::problem::{Always, TooMany};
use super::reply;
use crate::db::notes::lists::Filter;
use crate::db::notes::search as notes;
use crate::{App, Error};
use holewright_core::finder;
use holewright_pages::{Query, search};

/// The most notes behind the reference.
const NOTES: i64 = 10;

/// What was found.
#[derive(Debug, Serialize, ToSchema)]
struct Found<'a> {
    /// What was typed, trimmed, as far as it was looked at.
    #[schema(example = "5ba")]
    query: &'a str,
    /// What it can mean, best first.
    hits: Vec<Hit<'a>>,
    /// What comes near, best first; empty unless there are no hits.
    suggestions: Vec<Hit<'a>>,
}

/// One thing found.
#[derive(Debug, Serialize, ToSchema)]
struct Hit<'a> {
    /// What it is: thread, system, drill, series, material, rescue, calculator, list, note.
    #[schema(example = "thread")]
    kind: &'static str,
    /// What it is called.
    #[schema(example = "5 BA")]
    title: &'a str,
    /// Its page on this server.
    #[schema(example = "/threads/ba/5")]
    url: &'a str,
    /// Why it was found.
    why: &'a str,
}

/// What a few words can mean: threads, drills, materials and calculators, best first. Behind a
/// drill stand its neighbours and some threads that it taps or clears; behind them all, members' notes
/// with these words, which are no figures of the tables.
///
/// Any usual spelling is understood, and small slips of the pen. Words that mean nothing have no
/// hits.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/search",
    operation_id = "search",
    tag = "search",
    params(("q" = Option<String>, Query, description = "What to look for", example = "5ba")),
    responses((status = 200, description = "What was found", body = Found), TooMany, Always)
)]
pub async fn find_all(
    State(app): State<Arc<App>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let found = search::found(Query::read(query.as_deref().unwrap_or_default()).get("q"));
    let notes = notes(&app, &found.query).await;
    let notes = notes.iter().map(|(title, url, why)| Hit { kind: "note", title, url, why });
    reply::json(
        &headers,
        &Found {
            query: &found.query,
            hits: found.hits.iter().map(Hit::from).chain(notes).collect(),
            suggestions: found.suggestions.iter().map(Hit::from).collect(),
        },
    )
}

/// The title, address and text around the words of each note found. The reference answers where the
/// notes cannot be read.
async fn notes(app: &App, typed: &str) -> Vec<(String, String, String)> {
    let hits = notes::find(&app.database, typed, &Filter::default(), NOTES).await;
    let hits = hits.unwrap_or_else(|error| {
        tracing::warn!(%error, "the notes cannot be searched");
        Vec::new()
    });
    let each = |hit: notes::Hit| {
        let url = format!("/notes/{}", hit.note.id);
        let around = hit.around.into_iter().map(|stretch| stretch.text);
        (hit.note.wording.title, url, around.collect())
    };
    hits.into_iter().map(each).collect()
}

impl<'a> From<&'a finder::Hit> for Hit<'a> {
    fn from(hit: &'a finder::Hit) -> Self {
        Self { kind: hit.kind.slug(), title: &hit.title, url: &hit.url, why: &hit.why }
    }
}
