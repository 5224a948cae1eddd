//! Unified threads, in inches and in a maker's millimetres.

use holewright_core::calc::engagement::hole_for;
use holewright_core::calc::screw_limits::least_pair;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::Thread;
use holewright_core::units::{in_inch, in_mm, in_mm2};

use crate::replay::{Family, Kind, Row};
use crate::size;

/// A square inch in square millimetres.
pub(crate) const SQUARE_INCH_MM2: f64 = 25.4 * 25.4;

const CLASS_3B: &str = "class 3B is in no figure of ours";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/unified_dimensions.csv",
        context: &["designation", "series"],
        unused: &[],
        replay: dimensions,
    },
    Family {
        file: "metric_unified/unified_dimensions_mm.csv",
        context: &["designation"],
        unused: &[("D2_max_3B_mm", CLASS_3B)],
        replay: millimetres,
    },
];

fn dimensions(row: &mut Row) {
    let size = size::unified(row.text("designation"));
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    row.check("tpi", Kind::Table, figures.threads_per_inch);
    row.check("major_in", Kind::Table, in_inch(figures.major));
    row.check("pitch_dia_in", Kind::Formula, in_inch(figures.effective));
    row.check("external_minor_d3_in", Kind::Formula, in_inch(figures.minor));
    row.check("internal_minor_D1_in", Kind::Formula, in_inch(figures.minor_internal));
    row.check("minor_area_in2", Kind::Formula, minor_area_mm2(&thread) / SQUARE_INCH_MM2);
    row.check(
        "tensile_stress_area_in2",
        Kind::Formula,
        in_mm2(figures.tensile_area) / SQUARE_INCH_MM2,
    );
}

/// The area at the root the Unified tables print: on D − 2·¾H, the hole of a full thread.
pub(crate) fn minor_area_mm2(thread: &Thread) -> f64 {
    let root = in_mm(hole_for(thread.form(), &geometry(thread), 100.0));
    root * root * std::f64::consts::FRAC_PI_4
}

/// `0-80 UNF`.
fn millimetres(row: &mut Row) {
    let name = row.text("designation").trim_end_matches(" UNF").to_owned();
    let thread = size::thread(row, &size::unified(&name));
    let figures = geometry(&thread);
    row.check("tpi", Kind::Table, figures.threads_per_inch);
    row.check("pitch_mm", Kind::Conversion, in_mm(figures.pitch));
    row.check("major_mm", Kind::Conversion, in_mm(figures.major));
    row.check("pitch_dia_mm", Kind::Formula, in_mm(figures.effective));
    row.check("D1_nut_mm", Kind::Formula, in_mm(figures.minor_internal));
    row.check("d3_screw_mm", Kind::Formula, in_mm(figures.minor));
    let pair = least_pair(&thread, &figures);
    row.check("D2_max_2B_mm", Kind::Formula, in_mm(pair.nut_effective));
}
