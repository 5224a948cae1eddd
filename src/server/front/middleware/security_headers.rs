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
use crate::front::place::{Place, Sharing};

/// Nothing from elsewhere, nothing inline, no frame.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; \
    connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; \
    object-src 'none'; frame-ancestors 'none'";

const PERMISSIONS: &str = "camera=(), geolocation=(), microphone=(), payment=(), usb=(), \
    screen-wake-lock=(self), clipboard-write=(self)";

/// Sets the headers on the answer.
pub async fn set(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let sharing = Place::of(&request).sharing();
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    set_static(headers, CONTENT_SECURITY_POLICY, POLICY);
    set_static(headers, X_CONTENT_TYPE_OPTIONS, "nosniff");
    set_static(headers, REFERRER_POLICY, "same-origin");
    set_static(headers, HeaderName::from_static("permissions-policy"), PERMISSIONS);
    set_static(headers, HeaderName::from_static("cross-origin-opener-policy"), "same-origin");
    let resource_policy = HeaderName::from_static("cross-origin-resource-policy");
    match sharing {
        Sharing::Own => set_static(headers, resource_policy, "same-origin"),
        Sharing::Shown => set_static(headers, resource_policy, "cross-origin"),
        Sharing::Read => {
            set_static(headers, resource_policy, "cross-origin");
            set_static(headers, ACCESS_CONTROL_ALLOW_ORIGIN, "*");
        }
    }
    if app.base_url.is_https() {
        set_static(headers, STRICT_TRANSPORT_SECURITY, "max-age=31536000; includeSubDomains");
    }
    response
}

fn set_static(headers: &mut HeaderMap, name: HeaderName, value: &'static str) {
    headers.insert(name, HeaderValue::from_static(value));
}
