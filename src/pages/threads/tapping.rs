//! Every tapping drill of one thread worth listing, largest engagement first.

use crate::calc::engagement::percent_of_internal_height;
use crate::calc::limits::LargestHole;
use crate::calc::tapping::{Candidate, candidates};
use crate::calc::thread_form::Geometry;
use crate::pages::candidate::Verdict;
use crate::pages::figures::Column;
use crate::pages::link::Link;
use crate::tables::threads::Thread;
use crate::units::print;

/// One drill.
pub(super) struct TappingRow {
    /// The row's address on the page: `drill-number-36`.
    pub(super) id: String,
    pub(super) link: Link,
    pub(super) size: Column,
    pub(super) engagement: String,
    /// On the other basis in print for 60° forms, 5/8 H; none for the other forms.
    pub(super) other_basis: Option<String>,
    pub(super) verdict: Verdict,
}

/// The drills between 50 and 90 % engagement; none for taper threads.
pub(super) fn tapping(
    thread: &'static Thread,
    geometry: &Geometry,
    limit: Option<LargestHole>,
) -> Vec<TappingRow> {
    let row = |candidate: &Candidate| TappingRow {
        id: format!("drill-{}-{}", candidate.drill.series, candidate.drill.size),
        link: Link::drill(candidate.drill),
        size: Column::of(candidate.drill.diameter),
        engagement: print::fixed(candidate.engagement_percent, 1),
        other_basis: percent_of_internal_height(thread.form(), geometry, candidate.drill.diameter)
            .map(|percent| print::fixed(percent, 1)),
        verdict: Verdict::of(candidate, limit),
    };
    candidates(thread).unwrap_or_default().iter().map(row).collect()
}
