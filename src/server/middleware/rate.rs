//! Refuses a client that asks too often for what costs work: searching, planning, and all notes at once.
//!
//! Everything else is one page looked up, and is not counted.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{Request, State};
use axum::http::Uri;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use super::client;
use crate::limits::Client;
use crate::{App, Error};

/// The doors that cost work, for people and under `/api/v1`.
const COSTLY: [&str; 2] = ["plan", "search"];

/// Answers the request, unless its client has used up its allowance: then 429.
///
/// A request without a peer came through no socket, and is let by.
pub async fn limit(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    if costs_work(request.uri())
        && let Some(address) = client::of(&request, &app.config.trusted_proxy)
        && let Err(wait) = app.rate_limit.take(Client::from(address), Instant::now())
    {
        return Error::TooMany { wait }.into_response();
    }
    next.run(request).await
}

/// Whether a path leads to one of the doors, in any spelling: `/Plan/` works out the plan before it
/// is sent to `/plan`, and `/plan.svg` draws it.
fn costs_work(uri: &Uri) -> bool {
    let path = holewright_pages::canonical(uri.path());
    let path = path.strip_prefix("/api/v1").unwrap_or(&path);
    let first = path.trim_start_matches('/').split(['/', '.']).next();
    first.is_some_and(|first| COSTLY.contains(&first)) || asks_the_notes(uri)
}

/// The notes are searched, or sent as a file; turned to without a query they are one list.
fn asks_the_notes(uri: &Uri) -> bool {
    let is_searched = uri.path() == "/notes" && uri.query().is_some();
    is_searched || ["/notes.csv", "/notes.json"].contains(&uri.path())
}
