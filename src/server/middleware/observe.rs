//! The request's id, its one line in the log, and its place in the metrics.

use std::sync::Arc;
use std::time::Instant;

use axum::body::HttpBody;
use axum::extract::{MatchedPath, Request, State};
use axum::http::HeaderValue;
use axum::middleware::Next;
use axum::response::Response;
use tracing::Instrument;

use super::client;
use super::request_id::{self, RequestId};
use crate::App;
use crate::metrics::route;
use holewright_core::units::print;

/// Gives the request an id, answers it, and notes what came of it. The query is not logged: it is
/// the reader's business.
pub async fn observe(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    let started = Instant::now();
    let id = request_id::random();
    let method = request.method().clone();
    let path = request.uri().path().to_owned();
    let matched = request.extensions().get::<MatchedPath>().map(MatchedPath::as_str);
    let route = route::template(matched, &path).to_owned();
    let path = route::loggable(path);
    let client = client::of(&request, &app.config.trusted_proxy).map(|client| client.to_string());
    request.extensions_mut().insert(RequestId(id.clone()));

    let span = tracing::error_span!("request", id);
    let mut response = next.run(request).instrument(span.clone()).await;
    if let Ok(value) = HeaderValue::from_str(&id) {
        response.headers_mut().insert(request_id::HEADER, value);
    }
    let took = started.elapsed();
    app.metrics.answered(route::counted(&route), &method, response.status(), took);
    span.in_scope(|| {
        tracing::info!(
            %method,
            path,
            route,
            status = response.status().as_u16(),
            ms = print::round(took.as_secs_f64() * 1000.0, 3),
            bytes = response.body().size_hint().exact(),
            client,
            "answered"
        );
    });
    response
}
