//! How long a tool cuts. Leaves out setting up, withdrawing to clear swarf, and changing tools.

use super::cutting_speed::feed_rate;
use crate::units::{Frequency, Length, Time};

/// The time to go in so far at a feed a revolution, t = L/(f n).
///
/// # Units
/// The feed and the speed must be more than nothing.
///
/// # Source
/// The feed rate: Machinery's Handbook 31st ed. p. 2178; the time is the way over it.
///
/// # Examples
/// At 46 in a minute (20 tpi at 920 rpm, the handbook's example) an inch and a half takes just
/// under two seconds.
/// ```
/// use holewright_core::{calc::cutting_time::cutting_time, units::{in_seconds, inch, rpm}};
/// let time = cutting_time(inch(1.5), inch(1.0 / 20.0), rpm(920.0));
/// assert!((in_seconds(time) - 60.0 * 1.5 / 46.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn cutting_time(way: Length, feed: Length, spindle: Frequency) -> Time {
    way / feed_rate(feed, spindle)
}
