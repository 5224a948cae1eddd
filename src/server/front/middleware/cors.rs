//! Scripts on other pages: the preflight a browser sends before it asks, and the headers it may show.
//!
//! Who may ask is set with the security headers: everybody.

use axum::body::Body;
use axum::extract::Request;
use axum::http::header::{
    ACCESS_CONTROL_ALLOW_HEADERS, ACCESS_CONTROL_ALLOW_METHODS, ACCESS_CONTROL_EXPOSE_HEADERS,
    ACCESS_CONTROL_MAX_AGE, ALLOW,
};
use axum::http::{HeaderName, HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::Response;

/// What the answer to OPTIONS says.
const PREFLIGHT: [(HeaderName, &str); 4] = [
    (ALLOW, "GET,HEAD,OPTIONS"),
    (ACCESS_CONTROL_ALLOW_METHODS, "GET, HEAD, OPTIONS"),
    (ACCESS_CONTROL_ALLOW_HEADERS, "*"),
    // A day; browsers cut it down as they see fit.
    (ACCESS_CONTROL_MAX_AGE, "86400"),
];

/// Answers OPTIONS under `/api/v1`; lets a script read the tag and the request's number of any
/// other answer there.
pub async fn answer_preflight(request: Request, next: Next) -> Response {
    let path = request.uri().path();
    if path != "/api/v1" && !path.starts_with("/api/v1/") {
        return next.run(request).await;
    }
    if request.method() == Method::OPTIONS {
        let mut response = Response::new(Body::empty());
        *response.status_mut() = StatusCode::NO_CONTENT;
        for (name, value) in PREFLIGHT {
            response.headers_mut().insert(name, HeaderValue::from_static(value));
        }
        return response;
    }
    let mut response = next.run(request).await;
    response.headers_mut().insert(
        ACCESS_CONTROL_EXPOSE_HEADERS,
        HeaderValue::from_static("ETag, Retry-After, X-Request-Id"),
    );
    response
}
