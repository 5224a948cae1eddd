//! The figures: from a metal, a tool and a machine to the speed to set, and what follows from it.

use super::basis::{Basis, basis};
use super::question::{Question, Tool, Work};
use super::sink::{Sink, sink};
use crate::calc::cutting_speed::{
    cutting_time, diameter_for, feed_rate, spindle_speed, surface_speed,
};
use crate::calc::depth::{Deep, LastTap, Lead, Peck, how_deep, peck, point_length};
use crate::calc::drill_feed::drill_feed;
use crate::calc::machines::{Machine, Machines};
use crate::calc::reaming::{self, FEED_SOURCE, Reaming};
use crate::calc::setting::{MachineSpeed, Setting};
use crate::calc::speed_choice::{Reach, SpeedBand, Verdict};
use crate::calc::spotting::{Spot, spot};
use crate::calc::thread_form::geometry;
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
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedAtHand {
    /// The machine that has it; none where it has no name.
    pub machine: Option<String>,
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
    /// The diameter the speed is reckoned at: a countersink's midway between hole and head, a spot's at its
    /// widest.
    pub diameter: Length,
    /// The surface speeds gone by.
    pub basis: Basis,
    /// What to set: a speed, or words where no figure would help at a bench.
    pub setting: Setting,
    /// What a machine would be set to; another than [`Self::setting`] where the tool is turned by hand.
    pub by_machine: Setting,
    /// The spindle speed of the slow end.
    pub low: Frequency,
    /// The spindle speed of the fast end.
    pub high: Frequency,
    /// The feed a revolution, where one is in print.
    pub feed: Option<Feed>,
    /// How far the tool goes, where a depth was given.
    pub way: Option<Way>,
    /// Every speed of each machine, slowest first; of a drive without steps, the end nearest the range.
    pub at_hand: Vec<SpeedAtHand>,
    /// The machine's speed to set: the slowest in the range, else the next below it, else the slowest there
    /// is, which is then too fast: see [`Self::reach`]. A reamer's is at or below the slow end, if there is one.
    pub set: Option<SpeedAtHand>,
    /// Whether the machine can do it.
    pub reach: Reach,
    /// What its slowest and its fastest mean; none where nothing was said of it.
    pub ends: Option<Ends>,
    /// What belongs to this work alone.
    pub detail: Detail,
}

impl Answer {
    /// The speed to reckon times and feeds at: the one a machine is set to; none where even its slowest is
    /// too fast, or where nothing was said of it and only the cut tells how slowly it is to turn.
    #[must_use]
    pub fn turning(&self) -> Option<Frequency> {
        self.by_machine.turning().filter(|_| self.reach != Reach::TooFast)
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
/// A 20 tpi tap at 920 rev/min goes in at 46 in a minute (the handbook's example); by hand is the advice.
/// ```
/// use holewright_core::calc::{machines::Machines, setting::SetTo};
/// use holewright_core::calculators::speeds::{Question, Tool, Work, answer};
/// use holewright_core::tables::{materials, threads};
/// use holewright_core::units::{in_metres_per_minute, in_rpm};
/// let steel = materials::find("bright-mild-steel").unwrap();
/// let tap = Tool::Tap(threads::find("bsw", "1-4").unwrap());
/// let machines = Machines::read("920").unwrap();
/// let question = Question { machines, ..Question::new(steel, Work::Tapping, tap) };
/// let found = answer(question).unwrap();
/// let set = found.set.clone().unwrap();
/// assert_eq!((in_rpm(set.speed), &found.setting.to), (920.0, &SetTo::ByHand));
/// assert!((in_metres_per_minute(set.feed.unwrap()[0]) - 46.0 * 0.0254).abs() < 1e-9);
/// ```
#[must_use]
pub fn answer(question: Question) -> Option<Answer> {
    let basis = basis(question.material, question.work, question.tool_steel)?;
    let detail = detail(&question);
    let diameter = match &detail {
        Detail::Sink(Sink { head: [_, head], hole, .. }) => {
            (*head + hole.unwrap_or_default()) / 2.0
        }
        Detail::Spot(spot) => spot.most,
        _ => question.tool.diameter(),
    };
    let at = |surface| spindle_speed(surface, diameter);
    let band = SpeedBand { low: at(basis.low), high: at(basis.high) };
    let feed = feed(&question);
    let way = way(&question);
    let held = |on: MachineSpeed| (on.machine, on.speed);
    let held_at = |(machine, speed): (Option<String>, Frequency)| SpeedAtHand {
        machine,
        speed,
        surface: surface_speed(speed, diameter),
        feed: feed.map(|feed| [feed.low, feed.high].map(|feed| feed_rate(feed, speed))),
        time: time(way, feed, speed),
        verdict: band.verdict(speed),
        largest: diameter_for(basis.high, speed),
    };
    let machines = &question.machines;
    let at_hand = machines.each.iter().flat_map(|machine| speeds_of(machine, &band)).map(held_at);
    let at_hand: Vec<SpeedAtHand> = at_hand.collect();
    let by_machine = match question.work {
        Work::Countersinking => Setting::of_countersink(band, machines),
        Work::Reaming => Setting::of_reamer(band, machines),
        _ => Setting::of(band, machines),
    };
    let setting = match question.work {
        Work::Tapping => Setting::by_hand(band),
        _ => by_machine.clone(),
    };
    let set = by_machine.on_machine().cloned().map(held).map(held_at);
    let ends = ends(machines, &basis);
    Some(Answer {
        diameter,
        low: band.low,
        high: band.high,
        feed,
        way,
        at_hand,
        set,
        reach: by_machine.reach(),
        setting,
        by_machine,
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

/// The general feeds for a drill, held to its size; two to three times that for a reamer; a tap's own pitch.
fn feed(question: &Question) -> Option<Feed> {
    match (question.work, question.tool) {
        (Work::Tapping, Tool::Tap(thread)) => {
            let pitch = geometry(thread).pitch;
            Some(Feed { low: pitch, high: pitch, source: None })
        }
        (Work::Drilling, tool) => drill_feed(tool.diameter()).map(|feed| Feed {
            low: feed.low,
            high: feed.high,
            source: Some(feed.source),
        }),
        (Work::Reaming, tool) => {
            let [low, high] = reaming::feed(tool.diameter())?;
            Some(Feed { low, high, source: Some(FEED_SOURCE) })
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

/// The speeds of one machine, slowest first, each once.
fn speeds_of(machine: &Machine, band: &SpeedBand) -> Vec<(Option<String>, Frequency)> {
    let mut speeds: Vec<Frequency> =
        machine.spindle.steps.iter().map(|step| band.nearest(*step)).collect();
    speeds.sort_by(|a, b| a.value.total_cmp(&b.value));
    speeds.dedup();
    speeds.into_iter().map(|speed| (machine.name.clone(), speed)).collect()
}

fn ends(machines: &Machines, basis: &Basis) -> Option<Ends> {
    let fastest = machines.fastest()?;
    Some(Ends {
        largest: machines.slowest().map(|(_, speed)| (speed, diameter_for(basis.high, speed))),
        smallest: (fastest, diameter_for(basis.low, fastest)),
    })
}
