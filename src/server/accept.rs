//! The accept loop: our own, because it must give up on silent sockets and on clients that never
//! finish, and must end in time when asked to.

use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use axum::http::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use tokio::net::{TcpListener, TcpStream};
use tokio::signal::unix::{Signal, SignalKind, signal};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::{sleep, timeout};
use tower::ServiceExt;

use super::middleware::client::Peer;

/// How far a client may go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Time for a whole request head; a socket silent for so long is closed.
    pub header: Duration,
    /// Time for open requests to finish after a stop was asked for. A container is killed at ten
    /// seconds.
    pub drain: Duration,
    /// Connections at once; more wait in the system's queue.
    pub connections: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self { header: Duration::from_secs(5), drain: Duration::from_secs(8), connections: 1024 }
    }
}

/// Serves until `stop` resolves, then lets open requests finish; a second `stop` ends that at once.
pub async fn serve(
    listener: TcpListener,
    router: Router,
    limits: Limits,
    mut stop: impl AsyncFnMut(),
) {
    let slots = Arc::new(Semaphore::new(limits.connections));
    let open = GracefulShutdown::new();
    loop {
        let (stream, peer, slot) = tokio::select! {
            accepted = accept(&listener, &slots) => accepted,
            () = stop() => break,
        };
        let router = router.clone();
        let requests = service_fn(move |request: Request<Incoming>| {
            let mut request = request.map(Body::new);
            request.extensions_mut().insert(Peer(peer));
            router.clone().oneshot(request)
        });
        let connection = http1::Builder::new()
            .timer(TokioTimer::new())
            .header_read_timeout(limits.header)
            .serve_connection(TokioIo::new(stream), requests);
        let connection = open.watch(connection);
        tokio::spawn(async move {
            if let Err(error) = connection.await {
                tracing::debug!(%error, %peer, "connection ended");
            }
            drop(slot);
        });
    }
    // Closed before the wait, so that a new client is refused at once.
    drop(listener);
    tokio::select! {
        drained = timeout(limits.drain, open.shutdown()) => if drained.is_err() {
            tracing::warn!("open requests did not finish in time");
        },
        () = stop() => tracing::warn!("asked twice to stop: open requests are cut off"),
    }
}

/// The signals that ask the process to stop: SIGTERM, SIGINT.
#[derive(Debug)]
pub struct Signals {
    terminate: Signal,
    interrupt: Signal,
}

impl Signals {
    /// Catches them from now on.
    ///
    /// # Errors
    /// The system refuses.
    pub fn listen() -> io::Result<Self> {
        Ok(Self {
            terminate: signal(SignalKind::terminate())?,
            interrupt: signal(SignalKind::interrupt())?,
        })
    }

    /// Waits for the next one.
    pub async fn next(&mut self) {
        tokio::select! {
            _ = self.terminate.recv() => {}
            _ = self.interrupt.recv() => {}
        }
    }
}

/// The next connection, once there is a slot for it.
async fn accept(
    listener: &TcpListener,
    slots: &Arc<Semaphore>,
) -> (TcpStream, SocketAddr, OwnedSemaphorePermit) {
    loop {
        let Ok(slot) = Arc::clone(slots).acquire_owned().await else {
            // The semaphore is never closed; were it, no connection could be had.
            std::future::pending().await
        };
        match listener.accept().await {
            Ok((stream, peer)) => {
                // Without it a small answer may wait for the client's acknowledgement.
                let _ = stream.set_nodelay(true);
                return (stream, peer, slot);
            }
            Err(error) if is_the_clients(&error) => {}
            Err(error) => {
                // Most likely out of file descriptors: wait for some to come back, do not spin.
                tracing::error!(%error, "cannot accept a connection");
                sleep(Duration::from_secs(1)).await;
            }
        }
    }
}

/// The client went away before it was let in.
fn is_the_clients(error: &io::Error) -> bool {
    matches!(
        error.kind(),
        io::ErrorKind::ConnectionAborted
            | io::ErrorKind::ConnectionRefused
            | io::ErrorKind::ConnectionReset
    )
}
