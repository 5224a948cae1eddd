//! Unified lists: the handbook's percentages, and two libraries' drills.

use holewright_core::calc::engagement::hole_for;
use holewright_core::calc::thread_form::geometry;
use holewright_core::units::{in_inch, in_mm, mm};

use crate::drill;
use crate::replay::{Family, Kind, Row, decimal};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/unified_tap_percent.csv",
        context: &["designation", "basis"],
        unused: &[],
        replay: percentages,
    },
    Family {
        file: "metric_unified/unified_tapping_inch_library.csv",
        context: &["designation"],
        unused: &[],
        replay: inch_library,
    },
    Family {
        file: "metric_unified/unified_tapping_mm_library.csv",
        context: &["designation", "series"],
        unused: &[],
        replay: millimetre_library,
    },
];

/// A drill with its percentage of ¾ H, or the theoretical hole of a percentage.
fn percentages(row: &mut Row) {
    let thread = size::thread(row, &size::unified(row.text("designation")));
    if row.text("basis").starts_with("form tap") {
        assert_eq!(row.text("drill"), "theoretical");
        row.used("drill");
        return super::forming::of_percent(row, "drill_decimal_in", &thread, in_inch);
    }
    let label = row.text("drill").to_owned();
    row.used("drill");
    if label == "theoretical" {
        let percent = row.number("percent_thread").expect("a percentage");
        let got = hole_for(thread.form(), &geometry(&thread), percent);
        row.used("percent_thread");
        row.check("drill_decimal_in", Kind::Formula, in_inch(got));
    } else if let Some(found) = drill::held(row, &drill::name(&label)) {
        row.check("drill_decimal_in", Kind::Conversion, in_inch(found.diameter));
        let got = super::engagement(&thread, found.diameter);
        row.check("percent_thread", Kind::Formula, got);
    }
}

fn inch_library(row: &mut Row) {
    let thread = size::thread(row, &size::unified(row.text("designation")));
    let drawn_for = r#"(75% "Soft" / 50% "Hard" style chart)"#;
    assert!(row.text("source").ends_with(drawn_for), "{row:?}");
    if let Some(drill) = super::labelled(row, &thread, "tap_drill_soft") {
        super::chart::check(row, "tap_drill_soft", &thread, drill, 75.0);
        super::listed::check(row, "tap_drill_soft", &thread, drill.diameter);
    }
    if let Some(drill) = super::labelled(row, &thread, "tap_drill_hard") {
        super::chart::check(row, "tap_drill_hard", &thread, drill, 50.0);
    }
}

/// Named by diameter and series; the pitch in millimetres says how many threads per inch.
fn millimetre_library(row: &mut Row) {
    let pitch = row.number("pitch_mm").expect("a pitch");
    let tpi = (25.4 / pitch * 2.0).round() / 2.0;
    let size = size::unified_in(row.text("series"), row.text("designation"), tpi);
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    row.check("major_mm", Kind::Conversion, in_mm(figures.major));
    row.check("pitch_mm", Kind::Conversion, in_mm(figures.pitch));
    let printed = row.text("core_hole_mm").to_owned();
    super::held_metric(row, "core_hole_mm", &printed);
    let hole = decimal(&printed).expect("a diameter").value;
    super::engages(row, "core_hole_mm", &thread, mm(hole));
    super::listed::check(row, "core_hole_mm", &thread, mm(hole));
}
