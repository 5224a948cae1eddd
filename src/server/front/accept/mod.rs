//! The accept loop: our own, because it must give up on silent sockets, on clients that never
//! finish and on readers that do not read, and must end in time when asked to.

mod addresses;
mod connections;
pub mod descriptors;
mod limits;
pub mod signals;
mod socket;

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
use tokio::net::{TcpListener, TcpSocket};
use tokio::sync::{Semaphore, watch};
use tokio::time::{sleep, timeout};
use tower::ServiceExt;

use crate::extract::client::Peer;
use crate::front::middleware::body::Unread;
use crate::rules::TrustedProxy;
use addresses::Addresses;
use connections::{Client, Connections};
use socket::Socket;

pub use limits::Limits;
pub use signals::Signals;

/// Connections that wait in the system's queue while every slot is taken.
const QUEUE: u32 = 1024;
/// What the system may hold of an answer that its reader has not fetched. Small, so that room
/// comes back in small steps and a slow reader is told from one who does not read.
const UNREAD_BYTES: u32 = 64 * 1024;
/// A request's head, and what is read ahead of a body; one head may come to twice as much, by the
/// steps it is read in.
const HEAD_BYTES: usize = 32 * 1024;
/// After a stop, the time a connection just let in has to show its request.
const SETTLE: Duration = Duration::from_millis(100);

/// Opens the socket to accept from.
///
/// # Errors
/// The system refuses the address.
pub fn listen(address: SocketAddr) -> io::Result<TcpListener> {
    let socket = if address.is_ipv4() { TcpSocket::new_v4()? } else { TcpSocket::new_v6()? };
    // A restart need not wait for the last run's connections to be forgotten.
    socket.set_reuseaddr(true)?;
    // Every accepted socket takes it over.
    socket.set_send_buffer_size(UNREAD_BYTES)?;
    socket.bind(address)?;
    socket.listen(QUEUE)
}

/// Where clients come in, and how far they may go.
#[derive(Debug)]
pub struct Door {
    /// Where they knock.
    pub listener: TcpListener,
    /// How far each may go.
    pub limits: Limits,
    /// Those who let in readers of their own.
    pub proxies: Vec<TrustedProxy>,
}

/// Serves until `stop` resolves, then lets open requests finish; a second `stop` ends that at once.
/// On return no request is being worked on.
pub async fn serve(door: Door, router: Router, mut stop: impl AsyncFnMut()) {
    let Door { listener, limits, proxies } = door;
    let slots = Arc::new(Semaphore::new(limits.connections));
    let open = GracefulShutdown::new();
    let (cut, cutting) = watch::channel(());
    let serve = |client| answer(client, router.clone(), limits, &open, cutting.clone());
    let mut connections =
        Connections::new(listener, Arc::clone(&slots), Addresses::new(limits.each, proxies));
    loop {
        tokio::select! {
            client = connections.next() => serve(client),
            () = stop() => break,
        }
    }
    connections.shut().into_iter().for_each(serve);
    let drained = async {
        sleep(SETTLE).await;
        timeout(limits.drain, open.shutdown()).await
    };
    tokio::select! {
        drained = drained => if drained.is_err() {
            tracing::warn!("open requests did not finish in time");
        },
        () = stop() => tracing::warn!("asked twice to stop: open requests are cut off"),
    }
    drop(cut);
    let all = u32::try_from(limits.connections).unwrap_or(u32::MAX);
    let _ = timeout(SETTLE, slots.acquire_many(all)).await;
}

/// Answers the client's requests until it goes, breaks a limit, or `cutting` loses its sender.
fn answer(
    Client { stream, peer, slot }: Client,
    router: Router,
    limits: Limits,
    open: &GracefulShutdown,
    mut cutting: watch::Receiver<()>,
) {
    // Without it a small answer may wait for the client's acknowledgement.
    let _ = stream.set_nodelay(true);
    let unread = Unread::default();
    let told = unread.clone();
    let requests = service_fn(move |request: Request<Incoming>| {
        let mut request = request.map(Body::new);
        request.extensions_mut().insert(Peer(peer));
        request.extensions_mut().insert(told.clone());
        router.clone().oneshot(request)
    });
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(limits.header)
        .max_buf_size(HEAD_BYTES)
        .serve_connection(TokioIo::new(Socket::new(stream, limits, unread)), requests);
    let connection = open.watch(connection);
    tokio::spawn(async move {
        tokio::select! {
            ended = connection => if let Err(error) = ended {
                tracing::debug!(%error, %peer, "connection ended");
            },
            _ = cutting.changed() => {}
        }
        drop(slot);
    });
}
