//! The body of a request: how large it may be, how slow, in how many pieces and fields. Holds for
//! every route, whatever its handler does with the body.
//!
//! A compressed body is refused and never unpacked. Leaves out: what the fields mean.

mod limits;
mod measured;
mod unread;

use std::sync::Arc;

use axum::body::{Body, HttpBody};
use axum::extract::{Request, State};
use axum::http::HeaderValue;
use axum::http::header::{CONNECTION, CONTENT_ENCODING, CONTENT_TYPE};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use super::budget::OverBudget;
use crate::extract::Refusal;
use crate::front::place::Place;
use crate::{App, Error};
use measured::{Finding, Measured, Word};

pub use limits::Limits;
pub use unread::Unread;

/// Lets the request through with its body measured. If the body turns out to break a limit, that
/// is the answer, whatever the handler made of it.
pub async fn limit(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let limits = app.limits.body.taking(Place::of(&request).takes());
    let unread = request.extensions().get::<Unread>().cloned().unwrap_or_default();
    let refused = match request.extensions().get::<OverBudget>() {
        Some(OverBudget) => Some(Error::Crowded),
        None => check_head(&request, limits).err().map(Error::Body),
    };
    if let Some(refused) = refused {
        unread.tell();
        return refuse(refused);
    }
    if request.body().is_end_stream() {
        return next.run(request).await;
    }
    let finding = Finding::default();
    let limits = if is_form(&request) { limits } else { Limits { fields: usize::MAX, ..limits } };
    let found = Arc::clone(&finding);
    let request =
        request.map(|body| Body::new(Measured::new(body, limits, Word { finding: found, unread })));
    let response = next.run(request).await;
    match finding.get() {
        Some(refusal) => refuse(Error::Body(*refusal)),
        None => response,
    }
}

/// What can be seen before the body comes. Forms are sent in the address too.
fn check_head(request: &Request, limits: Limits) -> Result<(), Refusal> {
    let query = request.uri().query().unwrap_or_default();
    let fields = query.bytes().filter(|byte| *byte == b'&').count();
    let is_plain = |coding: &HeaderValue| coding.as_bytes().eq_ignore_ascii_case(b"identity");
    if fields >= limits.fields {
        Err(Refusal::TooManyFields)
    } else if request.body().size_hint().lower() > limits.bytes {
        Err(Refusal::TooLarge(limits.bytes))
    } else if !request.headers().get_all(CONTENT_ENCODING).iter().all(is_plain) {
        Err(Refusal::Compressed)
    } else {
        Ok(())
    }
}

fn is_form(request: &Request) -> bool {
    let form = b"application/x-www-form-urlencoded";
    request
        .headers()
        .get(CONTENT_TYPE)
        .and_then(|kind| kind.as_bytes().get(..form.len()))
        .is_some_and(|kind| kind.eq_ignore_ascii_case(form))
}

/// The rest of the body is not wanted, so the connection cannot be used again.
fn refuse(error: Error) -> Response {
    let mut response = error.into_response();
    response.headers_mut().insert(CONNECTION, HeaderValue::from_static("close"));
    response
}
