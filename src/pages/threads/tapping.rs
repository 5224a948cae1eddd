//! Every tapping drill of one thread worth listing, largest engagement first.

use crate::candidate::Verdict;
use crate::drawer::Drawer;
use crate::figures::Column;
use crate::link::Link;
use holewright_core::calc::engagement::percent_of_internal_height;
use holewright_core::calc::limits::LargestHole;
use holewright_core::calc::tapping::{Candidate, candidates};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::threads::{Form, Thread};
use holewright_core::units::print;

/// One drill.
pub(crate) struct TappingRow {
    /// The row's address on the page: `drill-number-36`.
    pub(crate) id: String,
    pub(crate) link: Link,
    pub(crate) size: Column,
    pub(crate) engagement: String,
    /// On the other basis in print for 60° forms, 5/8 H; none for the other forms.
    pub(crate) other_basis: Option<String>,
    pub(crate) verdict: Verdict,
    /// It is in the reader's drawer.
    pub(crate) yours: bool,
}

/// The drills between 50 and 90 % engagement; none for taper threads.
pub(crate) fn tapping(
    thread: &'static Thread,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drawer: Option<&Drawer>,
) -> Vec<TappingRow> {
    rows(thread.form(), geometry, limit, &candidates(thread).unwrap_or_default(), drawer)
}

/// These drills, in a thread of any form, diameter and pitch.
pub(crate) fn rows(
    form: Form,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    candidates: &[Candidate],
    drawer: Option<&Drawer>,
) -> Vec<TappingRow> {
    let row = |candidate: &Candidate| TappingRow {
        id: format!("drill-{}-{}", candidate.drill.series, candidate.drill.size),
        link: Link::drill(candidate.drill),
        size: Column::of(candidate.drill.diameter),
        engagement: print::fixed(candidate.engagement_percent, 1),
        other_basis: percent_of_internal_height(form, geometry, candidate.drill.diameter)
            .map(|percent| print::fixed(percent, 1)),
        verdict: Verdict::of(candidate, limit),
        yours: drawer.is_some_and(|drawer| drawer.drills.has(candidate.drill)),
    };
    candidates.iter().map(row).collect()
}
