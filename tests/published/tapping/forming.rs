//! Holes for forming taps: the hole of a printed percentage, and makers' holes printed without one.
//!
//! The library's rule is that of a catalogue, hole = D − 0.0068 · p · percent. A range or a hole
//! printed without a percentage is held against what the library would drill, or against the least
//! and the most thread of that catalogue's table.

use holewright_core::calc::aim::Aim;
use holewright_core::calc::tapping::{DrillChoice, Question, choose_forming, forming_hole};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills::{Series, in_series};
use holewright_core::tables::materials;
use holewright_core::tables::threads::{Thread, find};
use holewright_core::units::{Length, in_mm};

use crate::replay::{Kind, Row};
use crate::size::Size;

/// The most and the least thread of the catalogue's table for forming taps, percent.
const COLUMNS: (f64, f64) = (75.0, 55.0);

/// The hole of a row's percentage, in the unit of its column.
#[track_caller]
pub(super) fn of_percent(row: &mut Row, column: &str, thread: &Thread, unit: fn(Length) -> f64) {
    let percent = row.number("percent_thread").expect("a percentage");
    row.used("percent_thread");
    row.check(column, Kind::Formula, unit(forming_hole(&geometry(thread), percent)));
}

/// A maker's range, `1.79-1.84`: the hole the library asks for lies in it, and so does the metric
/// drill it takes.
pub(super) fn range(row: &mut Row, column: &str, size: &Size) {
    let printed = row.text(column).to_owned();
    let ends = printed
        .split_once('-')
        .and_then(|(least, most)| Some(least.parse::<f64>().ok()?..=most.parse::<f64>().ok()?));
    let ends = ends.unwrap_or_else(|| panic!("{printed:?} is no range"));
    let thread = find(size.system, &size.slug).unwrap_or_else(|| panic!("{size:?} is not held"));
    let choice = choice(thread);
    let hole = in_mm(forming_hole(&geometry(thread), choice.aim_percent));
    let got = format!("{hole:.3}");
    row.claim(&format!("{column}: hole"), Kind::Bounds, &printed, got, ends.contains(&hole));
    let drill = choice.chosen.drill;
    let within = ends.contains(&in_mm(drill.diameter));
    row.claim(&format!("{column}: drill"), Kind::Bounds, printed, &drill.label, within);
}

/// The library's choice out of a full set of metric drills.
fn choice(thread: &'static Thread) -> DrillChoice {
    let material = materials::find("copper").expect("a metal that flows");
    let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
    let at_hand = in_series(Series::Metric).iter().copied();
    choose_forming(question, at_hand).expect("a metric drill near the hole")
}

/// A maker's hole without a percentage: not less thread than the catalogue's last column, nor more
/// than its first.
pub(super) fn unstated(row: &mut Row, column: &str, thread: &Thread, hole: Length) {
    let figures = geometry(thread);
    let (most, least) = COLUMNS;
    let agrees = (forming_hole(&figures, most)..=forming_hole(&figures, least)).contains(&hole);
    let full = in_mm(figures.major - forming_hole(&figures, 100.0));
    let percent = in_mm(figures.major - hole) / full * 100.0;
    let expected = format!("{least} to {most} %");
    row.claim(
        &format!("{column}: forming"),
        Kind::Bounds,
        expected,
        format!("{percent:.1} %"),
        agrees,
    );
}
