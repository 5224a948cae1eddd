//! A JSON answer with its validator.

use axum::body::Body;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use serde::Serialize;

use crate::server::Error;
use crate::server::validator::Tag;

/// The JSON of a value.
pub(super) fn json(_request: &HeaderMap, value: &impl Serialize) -> Result<Response, Error> {
    let body = serde_json::to_vec(value).map_err(|error| Error::Internal(error.into()))?;
    let tag = Tag::of_bytes(&body);
    let mut response = Response::new(Body::from(body));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("application/json"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    Ok(tag.mark(response))
}
