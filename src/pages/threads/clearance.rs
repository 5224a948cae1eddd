//! The clearance holes of one thread: three fits, what each goes by, and what else is in print.

use crate::figures::Column;
use crate::link::Link;
use holewright_core::calc::clearance::{
    ClearanceHole, Fit, also_printed, drill_for, float, hole, model_hole,
};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::clearance::Holes;
use holewright_core::tables::drills;
use holewright_core::tables::threads::Thread;
use holewright_core::units::print::sentence as sentence_case;
use holewright_core::units::{Length, Printed, in_mm, print};

/// One fit.
pub(super) struct ClearanceRow {
    pub(super) fit: String,
    pub(super) hole: Column,
    pub(super) drill: Option<Link>,
    /// What that drill leaves on diameter, in millimetres.
    pub(super) float: String,
    pub(super) basis: String,
}

/// A fit and its drill, for the top of the page.
pub(super) struct Clears {
    pub(super) fit: String,
    pub(super) link: Link,
}

/// The fits that have a drill.
pub(super) fn clears(rows: &[ClearanceRow]) -> Vec<Clears> {
    rows.iter()
        .filter_map(|row| Some(Clears { fit: row.fit.clone(), link: row.drill.clone()? }))
        .collect()
}

/// A printed row beside the one that rules.
pub(super) struct PrintedRow {
    pub(super) standard: String,
    pub(super) holes: String,
}

/// Close, medium and free, and the model hole of a small metric screw. None for a taper thread,
/// which screws into its mate and passes through nothing.
pub(super) fn clearance(thread: &'static Thread, geometry: &Geometry) -> Vec<ClearanceRow> {
    if thread.taper.is_some() {
        return Vec::new();
    }
    let major = geometry.major;
    let fits = Fit::ALL
        .into_iter()
        .map(|fit| row(sentence_case(fit.slug()), hole(thread, major, fit), major));
    let model = model_hole(thread.system, major).map(|hole| row("Model".to_owned(), hole, major));
    fits.chain(model).collect()
}

fn row(fit: String, hole: ClearanceHole, major: Length) -> ClearanceRow {
    let drill = drill_for(hole.hole, drills::all().iter());
    let left = drill.map(|drill| float(drill.diameter, major));
    ClearanceRow {
        fit,
        hole: Column::of(hole.hole),
        drill: drill.map(Link::drill),
        float: left.map_or_else(|| "–".to_owned(), |left| print::fixed(in_mm(left), 3)),
        basis: hole.basis.to_string(),
    }
}

/// What else is in print for this screw.
pub(super) fn printed(thread: &'static Thread) -> Vec<PrintedRow> {
    also_printed(thread).map(printed_row).collect()
}

fn printed_row(row: &Holes) -> PrintedRow {
    let [close, medium, free] = row.standard.fit_words();
    let size = |printed: Printed| print::mm(printed.length(), 3);
    PrintedRow {
        standard: row.standard.to_string(),
        holes: format!(
            "{close} {}, {medium} {}, {free} {}",
            size(row.close),
            size(row.medium),
            size(row.free)
        ),
    }
}
