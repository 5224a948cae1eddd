//! How far a client may go.

use std::time::Duration;

use super::descriptors;
use crate::front::middleware::body;

/// The limits on connections and requests.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Time for a whole request head; a socket silent for so long is closed.
    pub header: Duration,
    /// Time a client may go without making room for more of its answer.
    pub reader: Duration,
    /// Time to take in what a client still sends after its last answer, so that it can read that.
    pub linger: Duration,
    /// Time for open requests to finish after a stop was asked for: with all that follows it stays
    /// below [`super::signals::DEADLINE`].
    pub drain: Duration,
    /// Connections at once; more wait in the system's queue.
    pub connections: usize,
    /// Connections at once from one address; those over it are closed. A browser has six, and a clubroom
    /// of readers may share one address.
    pub each: usize,
    /// The limits on a request's body.
    pub body: body::Limits,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            header: Duration::from_secs(5),
            reader: Duration::from_secs(10),
            linger: Duration::from_secs(2),
            drain: Duration::from_secs(7),
            connections: 1024,
            each: 128,
            body: body::Limits::default(),
        }
    }
}

impl Limits {
    /// The same with no more connections than a process can hold that may open so many files.
    #[must_use]
    pub fn within(self, descriptors: usize) -> Self {
        let most = descriptors.saturating_sub(descriptors::RESERVE).max(1);
        let connections = self.connections.min(most);
        // Half of what there is, where there is little.
        Self { connections, each: self.each.min(connections.div_ceil(2)), ..self }
    }
}
