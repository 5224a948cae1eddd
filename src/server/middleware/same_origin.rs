//! Refuses what another site's page sends in a reader's name.
//!
//! It goes by what the browser says of where a request comes from, so no form holds a token and none
//! can grow too old in an open tab. A browser that says nothing, but holds a session, is refused.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{HOST, ORIGIN};
use axum::http::{HeaderMap, Method};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::server::auth::cookie;
use crate::server::config::BaseUrl;
use crate::server::{App, Error};

/// Answers the request, unless it could change something and comes from elsewhere: then 403.
pub async fn require(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    if only_reads(request.method()) || is_ours(request.headers(), &app.base_url) {
        next.run(request).await
    } else {
        Error::Elsewhere.into_response()
    }
}

fn only_reads(method: &Method) -> bool {
    matches!(*method, Method::GET | Method::HEAD | Method::OPTIONS)
}

/// Whether a page of this site sent it, or a program without a session.
fn is_ours(headers: &HeaderMap, base_url: &BaseUrl) -> bool {
    if let Some(site) = headers.get("sec-fetch-site") {
        return matches!(site.as_bytes(), b"same-origin" | b"none");
    }
    match headers.get(ORIGIN) {
        Some(origin) => origin.to_str().is_ok_and(|origin| is_here(origin, headers, base_url)),
        None => cookie::read(headers, base_url).is_none(),
    }
}

/// The address that readers are told, or the one this reader came by with the same scheme: on a
/// home network a machine goes by several names. A proxy may write its own `Host`; then the first
/// one counts.
fn is_here(origin: &str, headers: &HeaderMap, base_url: &BaseUrl) -> bool {
    let scheme = if base_url.is_https() { "https://" } else { "http://" };
    let host = headers.get(HOST).and_then(|host| host.to_str().ok());
    let came_by = || origin.strip_prefix(scheme).is_some_and(|origin| host == Some(origin));
    origin.eq_ignore_ascii_case(base_url.as_str()) || came_by()
}
