//! Tensile areas, and the areas at the root beside them.

use holewright_core::calc::thread_form::geometry;
use holewright_core::units::{in_mm, in_mm2};

use crate::dimensions::{SQUARE_INCH_MM2, minor_area_mm2};
use crate::replay::{Family, Kind, Row};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[Family {
    file: "metric_unified/stress_area.csv",
    context: &["designation", "unit", "series"],
    unused: &[],
    replay: area,
}];

/// `M14x2`, `M4 (minor area, d3=d-1.226869P)`, `M16x2 (root area)`, `1-64 (minor-diameter area)`.
fn area(row: &mut Row) {
    let name = row.text("designation").to_owned();
    let (size, which) = name.split_once(" (").unwrap_or((&name, ""));
    let size = if size.starts_with('M') { size::metric(size) } else { size::unified(size) };
    let thread = size::thread(row, &size);
    let mm2 = match which.trim_end_matches(')') {
        "" => in_mm2(geometry(&thread).tensile_area),
        "minor area, d3=d-1.226869P" => circle(in_mm(geometry(&thread).minor)),
        "root area" | "minor-diameter area" => minor_area_mm2(&thread),
        other => panic!("what is a {other}?"),
    };
    let got = if row.text("unit") == "in2" { mm2 / SQUARE_INCH_MM2 } else { mm2 };
    row.check("area", Kind::Formula, got);
}

fn circle(diameter: f64) -> f64 {
    diameter * diameter * std::f64::consts::FRAC_PI_4
}
