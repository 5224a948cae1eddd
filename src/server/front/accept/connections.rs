//! The connections that are let in: as many as there are slots and file descriptors for.

use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::sleep;

/// Between two tries while the system has no descriptor left.
const RETRY: Duration = Duration::from_millis(100);
/// Between two lines in the log about that.
const COMPLAIN: Duration = Duration::from_secs(1);

/// One connection that was let in.
pub(super) struct Client {
    pub(super) stream: TcpStream,
    pub(super) peer: SocketAddr,
    /// Held as long as the connection is open.
    pub(super) slot: OwnedSemaphorePermit,
}

/// The listener and its slots.
pub(super) struct Connections {
    listener: TcpListener,
    slots: Arc<Semaphore>,
    complained: Option<Instant>,
}

impl Connections {
    pub(super) fn new(listener: TcpListener, slots: Arc<Semaphore>) -> Self {
        Self { listener, slots, complained: None }
    }

    /// The next client, once there is a slot for it. May be given up at any point.
    pub(super) async fn next(&mut self) -> Client {
        loop {
            let Ok(slot) = Arc::clone(&self.slots).acquire_owned().await else {
                // The semaphore is never closed; were it, no connection could be had.
                std::future::pending().await
            };
            match self.listener.accept().await {
                Ok((stream, peer)) => return Client { stream, peer, slot },
                Err(error) if is_the_clients(&error) => {}
                Err(error) => {
                    // Most likely out of descriptors: wait for some to come back, do not spin.
                    self.complain(&error);
                    sleep(RETRY).await;
                }
            }
        }
    }

    fn complain(&mut self, error: &io::Error) {
        if self.complained.is_none_or(|then| then.elapsed() >= COMPLAIN) {
            tracing::error!(%error, "cannot accept a connection");
            self.complained = Some(Instant::now());
        }
    }

    /// Lets no more in: who already stands in the system's queue still comes in, as far as there are
    /// slots; a new client is refused.
    pub(super) fn shut(self) -> Vec<Client> {
        let Ok(listener) = self.listener.into_std() else { return Vec::new() };
        // It does not block: once the queue is empty it says so.
        std::iter::from_fn(|| {
            let slot = Arc::clone(&self.slots).try_acquire_owned().ok()?;
            let (stream, peer) = listener.accept().ok()?;
            stream.set_nonblocking(true).ok()?;
            Some(Client { stream: TcpStream::from_std(stream).ok()?, peer, slot })
        })
        .collect()
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
