//! The clearance holes of a thread.

use serde::Serialize;

use super::drills::Drill;
use super::figures;
use crate::calc::clearance::{self, ClearanceHole, Fit};
use crate::tables::drills;
use crate::tables::threads::Thread;
use crate::units::Length;

/// The holes for the three fits.
#[derive(Debug, Serialize)]
pub(super) struct Clearance {
    close: Hole,
    medium: Hole,
    free: Hole,
}

/// One hole, and the smallest drill that is not below it.
#[derive(Debug, Serialize)]
pub(super) struct Hole {
    hole_mm: f64,
    /// Null where no drill is large enough.
    drill: Option<Drill>,
    basis: String,
    source: String,
}

/// The holes of a thread, with a drill of any series.
pub(super) fn of(thread: &Thread, major: Length) -> Clearance {
    let hole = |fit| {
        let hole = clearance::hole(thread, major, fit);
        Hole::new(hole, clearance::drill_for(hole.hole, drills::all().iter()))
    };
    Clearance { close: hole(Fit::Close), medium: hole(Fit::Medium), free: hole(Fit::Free) }
}

impl Hole {
    /// A hole and the drill taken for it.
    pub(super) fn new(hole: ClearanceHole, drill: Option<&'static drills::Drill>) -> Self {
        Self {
            hole_mm: figures::mm(hole.hole),
            drill: drill.map(Drill::from),
            basis: hole.basis.to_string(),
            source: figures::source(hole.basis.source()),
        }
    }
}
