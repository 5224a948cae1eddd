//! The drills of every series by size, and one drill with its neighbours.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::drill_cut;
use super::problem::{Always, NotHeld, NotUnderstood};
use super::segments::Segments;
use super::{figures, reply};
use crate::Error;
use holewright_core::calc::neighbours::{self, around};
use holewright_core::tables::drills::{self, Cut, Series};
use holewright_pages::Query;

/// A drill.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct Drill {
    /// Its series.
    #[schema(pattern = "^(number|letter|fraction|metric)$", example = "number")]
    series: &'static str,
    /// Its size in address dress.
    #[schema(example = "46")]
    size: &'static str,
    /// The name on the drill stand.
    #[schema(example = "No. 46")]
    label: &'static str,
    /// Nominal diameter, in millimetres.
    #[schema(example = 2.0574)]
    diameter_mm: f64,
    /// Nominal diameter, in inches.
    #[schema(example = 0.081)]
    diameter_in: f64,
}

/// Drills by size.
#[derive(Debug, Serialize, ToSchema)]
struct Drills {
    /// The drills, smallest first; equal sizes in the order number, letter, fraction, metric.
    drills: Vec<Drill>,
}

/// A drill with the drills near it.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct DrillWithNeighbours {
    #[serde(flatten)]
    drill: Drill,
    /// Where its size was read.
    source: String,
    /// The drills on each side of it, series by series.
    neighbours: Vec<Neighbours>,
}

/// The nearest drills of one series, none further off than half a millimetre.
#[derive(Debug, Serialize, ToSchema)]
struct Neighbours {
    /// The series.
    #[schema(pattern = "^(number|letter|fraction|metric)$", example = "metric")]
    series: &'static str,
    /// The largest not above it, in its own series the next smaller; null where none is near.
    #[schema(required)]
    below: Option<Neighbour>,
    /// The smallest above it; null where none is near.
    #[schema(required)]
    above: Option<Neighbour>,
}

/// A drill near the one asked for.
#[derive(Debug, Serialize, ToSchema)]
struct Neighbour {
    /// The drill.
    drill: Drill,
    /// How much larger this drill is than the one asked for, in millimetres: negative where it is smaller.
    #[schema(example = -0.0074)]
    larger_by_mm: f64,
}

/// The drills of every series in one order of size.
///
/// # Errors
/// A series or a size that makes no sense: 422.
#[utoipa::path(
    get,
    path = "/api/v1/drills",
    operation_id = "drills",
    tag = "drills",
    params(
        (
            "series" = Option<String>, Query, example = "number,metric",
            description = "Series to keep, separated by commas: number, letter, fraction, metric",
        ),
        (
            "from_mm" = Option<String>, Query, example = "2",
            description = "The smallest size to keep, in millimetres; point or comma",
        ),
        (
            "to_mm" = Option<String>, Query, example = "2.5",
            description = "The largest size to keep, in millimetres; point or comma",
        ),
    ),
    responses((status = 200, description = "The drills", body = Drills), NotUnderstood, Always)
)]
pub async fn list(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    answer(&headers, drill_cut::read(&query)?)
}

/// The same body at the chart's own address, whose sizes carry their unit or name a drill.
///
/// # Errors
/// A series or a size that makes no sense: 422.
pub(super) async fn chart(query: &str, headers: HeaderMap) -> Result<Response, Error> {
    let cut = holewright_pages::drills::cut::read(&Query::read(query)).map_err(Error::Invalid)?;
    answer(&headers, cut)
}

/// One drill, with its neighbours in every series.
///
/// # Errors
/// No such drill: 404.
#[utoipa::path(
    get,
    path = "/api/v1/drills/{series}/{size}",
    operation_id = "drill",
    tag = "drills",
    params(
        (
            "series" = String, Path, example = "number",
            description = "number, letter, fraction or metric",
        ),
        ("size" = String, Path, description = "A size in address dress", example = "46"),
    ),
    responses(
        (status = 200, description = "The drill and its neighbours", body = DrillWithNeighbours),
        NotHeld,
        Always,
    )
)]
pub async fn show(
    Segments((series, size)): Segments<(String, String)>,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let drill = Series::from_slug(&series)
        .and_then(|series| drills::find(series, &size))
        .ok_or(Error::NotFound("no such drill; /api/v1/drills lists them"))?;
    reply::json(&headers, &DrillWithNeighbours::from(drill))
}

fn answer(headers: &HeaderMap, cut: Cut) -> Result<Response, Error> {
    reply::json(headers, &Drills { drills: cut.drills().map(Drill::from).collect() })
}

impl From<&'static drills::Drill> for Drill {
    fn from(drill: &'static drills::Drill) -> Self {
        Self {
            series: drill.series.slug(),
            size: &drill.size,
            label: &drill.label,
            diameter_mm: figures::mm(drill.diameter),
            diameter_in: figures::inch(drill.diameter),
        }
    }
}

impl From<&'static drills::Drill> for DrillWithNeighbours {
    fn from(drill: &'static drills::Drill) -> Self {
        Self {
            drill: drill.into(),
            source: figures::source(drill.source()),
            neighbours: around(drill).iter().map(Neighbours::from).collect(),
        }
    }
}

impl From<&neighbours::Neighbours> for Neighbours {
    fn from(found: &neighbours::Neighbours) -> Self {
        Self {
            series: found.series.slug(),
            below: found.below.as_ref().map(Neighbour::from),
            above: found.above.as_ref().map(Neighbour::from),
        }
    }
}

impl From<&neighbours::Neighbour> for Neighbour {
    fn from(near: &neighbours::Neighbour) -> Self {
        Self { drill: near.drill.into(), larger_by_mm: figures::mm(near.error) }
    }
}
