//! The clearance holes of a thread.

use serde::Serialize;
use utoipa::ToSchema;

use super::drills::Drill;
use super::figures;
use holewright_core::calc::clearance::{self, ClearanceHole, Fit};
use holewright_core::tables::drills;
use holewright_core::tables::threads::Thread;
use holewright_core::units::Length;

/// The holes for the three fits.
#[derive(Debug, Serialize, ToSchema)]
pub(super) struct Clearance {
    /// The close fit.
    close: Hole,
    /// The usual fit.
    medium: Hole,
    /// The free fit.
    free: Hole,
}

/// One hole, and the smallest drill that is not below it.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ClearanceHole)]
pub(super) struct Hole {
    /// Diameter of the hole, in millimetres.
    #[schema(example = 3.328)]
    hole_mm: f64,
    /// The smallest drill that is not below it; null where no drill is large enough.
    #[schema(required)]
    drill: Option<Drill>,
    /// What the hole rests on: a standard's row, or a rule.
    basis: String,
    /// Where that was read.
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
