//! The listener that shows the metrics, apart from the one readers use: off unless asked for.

use std::convert::Infallible;
use std::io;
use std::net::SocketAddr;
use std::sync::Arc;

use axum::Router;
use axum::http::HeaderName;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE, X_CONTENT_TYPE_OPTIONS};
use axum::routing::get;
use prometheus_client::encoding::prometheus_text;
use tokio::net::TcpListener;

use crate::App;
use crate::front::accept;

/// The second listener, if there is to be one.
#[derive(Debug)]
pub struct MetricsListener(Option<TcpListener>);

/// The address for the metrics cannot be listened on.
#[derive(Debug, thiserror::Error)]
#[error(
    "cannot listen on {address} for the metrics: {source}; choose another address with --metrics-listen"
)]
pub struct CannotListen {
    address: SocketAddr,
    source: io::Error,
}

impl MetricsListener {
    /// Takes the address, so that a wrong one stops the start.
    ///
    /// # Errors
    /// It cannot be listened on.
    pub async fn open(address: Option<SocketAddr>) -> Result<Self, CannotListen> {
        let Some(address) = address else { return Ok(Self(None)) };
        let listener = TcpListener::bind(address).await;
        listener
            .map(|listener| Self(Some(listener)))
            .map_err(|source| CannotListen { address, source })
    }

    /// Shows the metrics there for as long as the process runs.
    pub fn serve(self, app: &Arc<App>) {
        let Some(listener) = self.0 else { return };
        if let Ok(address) = listener.local_addr() {
            tracing::info!("metrics at http://{address}/metrics");
        }
        let limits = accept::Limits { connections: 16, each: 8, ..accept::Limits::default() };
        let door = accept::Door { listener, limits, proxies: Vec::new() };
        let router = router(Arc::clone(app));
        tokio::spawn(accept::serve(door, router, async || never().await));
    }
}

/// The one address of the second listener.
fn router(app: Arc<App>) -> Router {
    let show = async move || (headers(), app.metrics.text(app.last_backup().await));
    Router::new().route("/metrics", get(show))
}

fn headers() -> [(HeaderName, &'static str); 3] {
    [
        (CONTENT_TYPE, prometheus_text::CONTENT_TYPE),
        (CACHE_CONTROL, "no-store"),
        (X_CONTENT_TYPE_OPTIONS, "nosniff"),
    ]
}

async fn never() {
    std::future::pending::<Infallible>().await;
}
