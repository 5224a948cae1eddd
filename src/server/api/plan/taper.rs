//! The holes and depths of a taper thread's plan.

use serde::Serialize;
use utoipa::ToSchema;

use crate::api::drills::Drill;
use crate::api::figures;
use holewright_core::plan::TaperPlan;

/// The holes that a taper thread is tapped in, and its depths from the face.
#[derive(Debug, Serialize, ToSchema)]
pub(super) struct Taper<'a> {
    /// How far the mating thread goes in by hand, the gauge length, in millimetres.
    hand_tight_mm: f64,
    /// Whether the gauge length is printed for this size, and not reckoned from its pitch.
    gauge_length_is_printed: bool,
    /// Length of useful thread, in millimetres.
    thread_mm: f64,
    /// Depth to the drill's full diameter in a blind hole, in millimetres.
    drill_full_diameter_mm: f64,
    /// The holes it can be tapped in, the planned one first.
    holes: Vec<TaperHole<'a>>,
    /// The drill at hand for the planned one; null where none is near enough.
    #[schema(required)]
    drill: Option<Drill>,
}

/// A hole that a taper thread can be tapped in.
#[derive(Debug, Serialize, ToSchema)]
struct TaperHole<'a> {
    /// How it is made.
    #[schema(pattern = "^(straight|taper-reamed|parallel-thread)$", example = "straight")]
    kind: &'static str,
    /// Diameter to drill, in millimetres.
    diameter_mm: f64,
    /// The drill as its list names it.
    label: &'a str,
    /// Where it was read.
    source: String,
}

impl<'a> From<&'a TaperPlan<'_>> for Taper<'a> {
    fn from(plan: &'a TaperPlan<'_>) -> Self {
        let holes = std::iter::once(&plan.hole).chain(&plan.others);
        Self {
            hand_tight_mm: figures::mm(plan.depths.hand_tight),
            gauge_length_is_printed: plan.depths.gauge_is_printed,
            thread_mm: figures::mm(plan.depths.thread),
            drill_full_diameter_mm: figures::mm(plan.depths.drill),
            holes: holes
                .map(|hole| TaperHole {
                    kind: hole.way.slug(),
                    diameter_mm: figures::mm(hole.diameter),
                    label: &hole.label,
                    source: figures::source(hole.source),
                })
                .collect(),
            drill: plan.drill.map(Drill::from),
        }
    }
}
