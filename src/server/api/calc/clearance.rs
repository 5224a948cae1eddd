//! The clearance hole of a screw.

use serde::Serialize;
use utoipa::ToSchema;

use super::{Described, ThreadName};
use crate::Error;
use crate::api::drills::Drill;
use crate::api::figures;
use holewright_core::asking::Asked;
use holewright_core::calculators::clearance;
use holewright_core::tables::clearance::Holes;

/// The hole a screw passes through.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ClearanceSize)]
struct Clearance {
    /// The thread; null for a screw given by its diameter.
    #[schema(required)]
    thread: Option<ThreadName>,
    /// The diameter the hole goes by, in millimetres.
    major_mm: f64,
    /// The diameter that has to pass, in millimetres.
    screw_mm: f64,
    /// The fit asked for.
    #[schema(pattern = "^(close|medium|free)$", example = "medium")]
    fit: &'static str,
    /// The hole to make, in millimetres: for the fit, or for the centres where they ask for more.
    hole_mm: f64,
    /// The drill to take; null where none at hand is large enough.
    #[schema(required)]
    drill: Option<Drill>,
    /// What the centre errors ask for; null where none was given.
    #[schema(required)]
    for_centre_errors: Option<ForErrors>,
    /// Every fit, closest first; behind them the smaller hole of model work, where there is one.
    fits: Vec<Fit>,
    /// The rows in print for this screw; the first is the ruling one, where there is one.
    printed: Vec<PrintedHoles>,
}

/// The hole that lets the screw in with both centres as far off as said.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = HoleForErrors)]
struct ForErrors {
    /// Its diameter, in millimetres.
    hole_mm: f64,
    /// The smallest drill at hand that is not below it; null where none is large enough.
    #[schema(required)]
    drill: Option<Drill>,
    /// The hole of the fit is large enough for them already.
    fit_is_large_enough: bool,
}

/// The hole of one fit.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = FitHole)]
struct Fit {
    /// close, medium, free, or model.
    #[schema(pattern = "^(close|medium|free|model)$", example = "medium")]
    fit: &'static str,
    /// Diameter of the hole, in millimetres.
    hole_mm: f64,
    /// The smallest drill at hand that is not below it; null where none is large enough.
    #[schema(required)]
    drill: Option<Drill>,
    /// How far the screw can shift in the drilled hole, on diameter, in millimetres; null without a drill.
    #[schema(required)]
    float_mm: Option<f64>,
    /// What the hole rests on: a standard's row, or a rule.
    basis: String,
    /// Where that was read.
    source: String,
}

/// A row in print.
#[derive(Debug, Serialize, ToSchema)]
struct PrintedHoles {
    /// The standard.
    #[schema(example = "ISO 273")]
    standard: String,
    /// The hole of its close fit, in millimetres.
    close_mm: f64,
    /// The hole of its medium fit, in millimetres.
    medium_mm: f64,
    /// The hole of its free fit, in millimetres.
    free_mm: f64,
    /// Where it was read.
    source: String,
}

/// The answer as it is described.
pub(super) fn described() -> Described {
    Described::of::<Clearance>(
        "clearance_hole",
        "The hole a screw passes through, its drill, and what centres that are off ask for.",
        "The hole and its drill",
    )
}

/// The answer.
///
/// # Errors
/// A field that makes no sense.
pub(super) fn answer(asked: &Asked) -> Result<impl Serialize, Error> {
    let found = clearance::answer_to(asked).map_err(Error::Invalid)?;
    Ok(Clearance::from(&found))
}

impl From<&clearance::Answer> for Clearance {
    fn from(found: &clearance::Answer) -> Self {
        Self {
            thread: found.screw.thread.map(ThreadName::from),
            major_mm: figures::mm(found.screw.major),
            screw_mm: figures::mm(found.screw.size()),
            fit: found.fit.slug(),
            hole_mm: figures::mm(found.hole()),
            drill: found.drill().map(Drill::from),
            for_centre_errors: found.for_errors.map(|errors| ForErrors {
                hole_mm: figures::mm(errors.hole),
                drill: errors.drill.map(Drill::from),
                fit_is_large_enough: errors.fit_will_do,
            }),
            fits: found
                .fits
                .iter()
                .map(|(fit, drilled)| Fit::new(fit.slug(), drilled))
                .chain(found.model.iter().map(|drilled| Fit::new("model", drilled)))
                .collect(),
            printed: found
                .ruling
                .into_iter()
                .chain(found.also_printed.iter().copied())
                .map(PrintedHoles::from)
                .collect(),
        }
    }
}

impl Fit {
    fn new(fit: &'static str, drilled: &clearance::Drilled) -> Self {
        Self {
            fit,
            hole_mm: figures::mm(drilled.hole.hole),
            drill: drilled.drill.map(Drill::from),
            float_mm: drilled.float.map(figures::mm),
            basis: drilled.hole.basis.to_string(),
            source: figures::source(drilled.hole.basis.source()),
        }
    }
}

impl From<&'static Holes> for PrintedHoles {
    fn from(row: &'static Holes) -> Self {
        Self {
            standard: row.standard.to_string(),
            close_mm: figures::mm(row.close.length()),
            medium_mm: figures::mm(row.medium.length()),
            free_mm: figures::mm(row.free.length()),
            source: figures::source(row.source),
        }
    }
}
