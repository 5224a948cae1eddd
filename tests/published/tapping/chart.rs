//! A chart of inch drills that says which percentages it was drawn for: the drill is worked out.

use holewright_core::calc::engagement::hole_for;
use holewright_core::calc::neighbours::nearest;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills::{Drill, Series};
use holewright_core::tables::threads::Thread;
use holewright_core::units::{Length, in_mm};

use crate::replay::{Kind, Row};

/// Two drills nearer than this are one size: a letter drill E is a quarter inch.
const SAME_MM: f64 = 1e-6;

/// The drill of a column is the number, letter or fraction drill nearest the hole of its percentage.
#[track_caller]
pub(super) fn check(row: &mut Row, column: &str, thread: &Thread, printed: &Drill, percent: f64) {
    let hole = hole_for(thread.form(), &geometry(thread), percent);
    let best = nearest_inch_drill(hole);
    let same = (in_mm(best.diameter) - in_mm(printed.diameter)).abs() < SAME_MM;
    let got = if same { &printed.label } else { &best.label };
    row.claim(&format!("{column}: nearest {percent} %"), Kind::Formula, &printed.label, got, same);
}

fn nearest_inch_drill(hole: Length) -> &'static Drill {
    let inch_series = nearest(hole).into_iter().filter(|found| found.series != Series::Metric);
    inch_series
        .flat_map(|found| [found.below, found.above])
        .flatten()
        .min_by(|a, b| in_mm(a.error).abs().total_cmp(&in_mm(b.error).abs()))
        .expect("a drill in some series")
        .drill
}
