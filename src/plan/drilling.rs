//! The drilling steps: tool, speed, feed and lubricant for one metal or for two together.

use std::borrow::Cow;

use super::{Action, HoleSpec, Operation, Part};
use crate::calc::cutting_speed;
use crate::tables::drills::Drill;
use crate::tables::materials::feeds;
use crate::tables::materials::{Group, Material};
use crate::units::{Frequency, Length, Velocity, in_rpm, print, rpm};

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

    fn each(self) -> impl Iterator<Item = &'static Material> {
        std::iter::once(self.first).chain(self.second)
    }

    /// The metal that is drilled more slowly.
    fn tougher(self) -> &'static Material {
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

/// The slow end of the range the plan goes by: a slower drill does no harm, a burnt one does.
fn surface_speed(material: &Material) -> Velocity {
    material.drilling.first().map_or(Velocity::default(), |range| range.low)
}

/// The spindle speed for a drill, held to what the machine has and rounded as a dial reads.
pub(super) fn spindle_speed(
    metals: Metals,
    diameter: Length,
    spindle_max: Option<Frequency>,
) -> Option<Frequency> {
    let surface = surface_speed(metals.tougher());
    if surface.value <= 0.0 {
        return None;
    }
    let ideal = cutting_speed::spindle_speed(surface, diameter);
    let held = spindle_max.map_or(ideal, |most| if ideal > most { most } else { ideal });
    Some(rpm(print::significant(in_rpm(held), 2)))
}

/// The speed the tapping drill would like, where the machine cannot reach it.
pub(super) fn too_slow(spec: &HoleSpec, diameter: Length) -> Option<Frequency> {
    let ideal = spindle_speed(Metals::one(spec.material), diameter, None)?;
    spec.spindle_max.filter(|most| *most < ideal).map(|_| ideal)
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
        speed: spindle_speed(metals, drill.diameter, spec.spindle_max),
        feed: feeds::for_drill(drill.diameter).map(|range| range.low),
        lubricant: Some(material.drilling_lubricant.text),
        text: Cow::Borrowed(""),
        why: Cow::Borrowed(""),
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
    }
}
