//! What belongs to one work alone, as the page prints it: pecks, the hole to leave for a reamer, the
//! countersink, the spot.

use super::rows::{revolutions, span};
use crate::key::{Key, PRACTICE, Sign, Signed};
use crate::link::Link;
use holewright_core::calc::countersink::RULES;
use holewright_core::calc::cutting_speed::spindle_speed;
use holewright_core::calc::depth::Deep;
use holewright_core::calc::oversize::likely;
use holewright_core::calc::reaming::{Leave, PrintedAllowance, Reaming};
use holewright_core::calc::spotting::Spot;
use holewright_core::calculators::speeds::Sink;
use holewright_core::calculators::speeds::{self, Pecks, Work};
use holewright_core::tables::countersinks;
use holewright_core::tables::drills::Drill;
use holewright_core::tables::reaming_pairs::{Fractions, HALF, RULE, fractions};
use holewright_core::units::{Length, in_degrees, in_inch, in_mm, mm, print};

/// The peck plan of a drill.
pub(super) struct PeckPlan {
    pub(super) first: String,
    pub(super) then: String,
    /// Whether the depth is short enough for one go.
    pub(super) in_one_go: bool,
    /// The depths to withdraw at, where a depth was given.
    pub(super) stops: Option<String>,
    /// A hole deep for its diameter: what to do.
    pub(super) deep: Option<String>,
    pub(super) sign: Sign,
}

/// One way of turning the reamer.
pub(super) struct LeaveRow {
    pub(super) how: &'static str,
    pub(super) left: String,
    pub(super) left_inch: String,
    pub(super) hole: String,
    pub(super) hole_inch: String,
    pub(super) take: Option<Link>,
    /// What the drill to take leaves, and is likely to leave.
    pub(super) leaves: String,
    pub(super) others: Vec<Link>,
}

/// A source's allowance.
pub(super) struct AllowanceRow {
    pub(super) printed_as: &'static str,
    pub(super) left: String,
    pub(super) left_inch: String,
    pub(super) hole: String,
    pub(super) counted: bool,
    pub(super) sign: Sign,
}

/// The hole to leave for a reamer.
pub(super) struct ReamingShown {
    pub(super) rows: Vec<LeaveRow>,
    pub(super) printed: Vec<AllowanceRow>,
    pub(super) uncounted: bool,
    /// Why this drill, and how large it cuts.
    pub(super) choice: Sign,
    pub(super) oversize: Sign,
    /// How far the sources differ: `4`.
    pub(super) spread: Option<String>,
}

/// The countersink.
pub(super) struct SinkShown {
    pub(super) angle: String,
    pub(super) angle_sign: Option<Sign>,
    pub(super) depth: String,
    pub(super) depth_inch: String,
    pub(super) head: String,
    pub(super) head_sign: Option<Sign>,
    pub(super) hole: Option<String>,
    pub(super) hole_basis: Option<String>,
    /// Of the slowest that cuts clean.
    pub(super) slowest: Sign,
    pub(super) rules: Vec<RuleRow>,
    /// Every angle countersinks are made to: `60° (centre holes)`.
    pub(super) made: Vec<Signed>,
}

/// A rule in print for the speed of a countersink or a reamer.
pub(super) struct RuleRow {
    pub(super) words: String,
    pub(super) speed: String,
    pub(super) sign: Sign,
}

/// A tap turned by a machine, where it must be.
pub(super) struct TappingShown {
    /// What a machine would be set to: `about 130 rev/min`.
    pub(super) machine: String,
    pub(super) aside: Option<String>,
    /// Of how it is turned.
    pub(super) sign: Sign,
}

/// The spot.
pub(super) struct SpotShown {
    pub(super) least: String,
    pub(super) most: String,
    pub(super) angle: String,
    pub(super) sign: Sign,
}

/// The most stops the page lists one by one.
const MOST_LISTED: usize = 16;

