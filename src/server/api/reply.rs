//! An answer to a program: its form, its tag. Who has it already is told so with the bytes.

use axum::body::{Body, Bytes};
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use serde::Serialize;

use super::acceptable::is_acceptable;
use crate::Error;
use crate::rules::validator::Tag;

/// The JSON of a value.
///
/// # Errors
/// The program takes no JSON: 406.
pub(super) fn json(request: &HeaderMap, value: &impl Serialize) -> Result<Response, Error> {
    let body = serde_json::to_vec(value).map_err(|error| Error::Internal(error.into()))?;
    bytes(request, "application/json", body.into())
}

/// These bytes of this media type.
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
    Ok(tag.mark(response))
}
