//! What the speeds of a machine mean for a tool: each of them, the slowest and the fastest, and how
//! long the tool takes for its way.

use serde::Serialize;
use utoipa::ToSchema;

use crate::api::figures;
use holewright_core::calc::speed_choice::Verdict;
use holewright_core::calculators::speeds;
use holewright_core::units::{Time, Velocity, in_metres_per_minute, in_seconds, print};

/// A speed of the machine.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SpeedAtHand)]
pub(super) struct AtHand<'a> {
    /// The machine that has it; null where it has no name.
    #[schema(required)]
    machine: Option<&'a str>,
    /// Spindle speed, in revolutions a minute.
    speed_rpm: f64,
    /// Speed of the edge, in metres a minute.
    surface_m_per_min: f64,
    /// How fast the tool goes in at the finest feed, in millimetres a minute; null without a feed.
    #[schema(required)]
    feed_low_mm_per_min: Option<f64>,
    /// The same at the coarsest feed, in millimetres a minute; null without a feed.
    #[schema(required)]
    feed_high_mm_per_min: Option<f64>,
    /// Cutting time for the depth at the coarsest feed, in seconds; null without a depth or a feed.
    #[schema(required)]
    time_low_s: Option<f64>,
    /// The same at the finest feed, in seconds; null without a depth or a feed.
    #[schema(required)]
    time_high_s: Option<f64>,
    /// Where it lies in the range: slow does no harm, within, fast.
    #[schema(pattern = "^(slow|within|fast)$", example = "within")]
    verdict: &'static str,
    /// The largest diameter this speed suits in this metal, in millimetres.
    suits_up_to_mm: f64,
}

/// What the slowest and fastest speeds of the machine mean in this material.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SpindleEnds)]
pub(super) struct Ends {
    /// The slowest speed, in revolutions a minute; null where only the fastest was said.
    #[schema(required)]
    slowest_rpm: Option<f64>,
    /// The largest diameter the slowest speed suits, in millimetres; null where it is not known.
    #[schema(required)]
    largest_diameter_mm: Option<f64>,
    /// The fastest speed, in revolutions a minute.
    fastest_rpm: f64,
    /// Below this diameter even the fastest is slower than the range, in millimetres.
    smallest_diameter_mm: f64,
}

/// How far the tool goes, and how long it cuts.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ToolWay)]
pub(super) struct Way {
    /// The depth asked for, in millimetres.
    depth_mm: f64,
    /// How far the tool travels in all, in millimetres: with a drill's point, or a tap's lead and its way out.
    travel_mm: f64,
    /// The depth over the diameter.
    depth_in_diameters: f64,
    /// Cutting time at the coarsest feed, in seconds, at the speed to set or the slow end; null without a feed, or where machine_fit is too-fast.
    #[schema(required)]
    time_low_s: Option<f64>,
    /// The same at the finest feed, in seconds; null where time_low_s is.
    #[schema(required)]
    time_high_s: Option<f64>,
}

impl<'a> From<&'a speeds::SpeedAtHand> for AtHand<'a> {
    fn from(found: &'a speeds::SpeedAtHand) -> Self {
        let feed = found.feed.map(|feed| feed.map(mm_per_minute));
        let time = found.time.map(|time| time.map(seconds));
        Self {
            machine: found.machine.as_deref(),
            speed_rpm: figures::rpm(found.speed),
            surface_m_per_min: figures::metres_per_minute(found.surface),
            feed_low_mm_per_min: feed.map(|[low, _]| low),
            feed_high_mm_per_min: feed.map(|[_, high]| high),
            time_low_s: time.map(|[short, _]| short),
            time_high_s: time.map(|[_, long]| long),
            verdict: match found.verdict {
                Verdict::Slow => "slow",
                Verdict::Within => "within",
                Verdict::Fast => "fast",
            },
            suits_up_to_mm: figures::mm(found.largest),
        }
    }
}

impl From<speeds::Ends> for Ends {
    fn from(ends: speeds::Ends) -> Self {
        let (fastest, smallest) = ends.smallest;
        Self {
            slowest_rpm: ends.largest.map(|(slowest, _)| figures::rpm(slowest)),
            largest_diameter_mm: ends.largest.map(|(_, largest)| figures::mm(largest)),
            fastest_rpm: figures::rpm(fastest),
            smallest_diameter_mm: figures::mm(smallest),
        }
    }
}

impl Way {
    /// The way asked for, at the speed the answer reckons with.
    pub(super) fn of(way: speeds::Way, found: &speeds::Answer) -> Self {
        let time = found.turning().and_then(|speed| found.time_at(speed));
        let time = time.map(|time| time.map(seconds));
        Self {
            depth_mm: figures::mm(way.depth),
            travel_mm: figures::mm(way.way),
            depth_in_diameters: figures::number(way.diameters),
            time_low_s: time.map(|[short, _]| short),
            time_high_s: time.map(|[_, long]| long),
        }
    }
}

/// Millimetres a minute, to a tenth.
fn mm_per_minute(rate: Velocity) -> f64 {
    print::round(in_metres_per_minute(rate) * 1000.0, 1)
}

/// Seconds, to a tenth.
fn seconds(time: Time) -> f64 {
    print::round(in_seconds(time), 1)
}
