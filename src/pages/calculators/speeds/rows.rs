//! The rows of the page's tables, and the small figures in them.

use crate::key::{Key, Sign};
use holewright_core::calc::cutting_speed::{feet_per_minute, spindle_speed};
use holewright_core::calc::speed_choice::Verdict;
use holewright_core::calculators::speeds::{self, Feed, LARGEST_TOOL, SpeedAtHand};
use holewright_core::tables::materials::SpeedRange;
use holewright_core::units::{
    Frequency, Time, Velocity, in_metres_per_minute, in_mm, in_rpm, in_seconds, print,
};

/// One speed of the machine.
#[derive(Clone)]
pub(super) struct SpeedRow {
    pub(super) machine: Option<String>,
    pub(super) speed: String,
    pub(super) metres: String,
    pub(super) feet: String,
    pub(super) feed: Option<String>,
    pub(super) time: Option<String>,
    pub(super) shape: &'static str,
    pub(super) verdict: &'static str,
    pub(super) largest: String,
    pub(super) lit: bool,
}

/// A range in print.
pub(super) struct PrintedRow {
    pub(super) printed_as: &'static str,
    pub(super) metres: String,
    pub(super) feet: String,
    pub(super) speed: String,
    pub(super) sign: Sign,
}

pub(super) fn row(found: &SpeedAtHand, lit: bool) -> SpeedRow {
    let (shape, verdict) = match found.verdict {
        Verdict::Slow => ("no-limit", "slower, no harm"),
        Verdict::Within => ("within", "in the range"),
        Verdict::Fast => ("beyond", "too fast"),
    };
    SpeedRow {
        machine: found.machine.clone(),
        speed: print::trimmed(in_rpm(found.speed), 0),
        metres: metres(found.surface),
        feet: feet(found.surface),
        feed: found.feed.map(|[low, high]| span(mm_per_minute(low), mm_per_minute(high))),
        time: found.time.map(duration),
        shape,
        verdict,
        largest: largest(found),
        lit,
    }
}

/// The largest tool that a speed suits, no larger than is asked about here.
fn largest(found: &SpeedAtHand) -> String {
    if found.largest > LARGEST_TOOL {
        format!("over {}", print::fixed(in_mm(LARGEST_TOOL), 0))
    } else {
        print::fixed(in_mm(found.largest), 1)
    }
}

/// A range as printed, and what it makes at the spindle as it stands, before any rule.
pub(super) fn printed(figures: &speeds::Answer, range: &SpeedRange, key: &mut Key) -> PrintedRow {
    let speed = |surface| revolutions(spindle_speed(surface, figures.diameter));
    PrintedRow {
        printed_as: range.printed_as,
        metres: span(metres(range.low), metres(range.high)),
        feet: span(feet(range.low), feet(range.high)),
        speed: span(speed(range.low), speed(range.high)),
        sign: key.sign(range.source),
    }
}

pub(super) fn feed(feed: Feed) -> String {
    let places = if feed.source.is_some() { 3 } else { 4 };
    let size = |length| print::trimmed(in_mm(length), places);
    format!("{} mm/rev", span(size(feed.low), size(feed.high)))
}

/// How fast the tool goes in at a speed.
pub(super) fn feed_rate(feed: Feed, speed: Frequency) -> String {
    use holewright_core::calc::cutting_speed::feed_rate;
    let [low, high] = [feed.low, feed.high].map(|feed| mm_per_minute(feed_rate(feed, speed)));
    span(low, high)
}

/// `24 to 30 m/min (80 to 100 ft/min)`
pub(super) fn surface(low: Velocity, high: Velocity) -> String {
    format!("{} m/min ({} ft/min)", span(metres(low), metres(high)), span(feet(low), feet(high)))
}

/// A spindle is set to two figures at most.
pub(super) fn revolutions(speed: Frequency) -> String {
    print::trimmed(print::significant(in_rpm(speed), 2), 0)
}

pub(super) fn metres(speed: Velocity) -> String {
    print::trimmed(in_metres_per_minute(speed), 1)
}

fn feet(speed: Velocity) -> String {
    print::trimmed(feet_per_minute(speed), 0)
}

fn mm_per_minute(rate: Velocity) -> String {
    let rate = in_metres_per_minute(rate) * 1000.0;
    print::trimmed(rate, if rate < 10.0 { 1 } else { 0 })
}

/// Two times, the shorter first: `6 to 12 s`, `1.5 to 3 min`.
pub(super) fn duration(times: [Time; 2]) -> String {
    let [short, long] = times.map(in_seconds);
    let in_minutes = long >= 120.0;
    let one = |seconds: f64| {
        let value = if in_minutes { seconds / 60.0 } else { seconds };
        print::trimmed(value, if value < 10.0 { 1 } else { 0 })
    };
    format!("{} {}", span(one(short), one(long)), if in_minutes { "min" } else { "s" })
}

/// `24 to 30`, or the one figure where both are the same.
pub(super) fn span(low: String, high: String) -> String {
    if low == high { low } else { format!("{low} to {high}") }
}
