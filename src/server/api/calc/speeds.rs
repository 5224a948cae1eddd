//! The spindle speed for a drill or a tap.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::ThreadName;
use crate::pages::calculators::speeds;
use crate::server::Error;
use crate::server::api::drills::Drill;
use crate::server::api::problem::{Always, NotUnderstood};
use crate::server::api::{figures, reply};
use crate::tables::materials::SpeedRange;
use crate::units::{Velocity, in_metres_per_minute, print};

/// How fast to turn a drill or a tap.
#[derive(Debug, Serialize, ToSchema)]
struct Speeds {
    /// The slug of the material.
    #[schema(example = "gunmetal")]
    material: &'static str,
    /// What is done: drilling or tapping.
    #[schema(pattern = "^(drilling|tapping)$", example = "drilling")]
    work: &'static str,
    /// Diameter of the tool, in millimetres; a tap's is its major diameter.
    #[schema(example = 2.0574)]
    diameter_mm: f64,
    /// The drill; null where none was named.
    #[schema(required)]
    drill: Option<Drill>,
    /// The thread of the tap; null where none was named.
    #[schema(required)]
    thread: Option<ThreadName>,
    /// Spindle speed at the slow end of the range, in revolutions a minute.
    speed_low_rpm: f64,
    /// Spindle speed at the fast end of the range, in revolutions a minute.
    speed_high_rpm: f64,
    /// What is in print for this metal; the first is the range gone by.
    in_print: Vec<Printed>,
    /// The feed; null where none is in print, or the pitch of the tap is not known.
    #[schema(required)]
    feed: Option<Feed>,
    /// Whether the machine can do it: not-said, within, between, too-slow, too-fast.
    #[schema(pattern = "^(not-said|within|between|too-slow|too-fast)$", example = "within")]
    reach: &'static str,
    /// The speed to set; null where nothing was said of the machine.
    #[schema(required)]
    set: Option<AtHand>,
    /// Every speed of the machine, slowest first.
    at_hand: Vec<AtHand>,
}

/// A range in print.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PrintedSurfaceSpeed)]
struct Printed {
    /// The metal in the source's own words.
    printed_as: &'static str,
    /// The slowest, in metres a minute.
    surface_low_m_per_min: f64,
    /// The fastest, in metres a minute.
    surface_high_m_per_min: f64,
    /// Where it was read.
    source: String,
}

/// How far the tool goes in, each revolution.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ToolFeed)]
struct Feed {
    /// The finest, in millimetres a revolution.
    low_mm_per_rev: f64,
    /// The coarsest, in millimetres a revolution.
    high_mm_per_rev: f64,
    /// Where it was read; null for a tap, since its feed is its pitch.
    #[schema(required)]
    source: Option<String>,
}

/// A speed of the machine.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SpeedAtHand)]
struct AtHand {
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
    /// Where it lies in the range: slow does no harm, within, fast.
    #[schema(pattern = "^(slow|within|fast)$", example = "within")]
    verdict: &'static str,
    /// The largest diameter this speed suits in this metal, in millimetres.
    suits_up_to_mm: f64,
}

/// How fast to turn a drill, or a tap under power.
///
/// # Errors
/// A field that makes no sense: 422.
#[rustfmt::skip]
#[utoipa::path(
    get,
    path = "/api/v1/calc/speeds",
    operation_id = "spindle_speed",
    tag = "calculators",
    params(
        ("material" = String, Query, description = "The metal, by any name or mark", example = "gunmetal"),
        ("work" = Option<String>, Query, description = "`drilling` or `tapping`", example = "drilling"),
        ("diameter" = String, Query, description = "A drill by any name or size; a tap by its thread or its diameter", example = "No. 46"),
        ("spindle_speeds" = Option<String>, Query, description = "Speeds the machine has, in revolutions a minute; `200-2000` for any between", example = "350, 500, 1000"),
        ("spindle_max" = Option<String>, Query, description = "Fastest spindle speed, in revolutions a minute", example = "2000"),
    ),
    responses((status = 200, description = "The speeds", body = Speeds), NotUnderstood, Always)
)]
pub async fn show(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let request = speeds::Request::read(query.as_deref().unwrap_or_default());
    let found = request.answer().map_err(Error::Invalid)?;
    reply::json(&headers, &Speeds::from(&found))
}

impl From<&speeds::Answer> for Speeds {
    fn from(found: &speeds::Answer) -> Self {
        let (drill, thread) = match found.tool {
            speeds::Tool::Drill(drill) => (Some(Drill::from(drill)), None),
            speeds::Tool::Tap(thread) => (None, Some(ThreadName::from(thread))),
            speeds::Tool::Size(_) => (None, None),
        };
        Self {
            material: found.material.slug,
            work: match found.work {
                speeds::Work::Drilling => "drilling",
                speeds::Work::Tapping => "tapping",
            },
            diameter_mm: figures::mm(found.tool.diameter()),
            drill,
            thread,
            speed_low_rpm: figures::rpm(found.low),
            speed_high_rpm: figures::rpm(found.high),
            in_print: found.in_print.iter().map(Printed::from).collect(),
            feed: found.feed.map(Feed::from),
            reach: match found.reach {
                speeds::Reach::NotSaid => "not-said",
                speeds::Reach::Within => "within",
                speeds::Reach::Between => "between",
                speeds::Reach::TooSlow => "too-slow",
                speeds::Reach::TooFast => "too-fast",
            },
            set: found.set.as_ref().map(AtHand::from),
            at_hand: found.at_hand.iter().map(AtHand::from).collect(),
        }
    }
}

impl From<&SpeedRange> for Printed {
    fn from(range: &SpeedRange) -> Self {
        Self {
            printed_as: range.printed_as,
            surface_low_m_per_min: figures::metres_per_minute(range.low),
            surface_high_m_per_min: figures::metres_per_minute(range.high),
            source: figures::source(range.source),
        }
    }
}

impl From<speeds::Feed> for Feed {
    fn from(feed: speeds::Feed) -> Self {
        Self {
            low_mm_per_rev: figures::mm(feed.low),
            high_mm_per_rev: figures::mm(feed.high),
            source: feed.source.map(figures::source),
        }
    }
}

impl From<&speeds::SpeedAtHand> for AtHand {
    fn from(found: &speeds::SpeedAtHand) -> Self {
        let feed = found.feed.map(|feed| feed.map(mm_per_minute));
        Self {
            speed_rpm: figures::rpm(found.speed),
            surface_m_per_min: figures::metres_per_minute(found.surface),
            feed_low_mm_per_min: feed.map(|[low, _]| low),
            feed_high_mm_per_min: feed.map(|[_, high]| high),
            verdict: match found.verdict {
                speeds::Verdict::Slow => "slow",
                speeds::Verdict::Within => "within",
                speeds::Verdict::Fast => "fast",
            },
            suits_up_to_mm: figures::mm(found.largest),
        }
    }
}

/// Millimetres a minute, to a tenth.
fn mm_per_minute(rate: Velocity) -> f64 {
    print::round(in_metres_per_minute(rate) * 1000.0, 1)
}
