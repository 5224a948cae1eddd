//! The figures: from a metal, a tool and a machine to the speed to set, and what follows from it.

use super::basis::{Basis, basis};
use super::question::{Question, Tool, Work};
use super::sink::{Sink, sink};
use crate::calc::cutting_speed::{
    cutting_time, diameter_for, feed_rate, spindle_speed, surface_speed,
};
use crate::calc::depth::{Deep, LastTap, Lead, Peck, how_deep, peck, point_length};
use crate::calc::reaming::{self, Reaming};
use crate::calc::speed_choice::{Reach, SpeedBand, Verdict};
use crate::calc::spindle::Spindle;
use crate::calc::spotting::{Spot, spot};
use crate::calc::thread_form::geometry;
use crate::tables::materials::feeds;
use crate::tables::source::Source;
use crate::units::{Frequency, Length, Time, Velocity, in_mm};

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

/// A speed the machine has, and what it means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedAtHand {
    /// The spindle speed.
    pub speed: Frequency,
    /// The surface speed it gives at the diameter the speed is reckoned at.
    pub surface: Velocity,
    /// How fast the tool goes in, finest and coarsest.
    pub feed: Option<[Velocity; 2]>,
    /// How long it cuts, at the coarsest feed and at the finest.
    pub time: Option<[Time; 2]>,
    /// Where it lies in the range.
    pub verdict: Verdict,
    /// The largest diameter this speed suits in this metal: the fast end of the range is reached there.
    pub largest: Length,
}

/// What the ends of the machine's speeds mean in this metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// The slowest speed, and the largest diameter it suits; none where the slowest is not known.
    pub largest: Option<(Frequency, Length)>,
    /// The fastest speed, and the diameter below which it is slower than the range.
    pub smallest: (Frequency, Length),
}

/// How far the tool goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// As asked.
    pub depth: Length,
    /// What the time is reckoned over: a drill's point, or a tap's lead and the way out, included.
    pub way: Length,
    /// The depth over the diameter.
    pub diameters: f64,
    /// Whether that is deep for a drill; none for other tools.
    pub deep: Option<Deep>,
}

/// When to withdraw the drill and clear its flutes.
#[derive(Clone, Debug, PartialEq)]
pub struct Pecks {
    /// The rule.
    pub rule: Peck,
    /// The depths at which to withdraw, the last being the full depth; empty without a depth.
    pub stops: Vec<Length>,
}

/// What belongs to one work alone.
#[derive(Clone, Debug, PartialEq)]
pub enum Detail {
    /// Nothing more.
    None,
    /// The pecks of a drill.
    Pecks(Pecks),
    /// The hole to leave for a reamer.
    Reaming(Reaming),
    /// How deep to sink.
    Sink(Sink),
    /// How wide to spot.
    Spot(Spot),
}

/// Everything the page says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What was asked.
    pub question: Question,
    /// The diameter the speed is reckoned at: a countersink's at the head, a spot's at its widest.
    pub diameter: Length,
    /// The surface speeds gone by.
    pub basis: Basis,
    /// The spindle speed of the slow end.
    pub low: Frequency,
    /// The spindle speed of the fast end.
    pub high: Frequency,
    /// The feed a revolution, where one is in print.
    pub feed: Option<Feed>,
    /// How far the tool goes, where a depth was given.
    pub way: Option<Way>,
    /// Every speed of the machine, slowest first; of a drive without steps, the end nearest the range.
    pub at_hand: Vec<SpeedAtHand>,
    /// The speed to set: the slowest in the range, else the next below it, else the slowest there is,
    /// which is then too fast: see [`Self::reach`].
    pub set: Option<SpeedAtHand>,
    /// Whether the machine can do it.
    pub reach: Reach,
    /// What its slowest and its fastest mean; none where nothing was said of it.
    pub ends: Option<Ends>,
    /// What belongs to this work alone.
    pub detail: Detail,
}

impl Answer {
    /// The speed to reckon times and feeds at: the one to set, or the slow end of the range where
    /// nothing was said of the machine; none where even its slowest is too fast to set.
    #[must_use]
    pub fn turning(&self) -> Option<Frequency> {
        match self.reach {
            Reach::TooFast => None,
            _ => Some(self.set.map_or(self.low, |set| set.speed)),
        }
    }

    /// How long it cuts at a speed, at the coarsest feed and at the finest.
    #[must_use]
    pub fn time_at(&self, speed: Frequency) -> Option<[Time; 2]> {
        time(self.way, self.feed, speed)
    }
}

/// The lead of a tap under power, which goes through or to its depth before the last full thread.
pub const TAP_LEAD: Lead = LastTap::Second.lead();

/// The most stops a peck plan lists.
const MOST_STOPS: usize = 200;

