//! What a drill is good for: the threads it is a tapping size of, and the screws it clears.

use super::clearance::{Fit, drill_for, hole};
use super::engagement;
use super::limits::{LargestHole, largest_hole};
use super::tapping::{Candidate, judge};
use super::thread_form::geometry;
use crate::tables::drills::{self, Drill};
use crate::tables::threads::{self, Thread};

/// A thread the drill is a tapping size of.
#[derive(Clone, Copy, Debug)]
pub struct Taps {
    /// The thread.
    pub thread: &'static Thread,
    /// The drill, judged for it.
    pub candidate: Candidate,
    /// The standard's largest hole, where one is held.
    pub limit: Option<LargestHole>,
}

/// A screw the drill clears, with the fits it serves.
#[derive(Clone, Debug)]
pub struct Clears {
    /// The thread of the screw.
    pub thread: &'static Thread,
    /// The fits, the closest first.
    pub fits: Vec<Fit>,
}

/// Engagement that makes a drill a tapping size worth naming, percent.
const TAPPING: std::ops::RangeInclusive<f64> = 60.0..=80.0;

/// The threads this drill leaves 60 to 80 % of, in the order of the tables.
///
/// # Source
/// Common practice, no source, for the range; the engagement is [`engagement`]'s.
///
/// # Examples
/// ```
/// use holewright_core::{calc::uses::taps, tables::drills::{Series, find}};
/// let threads = taps(find(Series::Number, "36").unwrap());
/// assert!(threads.iter().any(|taps| taps.thread.designation == "5 BA"));
/// ```
#[must_use]
pub fn taps(drill: &'static Drill) -> Vec<Taps> {
    let judged = |thread: &'static Thread| {
        let geometry = geometry(thread);
        let limit = largest_hole(thread, &geometry);
        let candidate = judge(thread, &geometry, limit, drill);
        (engagement::applies(thread) && TAPPING.contains(&candidate.engagement_percent))
            .then_some(Taps { thread, candidate, limit })
    };
    threads::all().filter_map(judged).collect()
}

/// The screws for which this drill is, of its own series, the one to take.
///
/// # Source
/// The clearance hole is [`hole`]'s, of each fit.
#[must_use]
pub fn clears(drill: &'static Drill) -> Vec<Clears> {
    let served = |thread: &'static Thread| {
        let major = geometry(thread).major;
        if thread.taper.is_some() {
            return None;
        }
        let serves = |fit: &Fit| {
            drill_for(hole(thread, major, *fit).hole, drills::by_series(drill.series))
                .is_some_and(|best| best.size == drill.size)
        };
        let fits: Vec<Fit> = Fit::ALL.into_iter().filter(serves).collect();
        (!fits.is_empty()).then_some(Clears { thread, fits })
    };
    threads::all().filter_map(served).collect()
}
