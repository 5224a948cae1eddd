//! Writes the body of a refusal: problem details under `/api/`, a page elsewhere.

use std::sync::Arc;

use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_LENGTH, CONTENT_TYPE, RETRY_AFTER};
use axum::http::{HeaderMap, HeaderValue};
use axum::middleware::Next;
use axum::response::Response;

use super::request_id::RequestId;
use crate::server::api::problem;
use crate::server::error::Refused;
use crate::server::web::refusal;
use crate::server::{App, Error};

/// Answers the request; if that ends in a refusal, logs what lies behind it and writes the body.
pub async fn write_body(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    let id = request.extensions().get::<RequestId>().map(|id| id.0.clone()).unwrap_or_default();
    let mut response = next.run(request).await;
    let Some(Refused(error)) = response.extensions_mut().remove::<Refused>() else {
        return response;
    };
    log(&error);
    let (content_type, body) = if path.starts_with("/api/") || path.ends_with(".json") {
        ("application/problem+json", problem::body(&error, &path, &id))
    } else {
        ("text/html; charset=utf-8", refusal::body(&error, &id, &app.context))
    };
    set_headers(response.headers_mut(), &error, content_type);
    *response.body_mut() = Body::from(body);
    response
}

fn log(error: &Error) {
    match error {
        Error::Internal(source) => tracing::error!(%source, "failed"),
        Error::Unavailable(source) => tracing::warn!(%source, "unavailable"),
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
