//! The connections that are let in: as many as there are slots and file descriptors for, and of each
//! address no more than its share.

use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::sleep;

use super::addresses::Addresses;
use crate::rules::shares::Share;

/// Between two tries while the system has no descriptor left.
const RETRY: Duration = Duration::from_millis(100);
/// Between two lines in the log about the same trouble.
const COMPLAIN: Duration = Duration::from_secs(1);

/// One connection that was let in.
pub(super) struct Client {
    pub(super) stream: TcpStream,
    pub(super) peer: SocketAddr,
    /// Held as long as the connection is open.
    pub(super) slot: Slot,
}

/// Room for one: among all, and among those of its address.
pub(super) struct Slot {
    _among_all: OwnedSemaphorePermit,
    _among_its_own: Share,
}

/// The listener and its slots.
pub(super) struct Connections {
    listener: TcpListener,
    slots: Arc<Semaphore>,
    addresses: Addresses,
    complained: Option<Instant>,
    crowded: Option<Instant>,
}

impl Connections {
    pub(super) fn new(listener: TcpListener, slots: Arc<Semaphore>, addresses: Addresses) -> Self {
        Self { listener, slots, addresses, complained: None, crowded: None }
    }

    /// The next client, once there is a slot for it. May be given up at any point.
    pub(super) async fn next(&mut self) -> Client {
        loop {
            let Ok(among_all) = Arc::clone(&self.slots).acquire_owned().await else {
                // The semaphore is never closed; were it, no connection could be had.
                std::future::pending().await
            };
            match self.listener.accept().await {
                Ok((stream, peer)) => match self.addresses.take(peer.ip()) {
                    Some(held) => {
                        let slot = Slot { _among_all: among_all, _among_its_own: held };
                        return Client { stream, peer, slot };
                    }
                    None => self.tell_of(peer),
                },
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
        if is_due(&mut self.complained) {
            tracing::error!(%error, "cannot accept a connection");
        }
    }

    fn tell_of(&mut self, peer: SocketAddr) {
        if is_due(&mut self.crowded) {
            let client = peer.ip().to_canonical();
            tracing::warn!(
                %client,
                "more connections than one address may have: those too many were closed; a proxy of yours has \
                 no such limit if you name it with --trusted-proxy"
            );
        }
    }

    /// Lets no more in: who already stands in the system's queue still comes in, as far as there are
    /// slots; a new client is refused.
    pub(super) fn shut(self) -> Vec<Client> {
        let Ok(listener) = self.listener.into_std() else { return Vec::new() };
        // It does not block: once the queue is empty it says so.
        std::iter::from_fn(|| {
            let among_all = Arc::clone(&self.slots).try_acquire_owned().ok()?;
            let (stream, peer) = listener.accept().ok()?;
            Some((among_all, stream, peer))
        })
        .filter_map(|(among_all, stream, peer)| {
            let held = self.addresses.take(peer.ip())?;
            stream.set_nonblocking(true).ok()?;
            let slot = Slot { _among_all: among_all, _among_its_own: held };
            Some(Client { stream: TcpStream::from_std(stream).ok()?, peer, slot })
        })
        .collect()
    }
}

/// Whether so much time has gone by since the last line that there may be another, which is then the
/// last.
fn is_due(last: &mut Option<Instant>) -> bool {
    let is_due = last.is_none_or(|then| then.elapsed() >= COMPLAIN);
    if is_due {
        *last = Some(Instant::now());
    }
    is_due
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
