//! Which state of the data an answer shows: a count of what was committed.

use std::sync::atomic::{AtomicU64, Ordering};

/// One state of the data.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Generation(pub u64);

/// The states of the data since the start.
#[derive(Debug, Default)]
pub struct Generations(AtomicU64);

impl Generations {
    /// Something that readers see may have changed: the database says so after every commit. Every kept
    /// answer is then asked for anew when it is next wanted; one whose tag comes out the same is not
    /// coded again. Dear, were it done often; members write now and then.
    pub fn changed(&self) {
        self.0.fetch_add(1, Ordering::AcqRel);
    }

    /// The state of the data now.
    #[must_use]
    pub fn now(&self) -> Generation {
        Generation(self.0.load(Ordering::Acquire))
    }
}

/// Put on a response by its handler: the answer at this path is the same for every reader, and
/// only so many paths say so. Never for an answer that hangs on a cookie or a query.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Keep;
