//! What a drill is good for, as its page shows it.

use crate::candidate::ShownDrill;
use crate::link::Link;
use holewright_core::calc::clearance::Fit;
use holewright_core::calc::uses;
use holewright_core::tables::drills::Drill;

/// A thread the drill is a tapping size of.
pub(super) struct Taps {
    pub(super) link: Link,
    pub(super) drill: ShownDrill,
}

/// A screw the drill clears, with the fits it serves.
pub(super) struct Clears {
    pub(super) link: Link,
    pub(super) fits: String,
}

/// The threads it is a tapping size of.
pub(super) fn taps(drill: &'static Drill) -> Vec<Taps> {
    let shown = |taps: uses::Taps| Taps {
        link: Link::thread(taps.thread),
        drill: ShownDrill::of(&taps.candidate, taps.limit),
    };
    uses::taps(drill).into_iter().map(shown).collect()
}

/// The screws it clears.
pub(super) fn clears(drill: &'static Drill) -> Vec<Clears> {
    let shown = |clears: uses::Clears| Clears {
        link: Link::thread(clears.thread),
        fits: clears.fits.into_iter().map(Fit::slug).collect::<Vec<_>>().join(", "),
    };
    uses::clears(drill).into_iter().map(shown).collect()
}
