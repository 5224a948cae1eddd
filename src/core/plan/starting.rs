//! The steps before the drill: marking out, spotting, holding in register, taking apart again.
//!
//! # Source
//! Common practice, no source.

use std::borrow::Cow;

use super::drilling::hand_step;
use super::question::Steps;
use super::{Action, Operation, Over, Part};
use crate::tables::materials::{Family, Material};

/// A plastic that a punch, or a scribed line, starts a crack in.
fn is_brittle(material: &Material) -> bool {
    material.family == Family::Plastic && material.grabs
}

pub(super) fn mark_out(part: Part, material: &'static Material) -> Operation {
    if is_brittle(material) {
        return hand_step(
            Action::MarkOut,
            part,
            "masking tape and a fine pen",
            match part {
                Part::Upper => {
                    "Mark out the upper part on masking tape from its datum, and check the layout against the mating part. No scriber, no punch."
                }
                Part::Lower | Part::Both => {
                    "Stick masking tape on, mark out on it from the datum, and check with dividers held clear. No scriber, no punch."
                }
            },
            "A punch or a scratch starts a crack in it.",
        );
    }
    let (text, why) = match part {
        Part::Upper => (
            "Mark out the upper part from its datum, pop lightly, and check the layout against the mating part before going further.",
            "One layout serves both parts, so it is checked once against the second.",
        ),
        Part::Lower | Part::Both => (
            "Mark out from the datum and pop lightly. Check with dividers and a glass, draw the pop over if it is out, then pop to size.",
            "A centre can be moved while it is a dot; a hole cannot.",
        ),
    };
    hand_step(Action::MarkOut, part, "scriber and dot punch", text, why)
}

pub(super) fn spot(part: Part, material: &'static Material) -> Operation {
    let (text, why) = if is_brittle(material) {
        (
            "Spot through the tape where the lines cross, lightly, just wide enough to take the web of the next drill, and look at it before drilling on.",
            "The tape keeps the drill from skating where there is no pop to sit in.",
        )
    } else {
        (
            "Spot the pop mark just wide enough to take the web of the next drill, and look at it before drilling on.",
            "A short stiff drill starts where it is put; a long one wanders.",
        )
    };
    hand_step(Action::Spot, part, "spotting drill, or a small centre drill", text, why)
}

pub(super) fn register() -> Operation {
    hand_step(
        Action::Register,
        Part::Both,
        "clamps, spigot or a bar through the bores",
        "Hold the two in register by a spigot, a bar through the bores or clamps, and witness-mark which way round they go.",
        "The witness mark brings them back the same way.",
    )
}

pub(super) fn spot_through(steps: &Steps<'_>, over: Over) -> Operation {
    let brittle = is_brittle(steps.spec.material);
    let (tool, text) = if brittle {
        (
            "a drill that fits the clearance hole, turned by hand",
            "Through the upper part's clearance hole, mark the lower with just the point of a drill that fits the hole closely, turned by hand. No punch: it starts a crack.",
        )
    } else {
        (
            "transfer punch, or a drill that fits the clearance hole",
            "Through the upper part's clearance hole, mark the lower with a transfer punch or just the point of a drill that fits the hole closely.",
        )
    };
    let spotting = hand_step(
        Action::SpotThrough,
        Part::Lower,
        tool,
        text,
        "The upper part is the master; only a tool that fits its hole finds its centre.",
    );
    match steps.clearance.drill {
        Some(drill) => Operation {
            tool: Cow::Owned(if brittle {
                format!("{} drill, turned by hand, if it fits the hole closely", drill.label)
            } else {
                format!("transfer punch, or {} drill if it fits the hole closely", drill.label)
            }),
            drill: Some(drill),
            diameter: Some(drill.diameter),
            depth: over.thickness,
            ..spotting
        },
        None => spotting,
    }
}

pub(super) fn separate(text: &'static str, why: &'static str) -> Operation {
    hand_step(Action::Separate, Part::Both, "none", text, why)
}
