//! Refuses what changes something and was sent from a page of another site.
//!
//! A browser says where a request comes from: `Sec-Fetch-Site`, or `Origin` in older ones and over
//! plain HTTP. No token is needed. Leaves out who the reader is.
//!
//! By hand, because the layer of `tower-http` lets more through: an origin of ours on a request whose
//! browser says it is from another site, and a page without TLS at a host that has it.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{HOST, ORIGIN};
use axum::http::{HeaderMap, Method};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::rules::BaseUrl;
use crate::rules::cookie;
use crate::{App, Error};

/// The cookies that sign a reader in, with a base URL of HTTPS and without.
pub const SESSIONS: [&str; 2] = ["__Host-holewright", "holewright"];

/// A request from a page of another site, or from one that hides where it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Foreign;

/// Hands the request on, unless it changes something and comes from elsewhere: then 403.
pub async fn refuse_foreign(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    match check(request.method(), request.headers(), &app.base_url) {
        Ok(()) => next.run(request).await,
        Err(Foreign) => Error::Foreign.into_response(),
    }
}

/// Whether a request may change something.
///
/// A request that says nothing of where it comes from was made by no browser of today: it may, unless
/// it carries a session.
///
/// # Errors
/// [`Foreign`].
pub fn check(method: &Method, headers: &HeaderMap, own: &BaseUrl) -> Result<(), Foreign> {
    let is_ours = method.is_safe()
        || match (one(headers, "sec-fetch-site"), one(headers, ORIGIN.as_str())) {
            (Header::Once(site), _) => matches!(site, "same-origin" | "none"),
            (Header::Nothing, Header::Once(origin)) => is_own(origin, headers, own),
            (Header::Nothing, Header::Nothing) => {
                !SESSIONS.iter().any(|name| cookie::is_there(headers, name))
            }
            (Header::Unclear, _) | (_, Header::Unclear) => false,
        };
    if is_ours { Ok(()) } else { Err(Foreign) }
}

/// The base URL, whatever a proxy makes of the host; or the host that was asked, over TLS where the
/// base URL is.
fn is_own(origin: &str, headers: &HeaderMap, own: &BaseUrl) -> bool {
    let Some((scheme, host)) = origin.split_once("://") else { return false };
    let is_asked = matches!(one(headers, HOST.as_str()), Header::Once(asked)
        if !asked.is_empty() && asked.eq_ignore_ascii_case(host));
    origin.eq_ignore_ascii_case(own.as_str())
        || (is_asked && (scheme == "https" || (scheme == "http" && !own.is_https())))
}

/// What a header says.
enum Header<'a> {
    Nothing,
    Once(&'a str),
    /// Twice, or in bytes that are no text.
    Unclear,
}

fn one<'a>(headers: &'a HeaderMap, name: &str) -> Header<'a> {
    let mut values = headers.get_all(name).iter();
    match (values.next(), values.next()) {
        (None, _) => Header::Nothing,
        (Some(value), None) => value.to_str().map_or(Header::Unclear, Header::Once),
        _ => Header::Unclear,
    }
}
