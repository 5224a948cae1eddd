//! The drilling steps: tool, speed, feed and lubricant for one metal or for two together.

use std::borrow::Cow;

use super::{Action, HoleSpec, Operation, Part, TapSteel, UpperHole};
use crate::calc::cutting_speed;
use crate::calc::drill_feed::{DrillFeed, drill_feed};
use crate::calc::setting::Setting;
use crate::calc::speed_choice::SpeedBand;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::drills::Drill;
use crate::tables::materials::{Group, Material, Rubbing, SpeedRange};
use crate::units::{Frequency, Length, Velocity};

/// The metals one drill goes through: the slower sets the speed, either may grab.
#[derive(Clone, Copy)]
pub(super) struct Metals {
    first: &'static Material,
    second: Option<&'static Material>,
}

impl Metals {
    pub(super) const fn one(material: &'static Material) -> Self {
        Self { first: material, second: None }
    }

    pub(super) const fn both(upper: &'static Material, lower: &'static Material) -> Self {
        Self { first: upper, second: Some(lower) }
    }

    pub(super) fn each(self) -> impl Iterator<Item = &'static Material> {
        std::iter::once(self.first).chain(self.second)
    }

    /// The metal that is drilled more slowly.
    pub(super) fn tougher(self) -> &'static Material {
        self.each()
            .min_by(|a, b| surface_speed(a).value.total_cmp(&surface_speed(b).value))
            .unwrap_or(self.first)
    }

    /// The group whose chips must be cleared the oftener.
    pub(super) fn group(self) -> Group {
        if self.each().any(|material| material.group == Group::Tough) {
            Group::Tough
        } else {
            self.first.group
        }
    }

    /// How far the drill goes in each turn: finely, but where rubbing hardens the metal or lights it.
    fn feed(self, feed: &DrillFeed) -> Length {
        let must_cut =
            |material: &Material| matches!(material.rubbing(), Rubbing::Hardens | Rubbing::Lights);
        if self.each().any(must_cut) { feed.high } else { feed.low }
    }

    pub(super) fn grab(self) -> bool {
        self.each().any(|material| material.grabs)
    }
}

/// The range the plan goes by: the first its page lists.
fn range(material: &Material) -> Option<&'static SpeedRange> {
    material.drilling.first()
}

/// Its slow end.
fn surface_speed(material: &Material) -> Velocity {
    range(material).map_or(Velocity::default(), |range| range.low)
}

/// What to set for a range at a diameter, of the machines at hand.
fn setting(spec: &HoleSpec, range: &SpeedRange, diameter: Length) -> Setting {
    Setting::of(band(range, diameter), &spec.machines)
}

/// The spindle speeds of a range at a diameter.
fn band(range: &SpeedRange, diameter: Length) -> SpeedBand {
    let at = |surface| cutting_speed::spindle_speed(surface, diameter);
    SpeedBand { low: at(range.low), high: at(range.high) }
}

/// What to set for a drill in one metal or two.
pub(super) fn drill_setting(spec: &HoleSpec, metals: Metals, diameter: Length) -> Option<Setting> {
    range(metals.tougher()).map(|range| setting(spec, range, diameter))
}

/// What to set for a tap under power: the gentlest in print, half of it for carbon steel.
pub(super) fn tap_setting(spec: &HoleSpec, major: Length) -> Option<Setting> {
    let gentlest = spec.material.tapping_gentlest_first().into_iter().next()?;
    let factor = match spec.tap_steel {
        TapSteel::HighSpeed => ToolSteel::HighSpeed,
        TapSteel::Carbon => ToolSteel::Carbon,
    }
    .speed_factor();
    let whole = band(gentlest, major);
    let takes = SpeedBand { low: whole.low * factor, high: whole.high * factor };
    Some(Setting::of(takes, &spec.machines))
}

/// What to set for a countersink that opens a hole to a diameter: the slowest speed that cuts clean.
pub(super) fn countersink_setting(
    spec: &HoleSpec,
    metals: Metals,
    mouth: Length,
) -> Option<Setting> {
    range(metals.tougher()).map(|range| Setting::of_countersink(band(range, mouth), &spec.machines))
}

/// The question with the one machine that the whole job stays on: the one that serves the tapping drill
/// best.
///
/// # Source
/// Common practice, no source: a part moved between machines is set up twice.
pub(super) fn on_one_machine(spec: &HoleSpec, tapping: &Drill) -> HoleSpec {
    let metals = match spec.over {
        Some(over) if over.hole == UpperHole::Tapping => Metals::both(over.material, spec.material),
        _ => Metals::one(spec.material),
    };
    let machines = range(metals.tougher()).map_or_else(
        || spec.machines.clone(),
        |range| spec.machines.kept_to(&band(range, tapping.diameter)),
    );
    HoleSpec { machines, ..spec.clone() }
}

/// The largest drill the machine's slowest speed suits in a metal.
pub(super) fn largest_for(metals: Metals, slowest: Frequency) -> Option<Length> {
    range(metals.tougher()).map(|range| cutting_speed::diameter_for(range.high, slowest))
}

/// A drilling step; the caller adds the words.
pub(super) fn step(
    spec: &HoleSpec,
    part: Part,
    drill: &'static Drill,
    metals: Metals,
    depth: Option<Length>,
) -> Operation {
    let material = metals.tougher();
    Operation {
        action: Action::Drill,
        part,
        tool: Cow::Owned(format!("{} drill", drill.label)),
        drill: Some(drill),
        diameter: Some(drill.diameter),
        depth,
        speed: drill_setting(spec, metals, drill.diameter),
        feed: drill_feed(drill.diameter).map(|feed| metals.feed(&feed)),
        lubricant: Some(material.on_the_drill().text),
        text: Cow::Borrowed(""),
        why: Cow::Borrowed(""),
        stop: None,
        tip: None,
        lips: None,
        cautions: Vec::new(),
    }
}

/// A step with no drill of the series: marking, holding, clearing.
pub(super) const fn hand_step(
    action: Action,
    part: Part,
    tool: &'static str,
    text: &'static str,
    why: &'static str,
) -> Operation {
    Operation {
        action,
        part,
        tool: Cow::Borrowed(tool),
        drill: None,
        diameter: None,
        depth: None,
        speed: None,
        feed: None,
        lubricant: None,
        text: Cow::Borrowed(text),
        why: Cow::Borrowed(why),
        stop: None,
        tip: None,
        lips: None,
        cautions: Vec::new(),
    }
}
