//! What a drill is good for: the threads it is a tapping size of, and the screws it clears.

use crate::calc::clearance::{Fit, drill_for, hole};
use crate::calc::engagement;
use crate::calc::limits::largest_hole;
use crate::calc::tapping::judge;
use crate::calc::thread_form::geometry;
use crate::pages::candidate::ShownDrill;
use crate::pages::link::Link;
use crate::tables::drills::{self, Drill};
use crate::tables::threads;

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

/// Engagement that makes a drill a tapping size worth naming, percent.
const TAPPING: std::ops::RangeInclusive<f64> = 60.0..=80.0;

/// The threads this drill leaves 60 to 80 % of.
pub(super) fn taps(drill: &'static Drill) -> Vec<Taps> {
    let judged = |thread: &'static threads::Thread| {
        let geometry = geometry(thread);
        let limit = largest_hole(thread, &geometry);
        let candidate = judge(thread, &geometry, limit, drill);
        (engagement::applies(thread) && TAPPING.contains(&candidate.engagement_percent))
            .then(|| Taps { link: Link::thread(thread), drill: ShownDrill::of(&candidate, limit) })
    };
    threads::all().filter_map(judged).collect()
}

/// The screws for which this drill is, of its own series, the one to take.
pub(super) fn clears(drill: &'static Drill) -> Vec<Clears> {
    let served = |thread: &'static threads::Thread| {
        let major = geometry(thread).major;
        let fits: Vec<&str> = Fit::ALL
            .into_iter()
            .filter(|fit| {
                let hole = hole(thread, major, *fit).hole;
                drill_for(hole, drills::by_series(drill.series))
                    .is_some_and(|best| best.size == drill.size)
            })
            .map(Fit::slug)
            .collect();
        (thread.taper.is_none() && !fits.is_empty())
            .then(|| Clears { link: Link::thread(thread), fits: fits.join(", ") })
    };
    threads::all().filter_map(served).collect()
}
