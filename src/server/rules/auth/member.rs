//! A member who is signed in, and what each may do.

use crate::rules::clock::UnixSeconds;
use crate::rules::notes::open::Open;

/// A member's number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct MemberId(pub i64);

/// What a member may do beyond writing, confirming and reporting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Right {
    /// Passes, declines, corrects and withdraws notes.
    Moderate,
    /// Passes notes that speak of boilers, steam or pressure.
    Inspect,
    /// Lets people in, gives rights, reads the log.
    Manage,
}

/// The rights of one member.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Rights {
    /// Moderator.
    pub moderator: bool,
    /// The club's boiler inspector, or one of them.
    pub inspector: bool,
    /// Secretary.
    pub secretary: bool,
}

impl Rights {
    /// Whether they hold this right. A secretary moderates too: a small club may have nobody else.
    #[must_use]
    pub const fn may(self, right: Right) -> bool {
        match right {
            Right::Moderate => self.moderator || self.secretary,
            Right::Inspect => self.inspector,
            Right::Manage => self.secretary,
        }
    }

    /// Whether a second factor is compulsory for them, unless the settings relax it.
    #[must_use]
    pub const fn need_second_factor(self) -> bool {
        self.moderator || self.secretary
    }
}

/// The member behind a request, whole: every factor given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SignedIn {
    /// Number.
    pub id: MemberId,
    /// The name shown.
    pub name: String,
    /// Rights.
    pub rights: Rights,
    /// The session, by its number.
    pub session: i64,
    /// When the password, and the code where one is due, was last given.
    pub proved_at: UnixSeconds,
    /// Whether a second factor is set up.
    pub has_second_factor: bool,
    /// What there is for them to see to.
    pub open: Open,
}