/// The figures; none where no speed is in print for this work in this metal.
///
/// # Source
/// n = v/(π d) and the feed rate: Machinery's Handbook 31st ed. p. 2178. The ranges are the material's.
///
/// # Examples
/// A ¼ in tap in 1020 steel, 45 to 60 ft/min: 688 to 917 rev/min, and at 920 a 20 tpi tap goes in at
/// 46 in a minute (the handbook's example).
/// ```
/// use holewright_core::calc::{speed_choice::Reach, spindle::Spindle};
/// use holewright_core::calculators::speeds::{Question, Tool, Work, answer};
/// use holewright_core::tables::{materials, threads};
/// use holewright_core::units::{in_metres_per_minute, in_rpm};
/// let steel = materials::find("bright-mild-steel").unwrap();
/// let tap = Tool::Tap(threads::find("bsw", "1-4").unwrap());
/// let spindle = Spindle::read("350, 920").unwrap();
/// let question = Question { spindle, ..Question::new(steel, Work::Tapping, tap) };
/// let found = answer(question).unwrap();
/// assert!((in_rpm(found.low) - 687.5).abs() < 0.5 && (in_rpm(found.high) - 916.8).abs() < 0.1);
/// let set = found.set.unwrap();
/// assert_eq!((in_rpm(set.speed), found.reach), (920.0, Reach::Within));
/// assert!((in_metres_per_minute(set.feed.unwrap()[0]) - 46.0 * 0.0254).abs() < 1e-9);
/// ```
#[must_use]
pub fn answer(question: Question) -> Option<Answer> {
    let basis = basis(question.material, question.work, question.tool_steel)?;
    let detail = detail(&question);
    let diameter = match &detail {
        Detail::Sink(Sink { head: [_, head], .. }) => *head,
        Detail::Spot(spot) => spot.most,
        _ => question.tool.diameter(),
    };
    let at = |surface| spindle_speed(surface, diameter);
    let band = SpeedBand { low: at(basis.low), high: at(basis.high) };
    let feed = feed(&question);
    let way = way(&question);
    let held = |speed| SpeedAtHand {
        speed,
        surface: surface_speed(speed, diameter),
        feed: feed.map(|feed| [feed.low, feed.high].map(|feed| feed_rate(feed, speed))),
        time: time(way, feed, speed),
        verdict: band.verdict(speed),
        largest: diameter_for(basis.high, speed),
    };
    let mut at_hand: Vec<SpeedAtHand> =
        question.spindle.steps.iter().map(|step| held(band.nearest(*step))).collect();
    at_hand.sort_by(|a, b| a.speed.value.total_cmp(&b.speed.value));
    at_hand.dedup_by(|a, b| a.speed == b.speed);
    let choice = band.choose(&question.spindle);
    let ends = ends(&question.spindle, &basis);
    Some(Answer {
        diameter,
        low: band.low,
        high: band.high,
        feed,
        way,
        at_hand,
        set: choice.set.map(held),
        reach: choice.reach,
        ends,
        detail,
        basis,
        question,
    })
}

fn detail(question: &Question) -> Detail {
    let diameter = question.tool.diameter();
    match question.work {
        Work::Drilling => {
            let rule = peck(diameter, question.material.group);
            let stops = question
                .depth
                .map_or_else(Vec::new, |depth| rule.stops(depth).take(MOST_STOPS).collect());
            Detail::Pecks(Pecks { rule, stops })
        }
        Work::Reaming => Detail::Reaming(reaming::reaming(diameter, &question.at_hand)),
        Work::Tapping => Detail::None,
        Work::Countersinking => Detail::Sink(sink(question)),
        Work::Spotting => Detail::Spot(spot(diameter, question.point_angle)),
    }
}

/// The general feeds for a drill; so much a flute for a reamer; a tap's own pitch.
fn feed(question: &Question) -> Option<Feed> {
    match (question.work, question.tool) {
        (Work::Tapping, Tool::Tap(thread)) => {
            let pitch = geometry(thread).pitch;
            Some(Feed { low: pitch, high: pitch, source: None })
        }
        (Work::Drilling, tool) => feeds::for_drill(tool.diameter()).map(|row| Feed {
            low: row.low,
            high: row.high,
            source: Some(row.source),
        }),
        (Work::Reaming, _) => {
            let (low, high, source) = reaming::feed(question.flutes);
            Some(Feed { low, high, source: Some(source) })
        }
        (Work::Tapping | Work::Countersinking | Work::Spotting, _) => None,
    }
}

/// How far the tool goes for the depth asked for.
fn way(question: &Question) -> Option<Way> {
    let depth = question.depth?;
    let diameter = question.tool.diameter();
    let diameters = in_mm(depth) / in_mm(diameter);
    let (way, deep) = match (question.work, question.tool) {
        (Work::Drilling, _) => {
            (depth + point_length(diameter, question.point_angle), how_deep(diameters))
        }
        (Work::Reaming, _) => (depth, None),
        (Work::Tapping, Tool::Tap(thread)) => {
            let lead = geometry(thread).pitch * TAP_LEAD.most;
            ((depth + lead) * 2.0, None)
        }
        (Work::Tapping | Work::Countersinking | Work::Spotting, _) => return None,
    };
    Some(Way { depth, way, diameters, deep })
}

fn time(way: Option<Way>, feed: Option<Feed>, speed: Frequency) -> Option<[Time; 2]> {
    let (way, feed) = way.zip(feed)?;
    Some([feed.high, feed.low].map(|feed| cutting_time(way.way, feed, speed)))
}

fn ends(spindle: &Spindle, basis: &Basis) -> Option<Ends> {
    let fastest = spindle.fastest()?;
    Some(Ends {
        largest: spindle.slowest().map(|speed| (speed, diameter_for(basis.high, speed))),
        smallest: (fastest, diameter_for(basis.low, fastest)),
    })
}
