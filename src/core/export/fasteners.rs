//! The tables of hexagons, heads and washers.

use super::{Cell, Table};
use crate::calc::fastener_lists::{FIGURES, FastenerList, FastenerRow};
use crate::tables::source::Source;

/// Every figure of a row in both units: one head row for all the tables, empty where a table has none.
const COLUMNS: [&str; 23] = [
    "size",
    "across_flats_mm",
    "across_flats_in",
    "nut_across_flats_mm",
    "nut_across_flats_in",
    "across_corners_mm",
    "across_corners_in",
    "head_diameter_mm",
    "head_diameter_in",
    "head_height_mm",
    "head_height_in",
    "nut_thickness_mm",
    "nut_thickness_in",
    "key_mm",
    "key_in",
    "inside_mm",
    "inside_in",
    "outside_mm",
    "outside_in",
    "thickness_mm",
    "thickness_in",
    "source",
    "grade",
];

/// One table.
#[must_use]
pub fn rows(list: &FastenerList) -> Table {
    Table { columns: &COLUMNS, rows: list.rows().iter().map(row).collect() }
}

fn row(row: &FastenerRow) -> Vec<Cell> {
    let Source { cite, grade } = row.source;
    let figures = FIGURES.iter().flat_map(|(_, _, of)| {
        let size = of(&row.sizes);
        [Cell::or_empty(size.map(Cell::mm)), Cell::or_empty(size.map(Cell::inch))]
    });
    let source = [Cell::text(cite), Cell::text(grade.slug())];
    [Cell::text(&*row.size)].into_iter().chain(figures).chain(source).collect()
}
