//! Every tapping drill of one thread worth listing, largest engagement first.

use crate::calc::engagement::percent_of_internal_height;
use crate::calc::limits::LargestHole;
use crate::calc::tapping::{Candidate, candidates};
use crate::calc::thread_form::Geometry;
use crate::pages::candidate::Verdict;
use crate::pages::drawer::Drawer;
use crate::pages::figures::Column;
use crate::pages::link::Link;
use crate::tables::threads::{Form, Thread};
use crate::units::print;

/// One drill.
pub(in crate::pages) struct TappingRow {
    /// The row's address on the page: `drill-number-36`.
    pub(in crate::pages) id: String,
    pub(in crate::pages) link: Link,
    pub(in crate::pages) size: Column,
    pub(in crate::pages) engagement: String,
    /// On the other basis in print for 60° forms, 5/8 H; none for the other forms.
    pub(in crate::pages) other_basis: Option<String>,
    pub(in crate::pages) verdict: Verdict,
    /// It is in the reader's drawer.
    pub(in crate::pages) yours: bool,
}

/// The drills between 50 and 90 % engagement; none for taper threads.
pub(in crate::pages) fn tapping(
    thread: &'static Thread,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drawer: Option<&Drawer>,
) -> Vec<TappingRow> {
    rows(thread.form(), geometry, limit, &candidates(thread).unwrap_or_default(), drawer)
}

/// These drills, in a thread of any form, diameter and pitch.
pub(in crate::pages) fn rows(
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
