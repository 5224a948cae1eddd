//! The figures: from a metal, a tool and a machine to the speed to set.

use super::spindle::{SpeedStep, Spindle, on_a_dial};
use crate::calc::cutting_speed::{diameter_for, feed_rate, spindle_speed, surface_speed};
use crate::calc::thread_form::geometry;
use crate::tables::drills::Drill;
use crate::tables::materials::{Material, SpeedRange, feeds};
use crate::tables::source::Source;
use crate::tables::threads::Thread;
use crate::units::{Frequency, Length, Velocity};

/// What is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Work {
    /// Drilling with a high-speed steel drill.
    #[default]
    Drilling,
    /// Tapping under power with a high-speed steel tap.
    Tapping,
}

/// What turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tool {
    /// A drill of the series.
    Drill(&'static Drill),
    /// A tap for a thread held here.
    Tap(&'static Thread),
    /// A drill or a tap of this diameter.
    Size(Length),
}

impl Tool {
    /// Its diameter: a tap's is the thread's major.
    #[must_use]
    pub fn diameter(self) -> Length {
        match self {
            Self::Drill(drill) => drill.diameter,
            Self::Tap(thread) => geometry(thread).major,
            Self::Size(size) => size,
        }
    }
}

/// How far the tool goes in, each revolution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feed {
    /// Finest.
    pub low: Length,
    /// Coarsest; equal to `low` where there is one figure.
    pub high: Length,
    /// Where it was read; none for a tap, which feeds by its own pitch.
    pub source: Option<Source>,
}

/// Where a speed lies in the published range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Below it: no harm done.
    Slow,
    /// Within it.
    Within,
    /// Above it.
    Fast,
}

/// A speed the machine has, and what it means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedAtHand {
    /// The spindle speed.
    pub speed: Frequency,
    /// The surface speed it gives at the tool's diameter.
    pub surface: Velocity,
    /// How fast the tool goes in, finest and coarsest.
    pub feed: Option<[Velocity; 2]>,
    /// Where it lies in the range.
    pub verdict: Verdict,
    /// The largest diameter this speed suits in this metal: the fast end of the range is reached there.
    pub largest: Length,
}

/// Whether the machine can do it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Nothing was said of the machine.
    NotSaid,
    /// A speed lies in the range.
    Within,
    /// None lies in it, but there are slower and faster ones.
    Between,
    /// The fastest is slower than the range.
    TooSlow,
    /// The slowest is faster than the range.
    TooFast,
}

/// Everything the page says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The metal.
    pub material: &'static Material,
    /// What is done.
    pub work: Work,
    /// What turns.
    pub tool: Tool,
    /// The published range gone by: the first its material lists, which is what the plan uses.
    pub range: &'static SpeedRange,
    /// All in print for this metal, that range first.
    pub in_print: &'static [SpeedRange],
    /// The spindle speed of the slow end.
    pub low: Frequency,
    /// The spindle speed of the fast end.
    pub high: Frequency,
    /// The feed a revolution, where one is in print.
    pub feed: Option<Feed>,
    /// Every speed of the machine, slowest first; of a drive without steps, the end nearest the range.
    pub at_hand: Vec<SpeedAtHand>,
    /// The speed to set: the slowest in the range, else the next below it, else the slowest there is.
    pub set: Option<SpeedAtHand>,
    /// Whether the machine can do it.
    pub reach: Reach,
}

