//! The wall clock: the only place that reads it, so that a test can set it.

use std::time::{Instant, UNIX_EPOCH};

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

/// How far the wall clock may go from the time that went by, in seconds.
const ASTRAY: i64 = 60 * 60;

/// One moment by the wall clock and by the count of time that nobody sets.
#[derive(Clone, Copy, Debug)]
pub struct Moment {
    /// By the wall clock.
    pub wall: UnixSeconds,
    /// By the other.
    pub count: Instant,
}

impl Moment {
    /// Now.
    #[must_use]
    pub fn at(clock: Clock) -> Self {
        Self { wall: clock.now(), count: Instant::now() }
    }

    /// Whether the wall clock went on to the later moment as time did.
    #[must_use]
    pub fn runs_true_to(self, later: Self) -> bool {
        let went_by = later.count.saturating_duration_since(self.count).as_secs();
        let went_by = i64::try_from(went_by).unwrap_or(i64::MAX);
        (later.wall - self.wall).abs_diff(went_by) < ASTRAY.unsigned_abs()
    }
}

#[expect(clippy::disallowed_methods, reason = "this is the injected clock's source")]
fn system_now() -> UnixSeconds {
    let since = std::time::SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_secs()).unwrap_or(i64::MAX)
}
