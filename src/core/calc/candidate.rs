//! One drill for one thread: the engagement it leaves, and whether the standard admits its hole.

use crate::calc::limits::{self, LargestHole};
use crate::calc::thread_form::Geometry;
use crate::calc::{engagement, oversize};
use crate::tables::drills::Drill;
use crate::tables::threads::{Form, Thread};
use crate::units::Length;

/// A drill with the thread it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The drill.
    pub drill: &'static Drill,
    /// Engagement in percent of full thread depth at the drill's nominal size.
    pub engagement_percent: f64,
    /// The same at the size that the drill is likely to leave.
    pub likely_engagement_percent: f64,
    /// Within the standard's largest hole; `None` where no limit is held.
    pub within_standard: Option<bool>,
    /// Below the nut's least minor diameter.
    pub below_minor: bool,
}

/// Two drills nearer than this to the same engagement are one choice, percent.
pub(super) const DISTINCT: f64 = 2.5;
/// Less than this is no thread, percent.
const LEAST: f64 = 40.0;

/// The next larger drills at hand, given smallest first, each a distinct size and still a thread.
#[must_use]
pub fn next_larger(
    form: Form,
    geometry: &Geometry,
    hole: Length,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Vec<&'static Drill> {
    let percent = |hole| engagement::percent(form, geometry, hole);
    let mut last = percent(hole);
    let mut found = Vec::new();
    for drill in at_hand {
        let left = percent(drill.diameter);
        if left <= last - DISTINCT && left >= LEAST {
            found.push(drill);
            last = left;
        }
    }
    found
}

/// Judges one drill for a thread.
#[must_use]
pub fn judge(
    thread: &Thread,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drill: &'static Drill,
) -> Candidate {
    judge_of(thread.form(), geometry, limit, drill)
}

/// Judges one drill for a thread no table holds.
#[must_use]
pub fn judge_of(
    form: Form,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drill: &'static Drill,
) -> Candidate {
    Candidate {
        drill,
        engagement_percent: engagement::percent(form, geometry, drill.diameter),
        likely_engagement_percent: engagement::percent(
            form,
            geometry,
            oversize::likely(drill.diameter).mean,
        ),
        within_standard: limit.map(|limit| limit.admits(drill.diameter)),
        below_minor: limits::is_below_smallest(geometry, drill.diameter),
    }
}
