//! Cutting speeds of one material as printed, and what they make at the spindle for usual drills.

use crate::drawer::Drawer;
use crate::key::{Key, Sign};
use holewright_core::calc::cutting_speed::spindle_speed;
use holewright_core::calc::drill_feed::drill_feed;
use holewright_core::calc::machines::Machines;
use holewright_core::calc::setting::bench_fastest;
use holewright_core::calc::speed_choice::{Reach, SpeedBand};
use holewright_core::tables::materials::{Material, SpeedRange};
use holewright_core::units::{
    Frequency, Length, Velocity, in_metres_per_minute, in_mm, in_rpm, mm, print,
};

/// A printed range of surface speed.
pub(super) struct PrintedSpeed {
    /// `24 to 30 m/min`
    pub(super) range: String,
    pub(super) printed_as: &'static str,
    pub(super) sign: Sign,
}

/// The ranges as their sources print them, the one the plan uses first.
pub(super) fn printed<'a>(
    ranges: impl IntoIterator<Item = &'a SpeedRange>,
    key: &mut Key,
) -> Vec<PrintedSpeed> {
    ranges
        .into_iter()
        .map(|range| PrintedSpeed {
            range: self::range(range),
            printed_as: range.printed_as,
            sign: key.sign(range.source),
        })
        .collect()
}

/// `24 to 30 m/min`
pub(super) fn range(range: &SpeedRange) -> String {
    format!("{} m/min", span(metres(range.low), metres(range.high)))
}

fn metres(speed: Velocity) -> String {
    print::trimmed(in_metres_per_minute(speed), 1)
}

/// What a usual drill wants.
pub(super) struct DrillRow {
    /// Diameter in millimetres.
    pub(super) diameter: String,
    pub(super) speed: String,
    /// What it would take, where no bench machine turns so fast.
    pub(super) takes: Option<String>,
    /// The speed to set on the reader's own machine; none where no drawer says what it has.
    pub(super) yours: Option<OwnSpeed>,
    pub(super) feed: String,
}

/// The speed of the reader's machine to set.
pub(super) struct OwnSpeed {
    pub(super) speed: String,
    pub(super) shape: &'static str,
    pub(super) verdict: &'static str,
}

impl OwnSpeed {
    fn of(band: SpeedBand, machines: &Machines) -> Option<Self> {
        let choice = machines.choose(&band)?;
        let (shape, verdict) = match choice.reach {
            Reach::NotSaid | Reach::Within => ("within", "in the range"),
            Reach::Between | Reach::TooSlow => ("within", "slower, no harm"),
            Reach::TooFast => ("beyond", "too fast"),
        };
        let turns = print::trimmed(in_rpm(choice.speed), 0);
        let speed = match &choice.machine.name {
            Some(name) => format!("{turns}, {name}"),
            None => turns,
        };
        Some(Self { speed, shape, verdict })
    }
}

/// Usual drills of a model engineer's bench.
const USUAL: [Length; 8] =
    [mm(1.0), mm(1.5), mm(2.0), mm(3.0), mm(4.0), mm(6.0), mm(8.0), mm(12.0)];

/// Spindle speed and feed for usual drills by the first printed range; empty where none is held.
pub(super) fn usual(material: &Material, drawer: Option<&Drawer>) -> Vec<DrillRow> {
    let Some(range) = material.drilling.first() else { return Vec::new() };
    USUAL
        .into_iter()
        .map(|diameter| (diameter, [range.low, range.high].map(|end| spindle_speed(end, diameter))))
        .map(|(diameter, [low, high])| DrillRow {
            diameter: print::trimmed(in_mm(diameter), 1),
            speed: if low > bench_fastest() {
                "as fast as it goes".to_owned()
            } else {
                span(revolutions(low), revolutions(high))
            },
            takes: (low > bench_fastest()).then(|| span(revolutions(low), revolutions(high))),
            yours: drawer
                .and_then(|drawer| OwnSpeed::of(SpeedBand { low, high }, drawer.speeds.machines())),
            feed: drill_feed(diameter).map_or_else(
                || "by feel".to_owned(),
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
