//! How many notes one member may hide in a day by reporting them, and who settles many reports at once.

use crate::rules::auth::{Right, Rights};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::state::{Others, StandIns};

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

/// Whether somebody with these rights may settle everything they reported themselves at once: only where nobody else
/// could look at it.
///
/// # Examples
/// ```
/// use holewright_server::rules::auth::Rights;
/// use holewright_server::rules::notes::reports::may_settle_own;
/// use holewright_server::rules::notes::state::{Others, StandIns};
/// let moderator = Rights { moderator: true, ..Rights::default() };
/// let with = |moderators| StandIns { moderators, inspectors: Others::Nobody };
/// assert!(!may_settle_own(moderator, with(Others::Can)));
/// assert!(may_settle_own(moderator, with(Others::Nobody)));
/// ```
#[must_use]
pub fn may_settle_own(rights: Rights, others: StandIns) -> bool {
    let nobody = |others, right| !rights.may(right) || others == Others::Nobody;
    nobody(others.moderators, Right::Moderate) && nobody(others.inspectors, Right::Inspect)
}
