//! A page of the notes as an answer: who may keep it, and for how long.

use std::sync::Arc;
use std::time::Instant;

use askama::Template;
use axum::body::Body;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE, LOCATION, SET_COOKIE, VARY};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};

use crate::extract::Reader;
use crate::rules::auth::SignedIn;
use crate::rules::deed::Did;
use crate::rules::limits::Client;
use crate::rules::validator::Tag;
use crate::{App, Error};

/// How many notes a list shows at once.
pub(super) const MOST: i64 = 20;

/// A page. What a signed-in reader gets is theirs alone.
pub(super) fn page(
    status: StatusCode,
    template: &impl Template,
    reader: &Reader,
) -> Result<Response, Error> {
    let body = template.render().map_err(|error| Error::Internal(error.into()))?;
    Ok(answer(status, "text/html; charset=utf-8", body, reader))
}

/// An answer of this media type.
pub(super) fn answer(
    status: StatusCode,
    media: &'static str,
    body: String,
    reader: &Reader,
) -> Response {
    let tag = Tag::of_bytes(body.as_bytes());
    let mut response = (status, Body::from(body)).into_response();
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(media));
    headers.insert(VARY, HeaderValue::from_static("Cookie"));
    let Reader(member) = reader;
    let keep = match (member, status) {
        (Some(_), _) => "private, no-store",
        (None, StatusCode::OK) => "no-cache",
        (None, _) => "no-store",
    };
    headers.insert(CACHE_CONTROL, HeaderValue::from_static(keep));
    if keep == "no-cache" { tag.mark(response) } else { response }
}

/// On to another page, after something was written.
pub(super) fn see_other(address: &str) -> Result<Response, Error> {
    let location = HeaderValue::from_str(address).map_err(|error| Error::Internal(error.into()))?;
    let mut response = StatusCode::SEE_OTHER.into_response();
    response.headers_mut().insert(LOCATION, location);
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("no-store"));
    Ok(response)
}

/// On to another page, which says what was done.
pub(super) fn did(app: &App, address: &str, did: Did) -> Result<Response, Error> {
    let mut response = see_other(address)?;
    let path = address.split(['?', '#']).next().unwrap_or_default();
    if let Some(value) = did.cookie(path, &app.base_url) {
        response.headers_mut().append(SET_COOKIE, value);
    }
    Ok(response)
}

/// Takes one from what the member may write.
pub(super) fn may_write(app: &Arc<App>, member: &SignedIn) -> Result<(), Error> {
    let taken = app.write_limit.take(Client::Member(member.id), Instant::now());
    taken.map_err(|wait| Error::TooManyActs { wait })
}
