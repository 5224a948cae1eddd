//! The signals that ask the process to stop: SIGTERM, SIGINT.

use std::io;

use tokio::signal::unix::{Signal, SignalKind, signal};

/// Both, caught.
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