pub(super) fn pecks(figures: &speeds::Answer, pecks: &Pecks, key: &mut Key) -> PeckPlan {
    let size = |length| print::mm(length, 2);
    let listed: Vec<String> =
        pecks.stops.iter().take(MOST_LISTED).map(|stop| print::trimmed(in_mm(*stop), 2)).collect();
    let last = pecks.stops.last().copied().map(size);
    let stops = last.map(|last| {
        if pecks.stops.len() > MOST_LISTED {
            format!(
                "{} mm and so on to {last}, {} times in all",
                listed.join(", "),
                pecks.stops.len()
            )
        } else {
            format!("{} mm", listed.join(", "))
        }
    });
    let way = figures.way;
    let diameters = way.map_or_else(String::new, |way| print::fixed(way.diameters, 1));
    let deep = way.and_then(|way| way.deep).map(|deep| match deep {
        Deep::Deep => format!(
            "The hole is {diameters} diameters deep: withdraw often, lubricate each time, and keep the lips sharp and even."
        ),
        Deep::VeryDeep => format!(
            "Strong caution: the hole is {diameters} diameters deep. It will wander and pack: keep to the pecks below, and think of drilling from both ends or of a larger hole."
        ),
    });
    PeckPlan {
        first: size(pecks.rule.first),
        then: size(pecks.rule.then),
        in_one_go: pecks.stops.len() == 1,
        stops,
        deep,
        sign: key.sign(pecks.rule.source),
    }
}

pub(super) fn reaming(figures: &speeds::Answer, found: &Reaming, key: &mut Key) -> ReamingShown {
    let reamer = figures.question.tool.diameter();
    let ways = [("By hand", &found.by_hand), ("In a machine", &found.by_machine)];
    ReamingShown {
        rows: ways
            .into_iter()
            .filter_map(|(how, leave)| Some(leave_row(how, reamer, leave.as_ref()?)))
            .collect(),
        printed: found.printed.iter().map(|row| allowance(reamer, row, key)).collect(),
        choice: key.sign(PRACTICE),
        oversize: key.sign(likely(reamer).source),
        uncounted: found.printed.iter().any(|row| !row.counted),
        spread: found.spread.map(|spread| print::trimmed(spread, 1)).filter(|spread| spread != "1"),
    }
}

fn leave_row(how: &'static str, reamer: Length, leave: &Leave) -> LeaveRow {
    let others = leave.drills.iter().filter(|drill| Some(**drill) != leave.take);
    LeaveRow {
        how,
        left: two(leave.least, leave.most),
        left_inch: two_inches(leave.least, leave.most),
        hole: two(leave.smallest_hole(reamer), leave.largest_hole(reamer)),
        hole_inch: two_inches(leave.smallest_hole(reamer), leave.largest_hole(reamer)),
        take: leave.take.map(Link::drill),
        leaves: leave.take.map_or_else(String::new, |drill| leaves(reamer, drill)),
        others: others.map(|drill| Link::drill(drill)).collect(),
    }
}

/// What a drill leaves for the reamer: by its own size, and if it cuts as large as drills do.
fn leaves(reamer: Length, drill: &Drill) -> String {
    let left = print::mm(reamer - drill.diameter, 3);
    let likely = reamer - likely(drill.diameter).mean;
    if likely > mm(0.0) {
        format!("leaves {left}, about {} if it cuts large", print::mm(likely, 2))
    } else {
        format!("leaves {left}, nothing if it cuts large: try it in scrap")
    }
}

fn allowance(reamer: Length, printed: &PrintedAllowance, key: &mut Key) -> AllowanceRow {
    let row = printed.row;
    AllowanceRow {
        printed_as: row.printed_as,
        left: two(row.least, row.most),
        left_inch: two_inches(row.least, row.most),
        hole: two(reamer - row.most, reamer - row.least),
        counted: printed.counted,
        sign: key.sign(row.source),
    }
}

