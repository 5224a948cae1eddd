//! ISO metric lists, their percentages, forming taps' holes, and the miniature threads of a maker.

use holewright_core::calc::engagement::{hole_for, percent_of_internal_height};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::Thread;
use holewright_core::units::{in_mm, inch, mm};

use crate::limits;
use crate::replay::{Family, Kind, Row, decimal};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/iso_metric_tapping.csv",
        context: &["designation"],
        unused: &[],
        replay: list,
    },
    Family {
        file: "metric_unified/metric_tap_percent.csv",
        context: &["designation", "basis"],
        unused: &[],
        replay: percentages,
    },
    Family {
        file: "metric_unified/miniature_tapping.csv",
        context: &["designation"],
        unused: &[],
        replay: miniature,
    },
];

fn list(row: &mut Row) {
    let size = size::metric(row.text("designation"));
    let printed = row.text("tap_drill_mm").to_owned();
    if printed.contains('-') {
        return super::forming::range(row, "tap_drill_mm", &size);
    }
    let thread = size::thread(row, &size);
    super::held_metric(row, "tap_drill_mm", &printed);
    let hole = decimal(&printed).expect("a diameter").value;
    super::engages(row, "tap_drill_mm", &thread, mm(hole));
    super::listed::check(row, "tap_drill_mm", &thread, mm(hole));
    if is_less_pitch(row) {
        // Full depth is ¾ H a side and H is √3/2 pitches: one pitch off the diameter is this much.
        let percent = 100.0 / (0.75 * 3.0_f64.sqrt());
        let got = hole_for(thread.form(), &geometry(&thread), percent);
        row.check_printed("tap_drill_mm: d - P", &printed, Kind::Formula, in_mm(got));
    }
    internal_percent(row, "percent_thread_at_drill_ISO_5H8_basis", &thread, Some(hole));
    let largest = row.number("D1_max_6H_mm");
    internal_percent(row, "percent_thread_at_D1_max", &thread, largest);
    limits::of_nut(row, &thread, "D1_min_6H_mm", "D1_max_6H_mm");
}

/// Lists whose every hole is the diameter less the pitch, to its last place: a library that says so,
/// and the training handbook, which does not: there the rule was found by replaying its rows.
fn is_less_pitch(row: &Row) -> bool {
    row.text("note").contains("d - P exactly") || row.text("source").starts_with("Institut fuer")
}

/// The percentage on 5/8 H, as a tap maker prints it.
fn internal_percent(row: &mut Row, column: &str, thread: &Thread, hole: Option<f64>) {
    if row.text(column).is_empty() {
        return;
    }
    let hole = mm(hole.expect("a hole beside its percentage"));
    let got = percent_of_internal_height(thread.form(), &geometry(thread), hole);
    row.check(column, Kind::Formula, got.expect("a 60° form"));
}

/// The hole of a percentage, of ¾ H or of a forming tap's rule, or the percentage of 5/8 H of a hole.
fn percentages(row: &mut Row) {
    let size = size::metric(row.text("designation"));
    let thread = size::thread(row, &size);
    limits::of_nut(row, &thread, "D1_min_6H_mm", "D1_max_6H_mm");
    let figures = geometry(&thread);
    let basis = row.text("basis").to_owned();
    let hole = row.number("hole_dia_mm").expect("a hole");
    row.used("hole_dia_mm");
    row.used("percent_thread");
    if basis.starts_with("form tap") {
        super::forming::of_percent(row, "hole_dia_mm", &thread, in_mm);
    } else if basis.starts_with("ISO/JIS") {
        internal_percent(row, "percent_thread", &thread, Some(hole));
    } else {
        let percent = row.number("percent_thread").expect("a percentage");
        let got = in_mm(hole_for(thread.form(), &figures, percent));
        row.check("hole_dia_mm", Kind::Formula, got);
    }
}

/// A maker's least and largest hole by depth of thread, and his hole for forming, for UNM and the
/// sizes below No. 0.
fn miniature(row: &mut Row) {
    let size = size::unm(row.text("designation"));
    let thread = size::thread(row, &size);
    for column in [
        "depth_to_2_3D_min_in",
        "depth_to_2_3D_max_in",
        "depth_2_3_to_1_5D_min_in",
        "depth_2_3_to_1_5D_max_in",
        "depth_1_5_to_3D_min_in",
        "depth_1_5_to_3D_max_in",
    ] {
        if let Some(hole) = row.number(column) {
            super::engages(row, column, &thread, inch(hole));
        }
    }
    if let Some(hole) = row.number("formed_in") {
        super::forming::unstated(row, "formed_in", &thread, inch(hole));
    }
}
