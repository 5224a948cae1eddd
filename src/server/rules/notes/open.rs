//! How much there is for a member to see to.

use crate::rules::clock::UnixSeconds;

/// What is open for a member.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Open {
    /// Notes of their own with a change asked for.
    pub asked: i64,
    /// Notes that wait for their decision, or are hidden until it.
    pub notes: i64,
    /// Remarks that wait for it.
    pub remarks: i64,
    /// When the newest of what waits came.
    pub newest: UnixSeconds,
}

impl Open {
    /// What waits for a decision.
    #[must_use]
    pub const fn waiting(self) -> i64 {
        self.notes + self.remarks
    }

    /// All together.
    #[must_use]
    pub const fn all(self) -> i64 {
        self.asked + self.waiting()
    }

    /// What is open for the same member without any right.
    #[must_use]
    pub const fn of_their_own(self) -> Self {
        Self { asked: self.asked, notes: 0, remarks: 0, newest: 0 }
    }
}
