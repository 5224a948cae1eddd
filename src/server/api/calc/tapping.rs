//! The tapping size of any thread.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::ThreadName;
use crate::Error;
use crate::api::drills::Drill;
use crate::api::problem::{Always, NotUnderstood};
use crate::api::tapping::Candidate;
use crate::api::{figures, reply};
use holewright_pages::calculators::tapping;

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

/// The tapping size of any thread: held in a table or not.
///
/// # Errors
/// A field that makes no sense: 422.
#[rustfmt::skip]
#[utoipa::path(
    get,
    path = "/api/v1/calc/tapping",
    operation_id = "tapping_size",
    tag = "calculators",
    params(
        ("thread" = Option<String>, Query, description = "A thread, in any usual spelling; it fills what is left out below", example = "5 BA"),
        ("form" = Option<String>, Query, description = "Form of a thread no table holds: `metric`, `unified`, `whitworth`, `ba`, `pipe`, `cycle`, `miniature`", example = "ba"),
        ("major" = Option<String>, Query, description = "Major diameter; a bare number is mm", example = "3.2 mm"),
        ("pitch" = Option<String>, Query, description = "Pitch in mm, or threads per inch", example = "0.59 mm"),
        ("hole" = Option<String>, Query, description = "A hole to judge: a drill by any name, or a size", example = "No. 36"),
        ("engagement" = Option<String>, Query, description = "Engagement wanted, as a percentage of the full thread", example = "70"),
        ("series" = Option<String>, Query, description = "Drill series at hand, parted by commas: `number`, `letter`, `fraction`, `metric`", example = "number,metric"),
        ("owned" = Option<String>, Query, description = "Drills at hand, `-` marks a range", example = "1-60, 1-6x0.1mm"),
    ),
    responses((status = 200, description = "The hole and the drills", body = Tapping), NotUnderstood, Always)
)]
pub async fn show(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let request = tapping::Request::read(query.as_deref().unwrap_or_default());
    let found = request.answer().map_err(Error::Invalid)?;
    reply::json(&headers, &Tapping::from(&found))
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
