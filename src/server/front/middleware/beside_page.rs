//! A page's address with `.json` behind its path: the same body as under `/api/v1`.
//!
//! Only a last `.json` counts: `/drills/metric/2.05` is a page, `/drills/metric/2.05.json` its
//! figures. An address whose page moved is sent on the same way. Leaves out `.csv` and `.svg`,
//! which the pages make themselves.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::LOCATION;
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::api::behind_page;
use crate::front::place::Place;
use crate::{App, Error};
use holewright_pages::address::Ending;

/// Answers such an address; hands every other on.
pub async fn answer(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let place = Place::of(&request);
    let Place::Page(address) = &*place else { return next.run(request).await };
    let is_read = matches!(*request.method(), Method::GET | Method::HEAD);
    if !is_read || address.ending != Some(Ending::Json) {
        return next.run(request).await;
    }
    let uri = request.uri().clone();
    let query = uri.query().unwrap_or_default();
    // In any other spelling it is sent on first.
    let found = if address.canonical() == uri.path() {
        behind_page::figures(&app, &address.page, query, request.headers().clone()).await
    } else {
        None
    };
    if matches!(found, None | Some(Err(Error::NotFound(_))))
        && let Some(moved) = moved(&holewright_pages::answer(uri.path(), query, &app.context))
    {
        return moved;
    }
    match found {
        None => next.run(request).await,
        Some(answer) => answer.into_response(),
    }
}

/// The redirect of an address that moved for good.
fn moved(answer: &holewright_pages::Reply) -> Option<Response> {
    let location = answer.location().filter(|_| answer.status == StatusCode::MOVED_PERMANENTLY)?;
    let location = HeaderValue::from_str(location).ok()?;
    let mut response = StatusCode::MOVED_PERMANENTLY.into_response();
    response.headers_mut().insert(LOCATION, location);
    Some(response)
}
