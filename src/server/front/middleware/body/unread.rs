//! Word from a body to its socket that it was not read to its end.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// Whether a client of this connection may still be sending what nobody wants.
#[derive(Clone, Debug, Default)]
pub struct Unread(Arc<AtomicBool>);

impl Unread {
    /// A body was refused, or let go.
    pub fn tell(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    /// Whether one was.
    #[must_use]
    pub fn is_told(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}
