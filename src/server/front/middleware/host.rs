//! Refuses a request over the wire that does not say once, in clear, which host it asks.
//!
//! HTTP asks for this answer (RFC 9112, section 3.2): where two programs on the way read a request
//! differently, one of them can be led past the other. Nothing here is built from what it says.

use axum::extract::Request;
use axum::http::header::HOST;
use axum::http::uri::Authority;
use axum::http::{HeaderMap, Version};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::Error;
use crate::extract::client::Peer;

/// Hands the request on, unless its host is missing, there twice, or none: then 400. A request that is
/// made inside the process came over no wire and has none.
pub async fn refuse_unclear(request: Request, next: Next) -> Response {
    let is_from_outside = request.extensions().get::<Peer>().is_some();
    if is_from_outside && !is_clear(request.version(), request.headers()) {
        return Error::UnclearHost.into_response();
    }
    next.run(request).await
}

/// Whether the host is named as this version of HTTP asks.
fn is_clear(version: Version, headers: &HeaderMap) -> bool {
    let mut named = headers.get_all(HOST).iter();
    match (named.next(), named.next()) {
        (None, _) => version <= Version::HTTP_10,
        (Some(host), None) => host
            .to_str()
            .ok()
            .and_then(|host| host.parse::<Authority>().ok())
            .is_some_and(|host| !host.as_str().contains('@') && !host.host().is_empty()),
        (Some(_), Some(_)) => false,
    }
}
