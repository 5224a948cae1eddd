//! Hexagons, heads and washers: which tables there are, and each with its rows.

use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::problem::{Always, NotHeld};
use super::segments::Segments;
use super::{figures, reply};
use crate::Error;
use holewright_core::calc::fastener_lists::{FastenerList, FastenerRow, find_list, lists};
use holewright_core::units::Length;

/// The tables.
#[derive(Debug, Serialize, ToSchema)]
struct FastenerTables {
    /// The tables, in the order of the page.
    tables: Vec<Brief>,
}

/// A table by name.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = FastenerTableName)]
struct Brief {
    /// Its word in addresses.
    #[schema(example = "hexagons-iso")]
    slug: &'static str,
    /// What it is called.
    #[schema(example = "Metric hexagons, ISO")]
    title: &'static str,
    /// What its figures are.
    says: &'static str,
}

/// One table with its rows.
#[derive(Debug, Serialize, ToSchema)]
struct FastenerTable {
    #[serde(flatten)]
    brief: Brief,
    /// The rows, smallest first but for BA, whose numbers run from the largest.
    rows: Vec<Row>,
}

/// One size; a figure that its table has not is null.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = FastenerRow)]
struct Row {
    /// The screw's size as it is named.
    #[schema(example = "M6")]
    size: String,
    /// Across flats, in millimetres.
    #[schema(required)]
    across_flats_mm: Option<f64>,
    /// Across flats of the nut, where it is not the bolt's, in millimetres.
    #[schema(required)]
    nut_across_flats_mm: Option<f64>,
    /// Across corners as printed, in millimetres.
    #[schema(required)]
    across_corners_mm: Option<f64>,
    /// Diameter of a head that is no hexagon, in millimetres.
    #[schema(required)]
    head_diameter_mm: Option<f64>,
    /// Height of the head, in millimetres.
    #[schema(required)]
    head_height_mm: Option<f64>,
    /// Thickness of the plain nut, in millimetres.
    #[schema(required)]
    nut_thickness_mm: Option<f64>,
    /// The key of a socket, in millimetres.
    #[schema(required)]
    key_mm: Option<f64>,
    /// Hole of a washer, in millimetres.
    #[schema(required)]
    inside_mm: Option<f64>,
    /// Outside diameter of a washer, in millimetres.
    #[schema(required)]
    outside_mm: Option<f64>,
    /// Thickness of a washer, in millimetres.
    #[schema(required)]
    thickness_mm: Option<f64>,
    /// Where it was read, with its grade unless it was read in print.
    source: String,
}

/// The tables of hexagons, heads and washers.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/fasteners",
    operation_id = "fastener_tables",
    tag = "fasteners",
    responses((status = 200, description = "Every table", body = FastenerTables), Always)
)]
pub async fn list(headers: HeaderMap) -> Result<Response, Error> {
    reply::json(&headers, &FastenerTables { tables: lists().iter().map(Brief::from).collect() })
}

/// One table: every size that is held, each with its source.
///
/// # Errors
/// No such table: 404.
#[utoipa::path(
    get,
    path = "/api/v1/fasteners/{table}",
    operation_id = "fastener_table",
    tag = "fasteners",
    params(("table" = String, Path, description = "A table", example = "hexagons-iso")),
    responses(
        (status = 200, description = "The table with its rows", body = FastenerTable),
        NotHeld,
        Always,
    )
)]
pub async fn show(
    Segments(table): Segments<String>,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let list =
        find_list(&table).ok_or(Error::NotFound("no such table; /api/v1/fasteners lists them"))?;
    let rows = list.rows().iter().map(Row::from).collect();
    reply::json(&headers, &FastenerTable { brief: list.into(), rows })
}

impl From<&'static FastenerList> for Brief {
    fn from(list: &'static FastenerList) -> Self {
        Self { slug: list.slug, title: list.title, says: list.says }
    }
}

impl From<&FastenerRow> for Row {
    fn from(row: &FastenerRow) -> Self {
        let mm = |size: Option<Length>| size.map(figures::mm);
        let sizes = &row.sizes;
        Self {
            size: row.size.clone(),
            across_flats_mm: mm(sizes.across_flats),
            nut_across_flats_mm: mm(sizes.nut_across_flats),
            across_corners_mm: mm(sizes.across_corners),
            head_diameter_mm: mm(sizes.head_diameter),
            head_height_mm: mm(sizes.head_height),
            nut_thickness_mm: mm(sizes.nut_thickness),
            key_mm: mm(sizes.key),
            inside_mm: mm(sizes.inside),
            outside_mm: mm(sizes.outside),
            thickness_mm: mm(sizes.thickness),
            source: figures::source(row.source),
        }
    }
}