pub(super) fn sink(figures: &speeds::Answer, sink: &Sink, key: &mut Key) -> SinkShown {
    let [least, most] = sink.depth;
    let [small, large] = sink.head;
    let drilling = figures.basis.range;
    let factor = figures.question.tool_steel.speed_factor();
    let angle_sign = sink.angle_source.map(|source| key.sign(source));
    let head_sign = sink.head_source.map(|source| key.sign(source));
    let made = made(key);
    let slowest = key.sign(PRACTICE);
    let rules = RULES.iter().map(|rule| {
        let diameter = rule.diameter(large, sink.hole.unwrap_or_default());
        let [slow, fast] = rule
            .surface([drilling.low, drilling.high])
            .map(|surface| revolutions(spindle_speed(surface * factor, diameter)));
        RuleRow {
            words: rule.words.to_owned(),
            speed: span(slow, fast),
            sign: key.sign(rule.source),
        }
    });
    let rules = rules.collect();
    SinkShown {
        angle: format!("{}°", print::trimmed(in_degrees(sink.angle), 1)),
        angle_sign,
        depth: format!(
            "{} mm",
            span(print::trimmed(in_mm(least), 2), print::trimmed(in_mm(most), 2))
        ),
        depth_inch: format!(
            "{} in",
            span(print::fixed(in_inch(least), 3), print::fixed(in_inch(most), 3))
        ),
        head: format!("{} mm", two(small, large)),
        head_sign,
        hole: sink.hole.map(|hole| print::mm(hole, 3)),
        hole_basis: sink.hole_basis.clone(),
        slowest,
        rules,
        made,
    }
}

/// What a machine would do to the tap.
pub(super) fn tapping(figures: &speeds::Answer, key: &mut Key) -> TappingShown {
    let set = &figures.by_machine;
    TappingShown {
        machine: set.words(),
        aside: set.aside(figures.question.material.kind()),
        sign: key.sign(PRACTICE),
    }
}

/// What other print says of a reamer's speed; none for other work.
pub(super) fn other_reaming(figures: &speeds::Answer, key: &mut Key) -> Vec<RuleRow> {
    if figures.question.work != Work::Reaming {
        return Vec::new();
    }
    let own = fractions(figures.question.material);
    let drilling = figures.basis.range;
    let factor = figures.question.tool_steel.speed_factor();
    let speed = |surface| revolutions(spindle_speed(surface * factor, figures.diameter));
    [own, RULE, HALF]
        .into_iter()
        .enumerate()
        .filter(|(place, rule)| *place == 0 || *rule != own)
        .map(|(_, rule)| RuleRow {
            words: format!("{} of the drilling speed: {}", parts(&rule), rule.printed_as),
            speed: span(speed(drilling.low * rule.least), speed(drilling.high * rule.most)),
            sign: key.sign(rule.source),
        })
        .collect()
}

/// `0.65 to 0.67`
fn parts(rule: &Fractions) -> String {
    span(print::trimmed(rule.least, 2), print::trimmed(rule.most, 2))
}

/// Every angle countersinks are made to, and what for.
fn made(key: &mut Key) -> Vec<Signed> {
    countersinks::all()
        .iter()
        .map(|made| Signed {
            text: format!("{}° ({})", made.angle_degrees, made.used_for),
            sign: key.sign(made.source),
        })
        .collect()
}

pub(super) fn spot(spot: &Spot, key: &mut Key) -> SpotShown {
    SpotShown {
        least: print::mm(spot.least, 2),
        most: print::mm(spot.most, 2),
        angle: format!("{}°", print::trimmed(in_degrees(spot.least_angle), 1)),
        sign: key.sign(spot.source),
    }
}

/// Two sizes in millimetres for a column that names the unit.
fn two(low: Length, high: Length) -> String {
    span(print::trimmed(in_mm(low), 3), print::trimmed(in_mm(high), 3))
}

fn two_inches(low: Length, high: Length) -> String {
    span(print::fixed(in_inch(low), 4), print::fixed(in_inch(high), 4))
}
