//! The signals that ask the process to stop: SIGTERM, SIGINT. One that tells of a terminal that has gone, or
//! asks other programs to read their settings anew, SIGHUP, asks nothing of this one.

use std::io;

use tokio::signal::unix::{Signal, SignalKind, signal};

/// Both, caught.
#[derive(Debug)]
pub struct Signals {
    terminate: Signal,
    interrupt: Signal,
    /// Caught, so that it does not end the process.
    _hangup: Signal,
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
            _hangup: signal(SignalKind::hangup())?,
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
