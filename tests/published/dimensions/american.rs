//! American National threads: the root of a full thread, and the tapping drill beside it.

use holewright_core::calc::engagement::hole_for;
use holewright_core::calc::thread_form::geometry;
use holewright_core::units::in_inch;

use crate::drill;
use crate::replay::{Family, Kind, Row, decimal};
use crate::{size, tapping};

pub(crate) const FAMILIES: &[Family] = &[Family {
    file: "metric_unified/american_national_tap_drills.csv",
    context: &["designation"],
    unused: &[],
    replay: root_and_drill,
}];

fn root_and_drill(row: &mut Row) {
    let size = size::unified(row.text("designation"));
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    row.check("tpi", Kind::Table, figures.threads_per_inch);
    row.check("major_in", Kind::Table, in_inch(figures.major));
    let root = in_inch(hole_for(thread.form(), &figures, 100.0));
    row.check("root_dia_in", Kind::Formula, root);
    let printed = row.text("commercial_tap_drill_in").to_owned();
    let inches = decimal(&printed).expect("a decimal of an inch");
    if let Some(found) = drill::by_decimal(inches) {
        row.check("commercial_tap_drill_in", Kind::Table, in_inch(found.diameter));
        tapping::engages(row, "commercial_tap_drill_in", &thread, found.diameter);
        tapping::listed::check(row, "commercial_tap_drill_in", &thread, found.diameter);
    } else {
        row.used("commercial_tap_drill_in");
        row.miss("drills/inch", printed);
    }
}
