//! What belongs to one work alone: pecks, the hole to leave for a reamer, the countersink, the spot.

use serde::Serialize;
use utoipa::ToSchema;

use crate::api::drills::Drill;
use crate::api::figures;
use holewright_core::calc::{reaming, spotting};
use holewright_core::calculators::speeds;
use holewright_core::tables::reaming::Drive;
use holewright_core::units::Length;

/// When to withdraw a drill and clear it.
#[derive(Debug, Serialize, ToSchema)]
pub(super) struct Pecks {
    /// The first withdrawal, in millimetres.
    first_peck_mm: f64,
    /// Each further step, in millimetres.
    further_peck_mm: f64,
    /// The depths to withdraw at, in millimetres, the last being the full depth; empty without a depth.
    withdraw_at_mm: Vec<f64>,
    /// Where the rule comes from.
    source: String,
}

/// The hole to leave for a reamer.
#[derive(Debug, Serialize, ToSchema)]
pub(super) struct Reaming {
    /// For a reamer turned by hand; null where no source speaks of the size.
    #[schema(required)]
    by_hand: Option<Leave>,
    /// For a reamer turned by a machine; null where no source speaks of the size.
    #[schema(required)]
    by_machine: Option<Leave>,
    /// What each source leaves.
    allowances: Vec<Allowance>,
}

/// The hole to leave, one way of turning the reamer.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ReamingHole)]
pub(super) struct Leave {
    /// The smallest hole, in millimetres.
    hole_low_mm: f64,
    /// The largest hole, in millimetres.
    hole_high_mm: f64,
    /// The drill to take of those at hand; null where none is in the range.
    #[schema(required)]
    drill: Option<Drill>,
    /// Every drill at hand in the range, smallest first.
    drills: Vec<Drill>,
}

/// What one source leaves on diameter for a reamer.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ReamingAllowance)]
pub(super) struct Allowance {
    /// What the source says it is for.
    printed_as: &'static str,
    /// How the reamer is driven_by: hand, machine, either.
    #[schema(pattern = "^(hand|machine|either)$", example = "hand")]
    driven_by: &'static str,
    /// The least left on diameter, in millimetres.
    allowance_low_mm: f64,
    /// The most, in millimetres.
    allowance_high_mm: f64,
    /// Whether it counts towards the range.
    counts_towards_range: bool,
    /// Where it was read.
    source: String,
}

/// A countersink for a head.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CountersinkDepth)]
pub(super) struct Sink {
    /// The included angle, in degrees.
    angle_deg: f64,
    /// Where the angle comes from; null where it was given.
    #[schema(required)]
    angle_source: Option<String>,
    /// The head at its least, in millimetres.
    head_low_mm: f64,
    /// The head at its most, in millimetres.
    head_high_mm: f64,
    /// Where the head comes from; null where it was given.
    #[schema(required)]
    head_source: Option<String>,
    /// The hole that is sunk, in millimetres; null: to a point.
    #[schema(required)]
    hole_mm: Option<f64>,
    /// How deep for the least head, in millimetres.
    depth_low_mm: f64,
    /// How deep for the most head, in millimetres.
    depth_high_mm: f64,
}

/// A spot for a drill.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SpotWidth)]
pub(super) struct Spot {
    /// The narrowest, in millimetres.
    width_low_mm: f64,
    /// The widest, in millimetres.
    width_high_mm: f64,
    /// The least angle of the spotting drill, in degrees.
    least_angle_deg: f64,
    /// Where it comes from.
    source: String,
}

impl From<&speeds::Pecks> for Pecks {
    fn from(pecks: &speeds::Pecks) -> Self {
        Self {
            first_peck_mm: figures::mm(pecks.rule.first),
            further_peck_mm: figures::mm(pecks.rule.then),
            withdraw_at_mm: pecks.stops.iter().map(|stop| figures::mm(*stop)).collect(),
            source: figures::source(pecks.rule.source),
        }
    }
}

impl Reaming {
    pub(super) fn of(found: &reaming::Reaming, reamer: Length) -> Self {
        let leave = |leave: &reaming::Leave| Leave {
            hole_low_mm: figures::mm(leave.smallest_hole(reamer)),
            hole_high_mm: figures::mm(leave.largest_hole(reamer)),
            drill: leave.take.map(Drill::from),
            drills: leave.drills.iter().map(|drill| Drill::from(*drill)).collect(),
        };
        Self {
            by_hand: found.by_hand.as_ref().map(leave),
            by_machine: found.by_machine.as_ref().map(leave),
            allowances: found.printed.iter().map(Allowance::from).collect(),
        }
    }
}

impl From<&reaming::PrintedAllowance> for Allowance {
    fn from(printed: &reaming::PrintedAllowance) -> Self {
        let row = printed.row;
        Self {
            printed_as: row.printed_as,
            driven_by: match row.drive {
                Drive::Hand => "hand",
                Drive::Machine => "machine",
                Drive::Either => "either",
            },
            allowance_low_mm: figures::mm(row.least),
            allowance_high_mm: figures::mm(row.most),
            counts_towards_range: printed.counted,
            source: figures::source(row.source),
        }
    }
}

impl From<&speeds::Sink> for Sink {
    fn from(sink: &speeds::Sink) -> Self {
        let [head_low, head_high] = sink.head.map(figures::mm);
        let [depth_low, depth_high] = sink.depth.map(figures::mm);
        Self {
            angle_deg: figures::degrees(sink.angle),
            angle_source: sink.angle_source.map(figures::source),
            head_low_mm: head_low,
            head_high_mm: head_high,
            head_source: sink.head_source.map(figures::source),
            hole_mm: sink.hole.map(figures::mm),
            depth_low_mm: depth_low,
            depth_high_mm: depth_high,
        }
    }
}

impl From<&spotting::Spot> for Spot {
    fn from(spot: &spotting::Spot) -> Self {
        Self {
            width_low_mm: figures::mm(spot.least),
            width_high_mm: figures::mm(spot.most),
            least_angle_deg: figures::degrees(spot.least_angle),
            source: figures::source(spot.source),
        }
    }
}
