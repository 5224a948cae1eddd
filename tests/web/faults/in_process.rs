//! The accept loop in this process. A test shortens the one limit that it is about: whatever ends
//! then, that limit has ended, however busy the machine is.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use holewright_server::front::accept::{self, Limits};
use holewright_server::front::middleware::body;
use holewright_server::rules::clock::Clock;
use holewright_server::{App, front::routes};
use tokio::runtime::Builder;
use tokio::sync::{Notify, oneshot};
use tokio::time::timeout;

use crate::process::HANG;
use crate::support::{Folder, NOW, config};

/// Longer than any test lasts.
pub(crate) const AGES: Duration = Duration::from_secs(3600);

/// Few connections, and no limit on time that is ever met.
pub(crate) fn patient() -> Limits {
    Limits {
        header: AGES,
        reader: AGES,
        linger: AGES,
        drain: AGES,
        connections: 8,
        each: 8,
        body: body::Limits { window: AGES, least: 250, ..body::Limits::default() },
    }
}

/// As [`patient`], with this window for a body.
pub(crate) fn with_window(window: Duration) -> Limits {
    let patient = patient();
    Limits { body: body::Limits { window, ..patient.body }, ..patient }
}

/// A server on a port of its own, its accept loop running.
pub(crate) struct Serving {
    pub(crate) address: SocketAddr,
    pub(crate) app: Arc<App>,
    pub(crate) stop: Arc<Notify>,
    ended: oneshot::Receiver<()>,
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

    /// Waits until it has stopped.
    pub(crate) async fn ends(&mut self) {
        timeout(HANG, &mut self.ended).await.unwrap().unwrap();
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
                // The crowds here are of many clients, and all of one address: as behind a proxy.
                let proxies = vec!["127.0.0.1".parse().unwrap()];
                let door = accept::Door { listener, limits, proxies };
                accept::serve(door, router, async || asked.notified().await).await;
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
