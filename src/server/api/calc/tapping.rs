//! The tapping size of any thread.

use serde::Serialize;
use utoipa::ToSchema;

use super::{Described, ThreadName};
use crate::Error;
use crate::api::drills::Drill;
use crate::api::figures;
use crate::api::tapping::Candidate;
use holewright_core::asking::Asked;
use holewright_core::calculators::tapping;

/// The tapping size of any thread.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TappingSize)]
struct Tapping {
    /// The thread; null for one no table holds.
    #[schema(required)]
    thread: Option<ThreadName>,
    /// Major diameter, in millimetres.
    major_mm: f64,
    /// Pitch, in millimetres.
    pitch_mm: f64,
    /// Threads per inch.
    tpi: f64,
    /// Effective diameter, in millimetres.
    effective_mm: f64,
    /// Minor diameter of the screw, in millimetres.
    minor_mm: f64,
    /// Minor diameter of the nut, in millimetres.
    minor_internal_mm: f64,
    /// Depth of thread of the screw, in millimetres.
    thread_depth_mm: f64,
    /// Included angle of the thread form, in degrees.
    thread_angle_deg: f64,
    /// The largest minor diameter of the nut in the standard, in millimetres; null where none is held.
    #[schema(required)]
    largest_hole_mm: Option<f64>,
    /// What every engagement_percent here is a percentage of.
    engagement_basis: String,
    /// The engagement asked for, and its hole.
    wanted: Wanted,
    /// The hole that was given; null where none was.
    #[schema(required)]
    hole: Option<Left>,
    /// The drills at hand between 50 % and 90 % engagement, largest engagement first.
    tapping: Vec<Candidate>,
}

/// The engagement asked for, and its hole.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = WantedEngagement)]
struct Wanted {
    /// Engagement, as a percentage of the full thread.
    engagement_percent: f64,
    /// The same as a percentage of 5/8 H, the other basis in print; null but for 60° forms.
    #[schema(required)]
    engagement_of_five_eighths_h_percent: Option<f64>,
    /// Diameter of the hole that leaves it, in millimetres.
    hole_mm: f64,
    /// The drill at hand nearest to it; null where none is within ten points.
    #[schema(required)]
    nearest: Option<Candidate>,
}

/// What a hole leaves.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = JudgedHole)]
struct Left {
    /// Its diameter, in millimetres.
    hole_mm: f64,
    /// The drill it was named by; null where a size was.
    #[schema(required)]
    drill: Option<Drill>,
    /// Engagement, as a percentage of the full thread.
    engagement_percent: f64,
    /// The same as a percentage of 5/8 H, the other basis in print; null but for 60° forms.
    #[schema(required)]
    engagement_of_five_eighths_h_percent: Option<f64>,
    /// Whether it keeps to the standard's largest hole; null where none is held.
    #[schema(required)]
    within_standard: Option<bool>,
    /// It is below the nut's least minor diameter: the tap cuts hard.
    below_least_minor: bool,
}

/// The answer as it is described.
pub(super) fn described() -> Described {
    Described::of::<Tapping>(
        "tapping_size",
        "The tapping size of any thread: held in a table or not.",
        "The hole and the drills",
    )
}

/// The answer.
///
/// # Errors
/// A field that makes no sense.
pub(super) fn answer(asked: &Asked) -> Result<impl Serialize, Error> {
    let found = tapping::answer_to(asked).map_err(Error::Invalid)?;
    Ok(Tapping::from(&found))
}

impl From<&tapping::Answer> for Tapping {
    fn from(found: &tapping::Answer) -> Self {
        let subject = &found.subject;
        let geometry = &subject.geometry;
        Self {
            thread: subject.thread.map(ThreadName::from),
            major_mm: figures::mm(geometry.major),
            pitch_mm: figures::mm(geometry.pitch),
            tpi: figures::number(geometry.threads_per_inch),
            effective_mm: figures::mm(geometry.effective),
            minor_mm: figures::mm(geometry.minor),
            minor_internal_mm: figures::mm(geometry.minor_internal),
            thread_depth_mm: figures::mm(geometry.thread_depth),
            thread_angle_deg: figures::degrees(geometry.thread_angle),
            largest_hole_mm: subject.largest_hole.map(|limit| figures::mm(limit.diameter)),
            engagement_basis: subject.basis().to_string(),
            wanted: Wanted {
                engagement_percent: figures::percent(found.wanted_percent),
                engagement_of_five_eighths_h_percent: found
                    .wanted_of_five_eighths_h
                    .map(figures::percent),
                hole_mm: figures::mm(found.hole),
                nearest: found.nearest.as_ref().map(Candidate::from),
            },
            hole: found.left.map(|left| Left {
                hole_mm: figures::mm(left.hole),
                drill: left.drill.map(Drill::from),
                engagement_percent: figures::percent(left.percent),
                engagement_of_five_eighths_h_percent: left
                    .percent_of_five_eighths_h
                    .map(figures::percent),
                within_standard: left.within_standard,
                below_least_minor: left.below_minor,
            }),
            tapping: found.candidates.iter().map(Candidate::from).collect(),
        }
    }
}
