//! One drill for one thread: the engagement it leaves, and whether the standard admits its hole.

use crate::calc::limits::{self, LargestHole};
use crate::calc::thread_form::Geometry;
use crate::calc::{engagement, oversize};
use crate::tables::drills::Drill;
use crate::tables::threads::{Form, Thread};

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
