//! Refuses a client that asks too often for what costs work: searching, planning, and all notes at once.
//!
//! Everything else is one page looked up, and is not counted. Which is which is `place`'s to say: any
//! spelling of an address costs the work, since `/Plan/` works out the plan before it is sent to `/plan`.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{Request, State};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::extract::client;
use crate::front::place::Place;
use crate::rules::limits::Client;
use crate::{App, Error};

/// Answers the request, unless its client has used up its allowance: then 429.
///
/// A request without a peer came through no socket, and is let by.
pub async fn limit(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let place = Place::of(&request);
    if place.is_worked_out(request.uri().query())
        && let Some(address) = client::of(&request, &app.config.trusted_proxy)
        && let Err(wait) = app.rate_limit.take(Client::from(address), Instant::now())
    {
        return Error::TooMany { wait }.into_response();
    }
    next.run(request).await
}
