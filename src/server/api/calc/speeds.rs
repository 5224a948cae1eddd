//! The spindle speed for a drill, a reamer, a tap, a countersink or a spot.

mod details;
mod machine;

use serde::Serialize;
use utoipa::ToSchema;

use details::{Pecks, Reaming, Sink, Spot};
use machine::{AtHand, Ends, Way};

use super::{Described, ThreadName};
use crate::Error;
use crate::api::drills::Drill;
use crate::api::figures;
use crate::api::setting::{Setting, reach};
use holewright_core::asking::Asked;
use holewright_core::calculators::speeds::{self, Detail, Tool};
use holewright_core::tables::materials::SpeedRange;

/// How fast to turn a tool, and what follows from it.
#[derive(Debug, Serialize, ToSchema)]
struct Speeds<'a> {
    /// The slug of the material.
    #[schema(example = "gunmetal")]
    material: &'static str,
    /// What is done.
    #[schema(
        pattern = "^(drilling|reaming|tapping|countersinking|spotting)$",
        example = "drilling"
    )]
    work: &'static str,
    /// What the tool is made of: high-speed steel or carbon steel.
    #[schema(pattern = "^(hss|carbon)$", example = "hss")]
    tool_steel: &'static str,
    /// Diameter of the tool, in millimetres; a tap's and a screw's is its major diameter; of a spot, the drill that follows.
    #[schema(example = 2.0574)]
    diameter_mm: f64,
    /// Diameter the speed is worked out at, in millimetres: a countersink's midway between hole and head, a spot's at its widest.
    #[schema(example = 2.0574)]
    speed_diameter_mm: f64,
    /// The drill; null where none was named.
    #[schema(required)]
    drill: Option<Drill>,
    /// The thread of the tap or of the countersunk screw; null where none was named.
    #[schema(required)]
    thread: Option<ThreadName>,
    /// Surface speed at the slow end of the range, in metres a minute, after the adjustments.
    surface_low_m_per_min: f64,
    /// Surface speed at the fast end of the range, in metres a minute, after the adjustments.
    surface_high_m_per_min: f64,
    /// Spindle speed at the slow end of the range, in revolutions a minute.
    speed_low_rpm: f64,
    /// Spindle speed at the fast end of the range, in revolutions a minute.
    speed_high_rpm: f64,
    /// What is in print for this work in this material; where the first is used, it stands there before the adjustments.
    published: Vec<Printed>,
    /// How that range was adjusted for this work or tool steel, in order; empty where it is used as printed.
    adjustments: Vec<Rule>,
    /// The feed; null where none is in print, or the pitch of the tap is not known.
    #[schema(required)]
    feed: Option<Feed>,
    /// What to set, first of all.
    setting: Setting<'a>,
    /// What a machine would be set to: another than setting where the tool is turned by hand.
    by_machine: Setting<'a>,
    /// Whether the machine can do it: not-said, within, between, too-slow, too-fast.
    #[schema(pattern = "^(not-said|within|between|too-slow|too-fast)$", example = "within")]
    machine_fit: &'static str,
    /// The machine's speed to set; where machine_fit is too-fast, the slowest there is, which is none to set. Null where nothing was said of the machine.
    #[schema(required)]
    speed_to_set: Option<AtHand<'a>>,
    /// Every speed of each machine, slowest first.
    machine_speeds: Vec<AtHand<'a>>,
    /// What the machine's slowest and fastest speeds mean; null where nothing was said of it.
    #[schema(required)]
    machine_range: Option<Ends>,
    /// How far the tool goes; null without a depth, or where the work has none.
    #[schema(required)]
    travel: Option<Way>,
    /// When to withdraw a drill; null for other work.
    #[schema(required)]
    pecks: Option<Pecks>,
    /// The hole to leave for a reamer; null for other work.
    #[schema(required)]
    reaming: Option<Reaming>,
    /// How deep to sink a countersink; null for other work.
    #[schema(required)]
    countersink: Option<Sink>,
    /// How wide to spot; null for other work.
    #[schema(required)]
    spot: Option<Spot>,
}

/// How a published range was adjusted.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = SpeedRule)]
struct Rule {
    /// In words.
    words: String,
    /// Where it comes from.
    source: String,
}

/// A published range.
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

/// The answer as it is described.
pub(super) fn described() -> Described {
    Described::of::<Speeds>(
        "spindle_speed",
        "How fast to turn a drill, a reamer, a tap, a countersink or a spotting drill.",
        "The speeds",
    )
}

/// The answer.
///
/// # Errors
/// A field that makes no sense.
pub(super) fn answer(asked: &Asked) -> Result<impl Serialize, Error> {
    speeds::answer_to(asked).map(Answered).map_err(Error::Invalid)
}

/// The answer, written as [`Speeds`].
struct Answered(speeds::Answer);

impl Serialize for Answered {
    fn serialize<S: serde::Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        Speeds::from(&self.0).serialize(out)
    }
}

impl<'a> From<&'a speeds::Answer> for Speeds<'a> {
    fn from(found: &'a speeds::Answer) -> Self {
        let asked = &found.question;
        let (drill, thread) = match asked.tool {
            Tool::Drill(drill) => (Some(Drill::from(drill)), None),
            Tool::Tap(thread) | Tool::Screw(thread) => (None, Some(ThreadName::from(thread))),
            Tool::Size(_) => (None, None),
        };
        let (mut pecks, mut reaming, mut countersink, mut spot) = (None, None, None, None);
        match &found.detail {
            Detail::None => {}
            Detail::Pecks(held) => pecks = Some(Pecks::from(held)),
            Detail::Reaming(held) => reaming = Some(Reaming::of(held, asked.tool.diameter())),
            Detail::Sink(held) => countersink = Some(Sink::from(held)),
            Detail::Spot(held) => spot = Some(Spot::from(held)),
        }
        Self {
            material: asked.material.slug,
            work: asked.work.slug(),
            tool_steel: asked.tool_steel.slug(),
            diameter_mm: figures::mm(asked.tool.diameter()),
            speed_diameter_mm: figures::mm(found.diameter),
            drill,
            thread,
            surface_low_m_per_min: figures::metres_per_minute(found.basis.low),
            surface_high_m_per_min: figures::metres_per_minute(found.basis.high),
            speed_low_rpm: figures::rpm(found.low),
            speed_high_rpm: figures::rpm(found.high),
            published: found.basis.in_print.iter().map(|range| Printed::from(*range)).collect(),
            adjustments: found.basis.rules.iter().map(Rule::from).collect(),
            feed: found.feed.map(Feed::from),
            setting: Setting::from(&found.setting),
            by_machine: Setting::from(&found.by_machine),
            machine_fit: reach(found.reach),
            speed_to_set: found.set.as_ref().map(AtHand::from),
            machine_speeds: found.at_hand.iter().map(AtHand::from).collect(),
            machine_range: found.ends.map(Ends::from),
            travel: found.way.map(|way| Way::of(way, found)),
            pecks,
            reaming,
            countersink,
            spot,
        }
    }
}

impl From<&speeds::Rule> for Rule {
    fn from(rule: &speeds::Rule) -> Self {
        Self { words: rule.words.to_string(), source: figures::source(rule.source) }
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
