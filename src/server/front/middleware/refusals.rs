//! Writes the body of a refusal: problem details under `/api/`, a page elsewhere.

use std::sync::Arc;

use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_LENGTH, CONTENT_TYPE, RETRY_AFTER};
use axum::http::{HeaderMap, HeaderValue, Method};
use axum::middleware::Next;
use axum::response::Response;

use super::request_id::RequestId;
use crate::api::problem;
use crate::error::Refused;
use crate::front::place::Place;
use crate::web::{next, page, refusal};
use crate::{App, Error};

/// Answers the request; if that ends in a refusal, logs what lies behind it and writes the body.
pub async fn write_body(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    let is_data = Place::of(&request).is_for_programs();
    let asked = Wanted::of(&request);
    let id = request.extensions().get::<RequestId>().map(|id| id.0.clone()).unwrap_or_default();
    let mut response = next.run(request).await;
    let Some(Refused(error)) = response.extensions_mut().remove::<Refused>() else {
        return response;
    };
    log(&error);
    if !is_data && let Some(door) = asked.door_instead(&error) {
        return door;
    }
    let (content_type, body) = if is_data {
        ("application/problem+json", problem::body(&error, &path, &id))
    } else {
        ("text/html; charset=utf-8", refusal::body(&error, &id, &app.context))
    };
    set_headers(response.headers_mut(), &error, content_type);
    *response.body_mut() = Body::from(body);
    response
}

/// Where the reader was going.
struct Wanted {
    /// A page they can be brought back to.
    page: String,
}

impl Wanted {
    fn of(request: &Request) -> Self {
        let uri = request.uri();
        // Every form of ours stands at the address it is sent to, but for its query, or one step above it.
        let page = match (request.method(), uri.path_and_query()) {
            (&Method::GET | &Method::HEAD, Some(asked)) => asked.as_str(),
            _ if Place::of(request).is_sent_to_alone() => above(uri.path()),
            _ => uri.path(),
        };
        Self { page: page.to_owned() }
    }

    /// The page that leads on from this refusal, and back: who is not signed in is asked to sign in.
    fn door_instead(&self, error: &Error) -> Option<Response> {
        let door = match error {
            Error::Unauthenticated => "/sign-in",
            Error::ProveFirst => "/prove",
            Error::SecondFactorFirst => return Some(page::see_other("/me/second-factor")),
            _ => return None,
        };
        Some(page::see_other(&next::Next::read(&self.page).carried_to(door)))
    }
}

/// The address one step above.
fn above(path: &str) -> &str {
    path.trim_end_matches('/').rsplit_once('/').map_or(path, |(above, _)| above)
}

fn log(error: &Error) {
    match error {
        Error::Internal(source) => tracing::error!(%source, "failed"),
        Error::Unavailable(source) | Error::Full(source) => tracing::warn!(%source, "unavailable"),
        Error::GoneHereAlone(error) => log(error),
        _ => {}
    }
}

fn set_headers(headers: &mut HeaderMap, error: &Error, content_type: &'static str) {
    // Set for the empty body that stood here.
    headers.remove(CONTENT_LENGTH);
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(content_type));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-store"));
    if let Some(seconds) = error.retry_after() {
        headers.insert(RETRY_AFTER, HeaderValue::from(seconds));
    }
}