/// The figures; none where no speed is in print for this work in this metal.
///
/// # Source
/// n = v/(π d) and the feed rate: Machinery's Handbook 31st ed. p. 2178. The ranges are the material's.
///
/// # Examples
/// A ¼ in tap in 1020 steel, 45 to 60 ft/min: 688 to 917 rev/min, and at 920 a 20 tpi tap goes in at
/// 46 in a minute (the handbook's example).
/// ```
/// use holewright::pages::calculators::speeds::{Reach, Spindle, Tool, Work, answer};
/// use holewright::tables::{materials, threads};
/// use holewright::units::{in_metres_per_minute, in_rpm};
/// let steel = materials::find("bright-mild-steel").unwrap();
/// let tap = Tool::Tap(threads::find("bsw", "1-4").unwrap());
/// let found = answer(steel, Work::Tapping, tap, &Spindle::read("350, 920").unwrap()).unwrap();
/// assert!((in_rpm(found.low) - 687.5).abs() < 0.5 && (in_rpm(found.high) - 916.8).abs() < 0.1);
/// let set = found.set.unwrap();
/// assert_eq!((in_rpm(set.speed), found.reach), (920.0, Reach::Within));
/// assert!((in_metres_per_minute(set.feed.unwrap()[0]) - 46.0 * 0.0254).abs() < 1e-9);
/// ```
#[must_use]
pub fn answer(
    material: &'static Material,
    work: Work,
    tool: Tool,
    spindle: &Spindle,
) -> Option<Answer> {
    let in_print = match work {
        Work::Drilling => material.drilling,
        Work::Tapping => material.tapping,
    };
    let range = in_print.first()?;
    let diameter = tool.diameter();
    let band =
        Band { low: spindle_speed(range.low, diameter), high: spindle_speed(range.high, diameter) };
    let feed = feed(work, tool);
    let at_hand: Vec<SpeedAtHand> = spindle
        .steps
        .iter()
        .map(|step| {
            let speed = band.nearest(*step);
            SpeedAtHand {
                speed,
                surface: surface_speed(speed, diameter),
                feed: feed.map(|feed| [feed.low, feed.high].map(|feed| feed_rate(feed, speed))),
                verdict: band.verdict(speed),
                largest: diameter_for(range.high, speed),
            }
        })
        .collect();
    let (set, reach) = choose(&at_hand);
    Some(Answer {
        material,
        work,
        tool,
        range,
        in_print,
        low: band.low,
        high: band.high,
        feed,
        at_hand,
        set,
        reach,
    })
}

/// The general feeds for a drill; a tap's own pitch.
fn feed(work: Work, tool: Tool) -> Option<Feed> {
    match (work, tool) {
        (Work::Tapping, Tool::Tap(thread)) => {
            let pitch = geometry(thread).pitch;
            Some(Feed { low: pitch, high: pitch, source: None })
        }
        (Work::Tapping, _) => None,
        (Work::Drilling, tool) => feeds::for_drill(tool.diameter()).map(|row| Feed {
            low: row.low,
            high: row.high,
            source: Some(row.source),
        }),
    }
}

/// The spindle speeds of the published range.
struct Band {
    low: Frequency,
    high: Frequency,
}

impl Band {
    /// Speeds are compared as a dial reads them, so that the ends as printed lie in the range.
    fn verdict(&self, speed: Frequency) -> Verdict {
        if on_a_dial(speed) < on_a_dial(self.low) {
            Verdict::Slow
        } else if on_a_dial(speed) > on_a_dial(self.high) {
            Verdict::Fast
        } else {
            Verdict::Within
        }
    }

    /// A single speed is what it is; of a range, the speed nearest to the slow end.
    fn nearest(&self, step: SpeedStep) -> Frequency {
        let wanted = on_a_dial(self.low);
        match step.slowest {
            Some(slowest) if wanted < slowest => slowest,
            _ if wanted > step.fastest => step.fastest,
            _ => wanted,
        }
    }
}

/// The speed to set, of those at hand, slowest first.
fn choose(at_hand: &[SpeedAtHand]) -> (Option<SpeedAtHand>, Reach) {
    let first = |verdict| at_hand.iter().find(|found| found.verdict == verdict).copied();
    let slower = at_hand.iter().rfind(|found| found.verdict == Verdict::Slow).copied();
    match (slower, first(Verdict::Within), first(Verdict::Fast)) {
        (_, Some(within), _) => (Some(within), Reach::Within),
        (Some(slower), None, Some(_)) => (Some(slower), Reach::Between),
        (Some(slower), None, None) => (Some(slower), Reach::TooSlow),
        (None, None, Some(faster)) => (Some(faster), Reach::TooFast),
        (None, None, None) => (None, Reach::NotSaid),
    }
}
