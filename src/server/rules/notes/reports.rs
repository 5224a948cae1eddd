//! How many notes one member may hide in a day by reporting them.

use crate::rules::auth::{Right, Rights};
use crate::rules::clock::UnixSeconds;

/// So far back, and no further, reports are counted.
pub const DAY: UnixSeconds = 24 * 60 * 60;
/// More dangers than anybody meets in a day's reading, and so few that one account cannot empty the club's
/// notes.
pub const MOST_A_DAY: i64 = 5;

/// Whether a member with these rights who reported so many notes within a day may report another. Whoever
/// could withdraw it needs no report.
///
/// # Examples
/// ```
/// use holewright_server::rules::auth::Rights;
/// use holewright_server::rules::notes::reports::{MOST_A_DAY, may_report};
/// assert!(may_report(MOST_A_DAY - 1, Rights::default()));
/// assert!(!may_report(MOST_A_DAY, Rights::default()));
/// ```
#[must_use]
pub fn may_report(sent_of_late: i64, rights: Rights) -> bool {
    sent_of_late < MOST_A_DAY || rights.may(Right::Moderate)
}
