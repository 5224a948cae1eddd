//! The drilling steps: tool, speed, feed and lubricant for one metal or for two together.

use std::borrow::Cow;

use super::{Action, HoleSpec, Operation, Part};
use crate::calc::cutting_speed;
use crate::calc::speed_choice::{Reach, SpeedBand};
use crate::calc::spindle::{Spindle, on_a_dial};
use crate::tables::drills::Drill;
use crate::tables::materials::feeds;
use crate::tables::materials::{Group, Material, SpeedRange};
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

/// A speed to set, and whether it is the speed wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Setting {
    /// The speed the machine is set to, as a dial reads.
    pub(super) speed: Frequency,
    /// The slow end of the range, as a dial reads: what would be set with every speed at hand.
    pub(super) wanted: Frequency,
    /// Whether the machine can do it.
    pub(super) reach: Reach,
}

/// The spindle speed of a range at a diameter, of those the machine has: the slow end of the range,
/// since a slower tool does no harm and a burnt one does.
pub(super) fn setting(range: &SpeedRange, diameter: Length, spindle: &Spindle) -> Setting {
    let at = |surface| cutting_speed::spindle_speed(surface, diameter);
    let band = SpeedBand { low: at(range.low), high: at(range.high) };
    let choice = band.choose(spindle);
    let wanted = on_a_dial(band.low);
    Setting { speed: choice.set.unwrap_or(wanted), wanted, reach: choice.reach }
}

/// The speed for a drill in one metal or two.
pub(super) fn drill_setting(
    metals: Metals,
    diameter: Length,
    spindle: &Spindle,
) -> Option<Setting> {
    range(metals.tougher()).map(|range| setting(range, diameter, spindle))
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
        speed: drill_setting(metals, drill.diameter, &spec.spindle).map(|setting| setting.speed),
        feed: feeds::for_drill(drill.diameter).map(|range| range.low),
        lubricant: Some(material.drilling_lubricant.text),
        text: Cow::Borrowed(""),
        why: Cow::Borrowed(""),
        stop: None,
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
        lips: None,
        cautions: Vec::new(),
    }
}
