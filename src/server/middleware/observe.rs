//! The request's id and its one line in the log.

use std::sync::Arc;
use std::time::Instant;

use axum::body::HttpBody;
use axum::extract::{MatchedPath, Request, State};
use axum::http::HeaderValue;
use axum::middleware::Next;
use axum::response::Response;
use tracing::Instrument;

use super::client::{self, Peer};
use super::request_id::{self, RequestId};
use crate::server::App;
use crate::units::print;

/// Gives the request an id, answers it, and logs what came of it. The query is not logged: it is
/// the reader's business.
pub async fn observe(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    let started = Instant::now();
    let id = request_id::random();
    let method = request.method().clone();
    let path = request.uri().path().to_owned();
    let route = request
        .extensions()
        .get::<MatchedPath>()
        .map_or_else(|| "pages".to_owned(), |route| route.as_str().to_owned());
    let client = request.extensions().get::<Peer>().map(|Peer(peer)| {
        client::address(peer.ip(), request.headers(), &app.config.trusted_proxy).to_string()
    });
    request.extensions_mut().insert(RequestId(id.clone()));

    let span = tracing::error_span!("request", id);
    let mut response = next.run(request).instrument(span.clone()).await;
    if let Ok(value) = HeaderValue::from_str(&id) {
        response.headers_mut().insert(request_id::HEADER, value);
    }
    span.in_scope(|| {
        tracing::info!(
            %method,
            path,
            route,
            status = response.status().as_u16(),
            ms = print::round(started.elapsed().as_secs_f64() * 1000.0, 3),
            bytes = response.body().size_hint().exact(),
            client,
            "answered"
        );
    });
    response
}
