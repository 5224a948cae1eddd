//! The security headers, and who may embed an answer: on every answer, whatever its status.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::header::{
    ACCESS_CONTROL_ALLOW_ORIGIN, CONTENT_SECURITY_POLICY, REFERRER_POLICY,
    STRICT_TRANSPORT_SECURITY, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderName, HeaderValue};
use axum::middleware::Next;
use axum::response::Response;

use crate::App;

/// Nothing from elsewhere, nothing inline, no frame.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; \
    connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; \
    object-src 'none'; frame-ancestors 'none'";

const PERMISSIONS: &str = "camera=(), geolocation=(), microphone=(), payment=(), usb=(), \
    screen-wake-lock=(self), clipboard-write=(self)";

/// Sets the headers on the answer.
pub async fn set(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let path = request.uri().path();
    let is_api = path.starts_with("/api/v1");
    // Figures may be read from a script on any page, wherever they stand.
    let is_figures = path.ends_with(".json") && !is_private(path);
    let is_data = is_api || is_figures || path == "/reference.sqlite";
    // Drawings and figures are there to be shown in a forum post; pages are not.
    let is_shared = is_data || path.ends_with(".svg");
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    set_static(headers, CONTENT_SECURITY_POLICY, POLICY);
    set_static(headers, X_CONTENT_TYPE_OPTIONS, "nosniff");
    set_static(headers, REFERRER_POLICY, "same-origin");
    set_static(headers, HeaderName::from_static("permissions-policy"), PERMISSIONS);
    set_static(headers, HeaderName::from_static("cross-origin-opener-policy"), "same-origin");
    let sharing = if is_shared { "cross-origin" } else { "same-origin" };
    set_static(headers, HeaderName::from_static("cross-origin-resource-policy"), sharing);
    if is_data {
        set_static(headers, ACCESS_CONTROL_ALLOW_ORIGIN, "*");
    }
    if app.base_url.is_https() {
        set_static(headers, STRICT_TRANSPORT_SECURITY, "max-age=31536000; includeSubDomains");
    }
    response
}

/// Addresses whose answers are one member's own.
fn is_private(path: &str) -> bool {
    ["/me", "/people", "/queue"].into_iter().any(|door| {
        path.strip_prefix(door).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
    })
}

fn set_static(headers: &mut HeaderMap, name: HeaderName, value: &'static str) {
    headers.insert(name, HeaderValue::from_static(value));
}
