//! The request's id, its one line in the log, and its place in the metrics.

use std::sync::Arc;
use std::time::Instant;

use axum::body::HttpBody;
use axum::extract::{Request, State};
use axum::http::HeaderValue;
use axum::http::header::FORWARDED;
use axum::middleware::Next;
use axum::response::Response;
use tracing::Instrument;

use super::request_id::{self, RequestId};
use crate::App;
use crate::extract::client::{self, Peer};
use crate::front::log::loggable;
use crate::front::place::Place;
use holewright_core::units::print;

/// Gives the request an id, answers it, and notes what came of it. The query is not logged: it is
/// the reader's business.
pub async fn observe(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    let started = Instant::now();
    let id = crate::rules::chance::random();
    let method = request.method().clone();
    let path = request.uri().path().to_owned();
    let route = Place::find(&mut request, app.routes).template();
    let path = loggable(path);
    tell_of_unnamed_proxy(&app, &request);
    let client = client::of(&request, &app.config.trusted_proxy).map(|client| client.to_string());
    request.extensions_mut().insert(RequestId(id.clone()));

    let span = tracing::error_span!("request", id);
    let mut response = next.run(request).instrument(span.clone()).await;
    if let Ok(value) = HeaderValue::from_str(&id) {
        response.headers_mut().insert(request_id::HEADER, value);
    }
    let took = started.elapsed();
    app.metrics.answered(route, &method, response.status(), took);
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

/// Behind a proxy that is not named all readers are one to us, which shows only once it hurts.
fn tell_of_unnamed_proxy(app: &App, request: &Request) {
    let headers = request.headers();
    let is_forwarded =
        || headers.contains_key("x-forwarded-for") || headers.contains_key(FORWARDED);
    if let Some(Peer(peer)) = request.extensions().get()
        && is_forwarded()
        && !app.config.trusted_proxy.iter().any(|proxy| proxy.contains(peer.ip()))
        && app.unnamed_proxies.is_new(peer.ip())
    {
        let proxy = peer.ip().to_canonical();
        tracing::warn!(
            "{proxy} sends requests on for others and is not named as a proxy, so that all its readers count \
             as one: ten wrong passwords shut all of them out of signing in. If it is yours, start with \
             --trusted-proxy {proxy} or HOLEWRIGHT_TRUSTED_PROXY={proxy}; if not, nothing need be done"
        );
    }
}
