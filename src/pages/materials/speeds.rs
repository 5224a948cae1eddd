//! Cutting speeds of one material as printed, and what they make at the spindle for usual drills.

use crate::calc::cutting_speed::spindle_speed;
use crate::pages::cited;
use crate::tables::materials::feeds;
use crate::tables::materials::{Material, SpeedRange};
use crate::units::{Frequency, Length, Velocity, in_metres_per_minute, in_mm, in_rpm, mm, print};

/// A printed range of surface speed.
pub(super) struct PrintedSpeed {
    /// `24 to 30 m/min`
    pub(super) range: String,
    pub(super) printed_as: &'static str,
    pub(super) source: String,
}

/// The ranges as their sources print them, the one the plan uses first.
pub(super) fn printed(ranges: &[SpeedRange]) -> Vec<PrintedSpeed> {
    ranges
        .iter()
        .map(|range| PrintedSpeed {
            range: format!("{} m/min", span(metres(range.low), metres(range.high))),
            printed_as: range.printed_as,
            source: cited::source(range.source),
        })
        .collect()
}

fn metres(speed: Velocity) -> String {
    print::trimmed(in_metres_per_minute(speed), 1)
}

/// What a usual drill wants.
pub(super) struct DrillRow {
    /// Diameter in millimetres.
    pub(super) diameter: String,
    pub(super) speed: String,
    pub(super) feed: String,
}

/// Usual drills of a model engineer's bench.
const USUAL: [Length; 8] =
    [mm(1.0), mm(1.5), mm(2.0), mm(3.0), mm(4.0), mm(6.0), mm(8.0), mm(12.0)];

/// Spindle speed and feed for usual drills by the first printed range; empty where none is held.
pub(super) fn usual(material: &Material) -> Vec<DrillRow> {
    let Some(range) = material.drilling.first() else { return Vec::new() };
    USUAL
        .into_iter()
        .map(|diameter| DrillRow {
            diameter: print::trimmed(in_mm(diameter), 1),
            speed: span(
                revolutions(spindle_speed(range.low, diameter)),
                revolutions(spindle_speed(range.high, diameter)),
            ),
            feed: feeds::for_drill(diameter).map_or_else(
                || "–".to_owned(),
                |feed| {
                    let size = |length| print::fixed(in_mm(length), 3);
                    span(size(feed.low), size(feed.high))
                },
            ),
        })
        .collect()
}

/// A spindle is set to two figures at most.
fn revolutions(speed: Frequency) -> String {
    print::trimmed(print::significant(in_rpm(speed), 2), 0)
}

/// `24 to 30`, or the one figure where both are the same.
fn span(low: String, high: String) -> String {
    if low == high { low } else { format!("{low} to {high}") }
}
