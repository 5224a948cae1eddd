//! An answer to a program: its form, its validator.

use axum::body::{Body, Bytes};
use axum::http::header::{ACCESS_CONTROL_ALLOW_ORIGIN, CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use serde::Serialize;

use super::acceptable::is_acceptable;
use crate::server::Error;
use crate::server::validator::Tag;

/// The JSON of a value, or 304 for a program that has it.
///
/// # Errors
/// The program takes no JSON: 406.
pub(super) fn json(request: &HeaderMap, value: &impl Serialize) -> Result<Response, Error> {
    let body = serde_json::to_vec(value).map_err(|error| Error::Internal(error.into()))?;
    bytes(request, "application/json", body.into())
}

/// These bytes of this media type, or 304 for a program that has them.
///
/// # Errors
/// The program does not take this media type: 406.
pub(super) fn bytes(
    request: &HeaderMap,
    media: &'static str,
    body: Bytes,
) -> Result<Response, Error> {
    if !is_acceptable(request, media) {
        return Err(Error::NotAcceptable(media));
    }
    let tag = Tag::of_bytes(&body);
    let mut response = Response::new(Body::from(body));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(media));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    Ok(open_to_all(tag.mark(response)))
}

/// Figures may be read from a script on any page.
fn open_to_all(mut response: Response) -> Response {
    response.headers_mut().insert(ACCESS_CONTROL_ALLOW_ORIGIN, HeaderValue::from_static("*"));
    response
}
