//! The hole plan: from a [`HoleSpec`] to ordered operations, margins and warnings.
//!
//! Leaves out what a joint is to be loaded with, which a person decides.

mod bearing;
mod build;
mod cautions;
mod depths;
mod drilling;
mod error;
mod finishing;
mod fluid;
mod hold;
mod lips;
mod operation;
mod order;
mod question;
mod spec;
mod starting;
mod taper;
mod taps;
mod warning;
mod worked_up;

pub use bearing::{Strength, TapEffort};
pub use build::build;
pub use error::{Error, most_offered};
pub use operation::{Action, Lips, Operation, Part};
pub use spec::{AtHand, Head, Hole, HoleSpec, Over, Scale, Tap, TapSteel, UpperHole};
pub use taper::build_taper;
pub use warning::{Cautions, Level, Warning};

use crate::calc::clearance::ClearanceHole;
use crate::calc::taper_hole;
use crate::calc::tapping::DrillChoice;
use crate::calc::thread_form::Geometry;
use crate::tables::drills::Drill;
use crate::tables::lists::ListedDrill;
use crate::units::Length;

/// A plan for a thread of either kind.
#[derive(Clone, Debug, PartialEq)]
pub enum Plan<'spec> {
    /// For a parallel thread.
    Parallel(Box<HolePlan<'spec>>),
    /// For a taper pipe thread.
    Taper(Box<TaperPlan<'spec>>),
}

impl Plan<'_> {
    /// The steps, in order.
    #[must_use]
    pub fn operations(&self) -> &[Operation] {
        match self {
            Self::Parallel(plan) => &plan.operations,
            Self::Taper(plan) => &plan.operations,
        }
    }
}

/// The plan for a hole, whatever its thread.
///
/// # Errors
/// As [`build`] and [`build_taper`].
pub fn build_either(spec: &HoleSpec) -> Result<Plan<'_>, Error> {
    if spec.thread.taper.is_some() {
        build_taper(spec).map(|plan| Plan::Taper(Box::new(plan)))
    } else {
        build(spec).map(|plan| Plan::Parallel(Box::new(plan)))
    }
}

/// A finished plan.
#[derive(Clone, Debug, PartialEq)]
pub struct HolePlan<'spec> {
    /// What was asked.
    pub spec: &'spec HoleSpec,
    /// The thread's figures.
    pub geometry: Geometry,
    /// The tapping drill and its neighbours.
    pub tapping: DrillChoice,
    /// Engagement at the size the drill is likely to leave, and as measured.
    pub hole: HoleSize,
    /// The clearance hole for the screw.
    pub clearance: Clearance,
    /// Depths in the tapped part.
    pub depths: Depths,
    /// How hard the tap turns, and what is left to it; for hand taps in metals that have a figure.
    pub effort: Option<TapEffort>,
    /// What the thread carries; where the screw is named, and never where steam or pressure is spoken of.
    pub strength: Option<Strength>,
    /// The published list size beside ours, and why they differ where they do.
    pub listed: Vec<Listed>,
    /// The steps, in order.
    pub operations: Vec<Operation>,
    /// The cautions that belong to no one step.
    pub cautions: Cautions,
}

impl HolePlan<'_> {
    /// Every caution of the plan, wherever it stands.
    pub fn every_caution(&self) -> impl Iterator<Item = &Warning> {
        let steps = self.operations.iter().flat_map(|step| &step.cautions);
        self.cautions.each().chain(steps)
    }
}

/// A finished plan for a taper thread.
#[derive(Clone, Debug, PartialEq)]
pub struct TaperPlan<'spec> {
    /// What was asked.
    pub spec: &'spec HoleSpec,
    /// The thread's figures, at the gauge plane.
    pub geometry: Geometry,
    /// The hole that is planned: straight.
    pub hole: taper_hole::Hole,
    /// The drill at hand for it; `None` where none is near enough.
    pub drill: Option<&'static Drill>,
    /// The other ways to make the hole.
    pub others: Vec<taper_hole::Hole>,
    /// Depths from the face.
    pub depths: taper_hole::Depths,
    /// The steps, in order.
    pub operations: Vec<Operation>,
    /// The cautions that belong to no one step.
    pub cautions: Cautions,
}

/// How large the hole is likely to come out, and what that leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleSize {
    /// Likely drilled diameter.
    pub likely: Length,
    /// Engagement at the likely diameter, percent of full thread depth.
    pub likely_engagement_percent: f64,
    /// Engagement at the hole as measured.
    pub measured_engagement_percent: Option<f64>,
}

/// The hole the screw passes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// The size asked for, and by what rule.
    pub hole: ClearanceHole,
    /// The smallest drill at hand not below it.
    pub drill: Option<&'static Drill>,
    /// What the drilled hole leaves on diameter.
    pub float: Option<Length>,
}

/// Depths in the tapped part, from its own face. `None` where the thickness was not given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Depths {
    /// Length of full thread.
    pub full_thread: Option<Length>,
    /// To the end of the full diameter of the drill.
    pub drill_full_diameter: Option<Length>,
    /// The same as a stop is set: see [`Self::stop_is_short`]. A blind hole alone has one.
    pub stop: Option<Length>,
    /// The stop is rounded down, to spare the wall under the point; else it is rounded up, to leave
    /// the thread its room.
    pub stop_is_short: bool,
    /// To the tip of the drill's point.
    pub drill_to_point: Option<Length>,
    /// Metal left under the point of a blind hole.
    pub wall: Option<Length>,
    /// The least wall worth leaving.
    pub least_wall: Length,
    /// Length of the last tap's lead.
    pub tap_lead: Length,
    /// Further room the pointed male centre of a small tap may want.
    pub male_centre: Option<Length>,
    /// Further room for swarf under a straight-flute tap.
    pub swarf_room: Length,
    /// The whole drilled hole (upper and lower) over its diameter.
    pub diameters: Option<f64>,
}

impl Depths {
    /// To the tip of the point, with the stop as it is set. A blind hole alone has one.
    #[must_use]
    pub fn set_to_point(&self) -> Option<Length> {
        let point = self.drill_to_point? - self.drill_full_diameter?;
        self.stop.map(|stop| stop + point)
    }

    /// Metal left under the point, with the stop as it is set.
    #[must_use]
    pub fn set_wall(&self) -> Option<Length> {
        Some(self.wall? + self.drill_to_point? - self.set_to_point()?)
    }
}

/// A published list's drill beside ours.
#[derive(Clone, Debug, PartialEq)]
pub struct Listed {
    /// The list's row.
    pub row: &'static ListedDrill,
    /// Engagement it leaves.
    pub engagement_percent: f64,
    /// One line of why ours differs; `None` where it does not.
    pub why_different: Option<String>,
}
