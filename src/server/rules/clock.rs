//! The wall clock: the only place that reads it, so that a test can set it.

use std::time::UNIX_EPOCH;

/// Seconds since 1970, UTC.
pub type UnixSeconds = i64;

/// Where the time comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Clock {
    /// The machine's clock.
    #[default]
    System,
    /// A clock that stands still.
    Fixed(UnixSeconds),
}

impl Clock {
    /// The time now. A machine set before 1970 reads as 1970.
    #[must_use]
    pub fn now(self) -> UnixSeconds {
        match self {
            Self::System => system_now(),
            Self::Fixed(seconds) => seconds,
        }
    }
}

#[expect(clippy::disallowed_methods, reason = "this is the injected clock's source")]
fn system_now() -> UnixSeconds {
    let since = std::time::SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_secs()).unwrap_or(i64::MAX)
}
