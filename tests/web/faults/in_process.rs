//! The accept loop in this process, with limits short enough to wait for.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use holewright_server::accept::{self, Limits};
use holewright_server::clock::Clock;
use holewright_server::middleware::body;
use holewright_server::{App, routes};
use tokio::runtime::Builder;
use tokio::sync::{Notify, oneshot};

use crate::support::{Folder, NOW, config};

/// The limits divided: what takes 20 s in earnest takes half a second here.
pub(crate) fn short() -> Limits {
    Limits {
        header: Duration::from_millis(300),
        reader: Duration::from_millis(500),
        linger: Duration::from_millis(500),
        drain: Duration::from_millis(300),
        connections: 8,
        body: body::Limits {
            window: Duration::from_millis(500),
            least: 250,
            ..body::Limits::default()
        },
    }
}

/// A server on a port of its own, its accept loop running.
pub(crate) struct Serving {
    pub(crate) address: SocketAddr,
    pub(crate) app: Arc<App>,
    pub(crate) stop: Arc<Notify>,
    pub(crate) ended: oneshot::Receiver<()>,
    _folder: Folder,
}

impl Serving {
    /// With the real routes.
    pub(crate) async fn start(limits: Limits) -> Self {
        Self::open(limits, routes::router).await
    }

    /// With these routes, and around them what is around the real ones.
    pub(crate) async fn with(limits: Limits, table: Router<Arc<App>>) -> Self {
        Self::open(limits, |app| routes::layered(table, app)).await
    }

    async fn open(limits: Limits, routes: impl FnOnce(Arc<App>) -> Router) -> Self {
        let folder = Folder::new();
        let base_url = "https://club.test".parse().unwrap();
        let mut app = App::open(config(&folder, &[]), base_url, Clock::Fixed(NOW)).await.unwrap();
        app.limits = limits;
        let app = Arc::new(app);
        let router = routes(Arc::clone(&app));
        let stop = Arc::new(Notify::new());
        let asked = Arc::clone(&stop);
        let (says, address) = oneshot::channel();
        let (ends, ended) = oneshot::channel();
        // A runtime of its own: the test may end while the server still closes its connections.
        std::thread::spawn(move || {
            let runtime = Builder::new_multi_thread().enable_all().build().unwrap();
            runtime.block_on(async {
                let listener = accept::listen("127.0.0.1:0".parse().unwrap()).unwrap();
                says.send(listener.local_addr().unwrap()).unwrap();
                accept::serve(listener, router, limits, async || asked.notified().await).await;
            });
            let _ = ends.send(());
        });
        Self { address: address.await.unwrap(), app, stop, ended, _folder: folder }
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        self.stop.notify_one();
    }
}

/// Runs a blocking client beside the server.
pub(crate) async fn beside<T: Send + 'static>(client: impl FnOnce() -> T + Send + 'static) -> T {
    tokio::task::spawn_blocking(client).await.unwrap()
}
