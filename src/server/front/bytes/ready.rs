//! A finished answer: its headers and bytes in one coding, sent as often as asked for.

use axum::body::{Body, Bytes, HttpBody};
use axum::http::header::{CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE, ETAG, VARY};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::response::Response;

use super::Coding;
use crate::rules::validator::{Held, Tag};

/// A finished answer of status 200.
#[derive(Clone, Debug)]
pub struct Ready {
    headers: HeaderMap,
    tag: Tag,
    body: Bytes,
    /// Whether these are the bytes for every reader, whatever coding they like best.
    is_for_all: bool,
}

impl Ready {
    /// The answer with these bytes, which are in this coding.
    #[must_use]
    pub fn new(mut headers: HeaderMap, tag: &Tag, coding: Coding, body: Bytes) -> Self {
        describe(&mut headers, Some(tag), coding, body.len());
        // Room for the request's id, so that no copy has to be arranged anew for it.
        headers.reserve(4);
        Self { headers, tag: tag.coded(coding.name()), body, is_for_all: false }
    }

    /// The answer with bytes that no coding makes shorter.
    #[must_use]
    pub fn as_it_is(mut headers: HeaderMap, tag: &Tag, body: Bytes) -> Self {
        if let Some(value) = tag.header() {
            headers.insert(ETAG, value);
        }
        headers.insert(CONTENT_LENGTH, HeaderValue::from(body.len()));
        headers.reserve(4);
        Self { headers, tag: tag.clone(), body, is_for_all: true }
    }

    /// Whether these are the bytes for every reader, whatever coding they like best.
    #[must_use]
    pub fn is_for_all(&self) -> bool {
        self.is_for_all
    }

    /// The answer, or 304 for a reader who has it.
    #[must_use]
    pub fn reply(&self, held: &Held) -> Response {
        if held.holds(&self.tag) {
            return not_modified(&self.headers);
        }
        let mut response = Response::new(Body::from(self.body.clone()));
        *response.headers_mut() = self.headers.clone();
        response
    }

    /// About how much memory it takes.
    #[must_use]
    pub fn weight(&self) -> usize {
        // Each header is an entry of about a hundred bytes with its value.
        self.body.len() + self.headers.len() * 128
    }
}

/// Writes what the coding changes into the headers.
pub(super) fn describe(headers: &mut HeaderMap, tag: Option<&Tag>, coding: Coding, length: usize) {
    if let Some(value) = tag.map(|tag| tag.coded(coding.name())).and_then(|tag| tag.header()) {
        headers.insert(ETAG, value);
    }
    if let Some(name) = coding.header() {
        headers.insert(CONTENT_ENCODING, name);
    }
    headers.insert(CONTENT_LENGTH, HeaderValue::from(length));
    if headers.get(VARY).is_some_and(|held| held == "Cookie") {
        headers.insert(VARY, HeaderValue::from_static("Accept-Encoding, Cookie"));
    } else {
        headers.append(VARY, HeaderValue::from_static("Accept-Encoding"));
    }
}

/// The response, or 304 if it is a 200 with a tag its reader has.
pub(super) fn unless_held(response: Response, held: &Held) -> Response {
    let is_held = response.status() == StatusCode::OK
        && Tag::of(response.headers()).is_some_and(|tag| held.holds(&tag));
    if is_held { not_modified(response.headers()) } else { response }
}

/// The answer to HEAD: the headers of this one.
pub(super) fn head_only(mut response: Response) -> Response {
    // A body that is written out as it is read has no length to say. The router lets it go unread,
    // where of an empty one it would say that its length is 0.
    let Some(length) = response.body().size_hint().exact() else { return response };
    *response.body_mut() = Body::empty();
    // A redirect has no body and says nothing of its length; nor does a 304, whose length would be
    // that of the body it does not send.
    if length > 0 {
        response.headers_mut().entry(CONTENT_LENGTH).or_insert_with(|| HeaderValue::from(length));
    }
    response
}

/// 304: every header of the whole answer but those that speak of its body.
fn not_modified(full: &HeaderMap) -> Response {
    let mut response = Response::new(Body::empty());
    *response.status_mut() = StatusCode::NOT_MODIFIED;
    let headers = response.headers_mut();
    *headers = full.clone();
    for name in [CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE] {
        headers.remove(name);
    }
    response
}
