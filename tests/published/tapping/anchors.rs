//! Where the published lists sit: the anchors of the aim table (`calc::aim`), recomputed.

use holewright_core::tables::threads::Thread;
use holewright_core::units::mm;

use super::engagement;
use crate::replay::{Row, read};
use crate::size::{self, Size};

/// A list: its file, whose it is, a word of its kind, and the column with the hole in millimetres.
struct List {
    file: &'static str,
    source: &'static str,
    kind: &'static str,
    hole: &'static str,
}

/// The least and the greatest engagement of a list, to the nearest percent.
#[track_caller]
fn check(list: &List, size: fn(&Row) -> Size, expected: (f64, f64)) {
    let mut percents = Vec::new();
    for (_, cells) in read(list.file) {
        let mut row = Row::new(cells);
        let of_this_list = row.text("source").starts_with(list.source)
            && row.cells().any(|(_, cell)| cell.starts_with(list.kind));
        if let (true, Some(hole)) = (of_this_list, row.number(list.hole)) {
            let size = size(&row);
            let thread: Thread = size::thread(&mut row, &size);
            percents.push(engagement(&thread, mm(hole)));
        }
    }
    percents.sort_by(f64::total_cmp);
    let ends = percents.first().zip(percents.last());
    let (least, greatest) = ends.expect("a list with holes");
    assert_eq!((least.round(), greatest.round()), expected, "{} {}", list.file, list.source);
}

fn british(system: &'static str, row: &Row) -> Size {
    size::british(system, row.text("designation"), None)
}

#[test]
fn the_whitworth_list_that_cites_bs_1157_sits_at_77_to_86() {
    let file = "british/bsw_tapping.csv";
    let list = List { file, source: "FreeCAD", kind: "CAD", hole: "tapping_mm" };
    check(&list, |row| british("bsw", row), (77.0, 86.0));
}

#[test]
fn the_fine_list_that_cites_bs_1157_sits_at_75_to_90() {
    let file = "british/bsf_tapping.csv";
    let list = List { file, source: "FreeCAD", kind: "CAD", hole: "tapping_mm" };
    check(&list, |row| british("bsf", row), (75.0, 90.0));
}

/// All but M4.5 lie between 74 and 79; its 3.70 mm is at 82.
#[test]
fn iso_2306_sits_at_74_to_82() {
    let list = List {
        file: "metric_unified/iso_metric_tapping.csv",
        source: "FreeCAD",
        kind: "cut tap (ISO 2306",
        hole: "tap_drill_mm",
    };
    check(&list, |row| size::metric(row.text("designation")), (74.0, 82.0));
}

#[test]
fn one_club_list_of_model_engineer_sizes_sits_at_64_to_82() {
    let file = "british/me_tapping_clearance.csv";
    let list = List { file, source: "ministeam", kind: "club", hole: "tapping_mm" };
    check(&list, |row| size::model_engineer(row.text("designation")), (64.0, 82.0));
}

#[test]
fn the_training_handbook_sits_at_77_to_84_for_its_second_series() {
    let file = "british/bsw_tapping.csv";
    let list = List { file, source: "IBE", kind: "series 2", hole: "tapping_mm" };
    check(&list, |row| british("bsw", row), (77.0, 84.0));
}
