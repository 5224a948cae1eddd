//! Tapping lists: the drill exists, names agree, our own copy of the list has it, and the engagement
//! is that of a tapping size. Where a list says by which rule it was drawn, the drill is worked out.

mod anchors;
mod british;
mod chart;
mod forming;
pub(crate) mod listed;
mod metric;
mod pipe;
mod unified;

use holewright_core::calc::engagement::{applies, percent};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills::Drill;
use holewright_core::tables::threads::Thread;
use holewright_core::units::{Length, in_inch, in_mm, mm};

use crate::drill;
use crate::replay::{Family, Kind, Row, decimal};

/// Every tapping list.
pub(crate) fn families() -> impl Iterator<Item = &'static Family> {
    [british::FAMILIES, pipe::FAMILIES, metric::FAMILIES, unified::FAMILIES].into_iter().flatten()
}

/// Engagement of a hole in percent of full thread depth.
pub(crate) fn engagement(thread: &Thread, hole: Length) -> f64 {
    percent(thread.form(), &geometry(thread), hole)
}

/// Claims that a hole of a list is one to tap: between 20 and 110 % of full thread. A hole the
/// list's own flag calls below the core must come out over 100 %.
#[track_caller]
pub(crate) fn engages(row: &mut Row, column: &str, thread: &Thread, hole: Length) {
    let quantity = format!("{column}: engagement");
    if !applies(thread) {
        let below = hole < geometry(thread).major;
        row.claim(&quantity, Kind::Bounds, "none, taper; below the major", in_mm(hole), below);
        return;
    }
    let engaged = engagement(thread, hole);
    let (expected, agrees) = if flagged_below_core(row) {
        ("over 100 %, the hole is below the core", engaged > 100.0)
    } else {
        ("20 to 110 %", engaged > 20.0 && engaged < 110.0)
    };
    row.claim(&quantity, Kind::Bounds, expected, format!("{engaged:.1} %"), agrees);
}

fn flagged_below_core(row: &Row) -> bool {
    ["engagement_note", "misprint_flag"]
        .into_iter()
        .filter(|column| row.has(column))
        .any(|column| row.text(column).contains("below"))
}

/// A list entry: the drill by its name, the drill in millimetres, or both.
pub(crate) fn entry(row: &mut Row, thread: &Thread, label: &str, millimetres: &str) {
    let named = labelled(row, thread, label);
    if let Some(named) = named {
        listed::check(row, label, thread, named.diameter);
    }
    let printed = row.text(millimetres).to_owned();
    if printed.is_empty() {
        row.used(millimetres);
        return;
    }
    let size = decimal(&printed).unwrap_or_else(|| panic!("{printed:?} is no diameter"));
    row.used(millimetres);
    if let Some(named) = named
        && !alternatives(row)
    {
        row.check(millimetres, Kind::Conversion, in_mm(named.diameter));
    }
    if named.is_none() {
        held_metric(row, millimetres, &printed);
    }
    engages(row, millimetres, thread, mm(size.value));
    listed::check(row, millimetres, thread, mm(size.value));
}

/// A supplier's number drill and metric drill are alternatives, and his note says so.
fn alternatives(row: &Row) -> bool {
    row.has("engagement_note") && row.text("engagement_note").contains("alternatives, not equal")
}

/// The drill of a label column, where it names one.
pub(crate) fn labelled(row: &mut Row, thread: &Thread, label: &str) -> Option<&'static Drill> {
    let printed = row.text(label).to_owned();
    row.used(label);
    if printed.is_empty() || printed.starts_with("series") {
        return None;
    }
    let found = drill::named(row, label, &printed)?;
    engages(row, label, thread, found.diameter);
    Some(found)
}

/// A hole in millimetres that ought to be a metric drill.
pub(crate) fn held_metric(row: &mut Row, column: &str, printed: &str) {
    if let Some(found) = drill::held(row, &drill::metric(printed)) {
        row.check_printed(column, printed, Kind::Table, in_mm(found.diameter));
    }
}

/// The same hole in inches.
pub(crate) fn inches(row: &mut Row, label: &str, millimetres: &str, inches: &str) {
    let named = row.text(label);
    let diameter = match row.number(millimetres) {
        Some(size) => Some(mm(size)),
        None if named.is_empty() => None,
        None => {
            let name = drill::name(named);
            drill::held(row, &name).map(|drill| drill.diameter)
        }
    };
    match diameter {
        Some(diameter) => row.check(inches, Kind::Conversion, in_inch(diameter)),
        None => row.used(inches),
    }
}
