//! What to look out for in one plan, worst first: the hole, the tap, the part on top, the metals, the
//! machine, the person.

mod hole;
mod machine;
mod metals;

use std::borrow::Cow;

use super::{HolePlan, HoleSpec, Level, Tap, TapSteel, UpperHole, Warning};
use crate::tables::materials::{Group, PressureWork};
use crate::tables::threads::read::Hand;
use crate::units::{mm, print};

/// Every warning of a plan, worst first; equal levels stay in the order of the work.
pub(super) fn warnings(plan: &HolePlan<'_>) -> Vec<Warning> {
    let mut found = Vec::new();
    hole::choice(&plan.tapping, &mut found);
    hole::size(plan, &mut found);
    hole::depth(plan.spec, &plan.depths, &mut found);
    tap(plan, &mut found);
    upper(plan, &mut found);
    metals::cautions(plan.spec, &mut found);
    machine::speeds(plan, &mut found);
    person(plan.spec, &mut found);
    found.sort_by_key(|warning| std::cmp::Reverse(warning.level));
    found
}

fn say(found: &mut Vec<Warning>, level: Level, text: impl Into<Cow<'static, str>>) {
    found.push(Warning { level, text: text.into() });
}

fn tap(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    if plan.geometry.major < mm(3.0)
        && (spec.material.group == Group::Tough || spec.material.work_hardens)
    {
        say(
            found,
            Level::Caution,
            format!(
                "A small tap in {}: use a sharp tap held square, back off often, and take the easier drill if in doubt.",
                spec.material.name
            ),
        );
    }
    if spec.hand == Hand::Left {
        say(found, Level::Note, "Left hand: taps, dies and screw must all be left-hand.");
    }
    if spec.tap == Tap::Forming {
        say(
            found,
            Level::Caution,
            "A forming tap takes two to three times the torque of a cutting tap; the drill given here is for forming only, never for a cutting tap.",
        );
    }
    if spec.tap_steel == TapSteel::Carbon {
        say(found, Level::Caution, carbon_tap(spec));
    }
}

/// A carbon steel tap is brittle; whether it can be dissolved out depends on the metal.
fn carbon_tap(spec: &HoleSpec) -> String {
    let rescue: Vec<&str> =
        spec.material.broken_tap.advice().iter().map(|advice| advice.text).collect();
    format!("A carbon steel tap snaps without warning. If it does: {}", rescue.join(" "))
}

fn upper(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    if plan.spec.lone_thickness.is_some() {
        say(
            found,
            Level::Note,
            "A thickness was given for an upper part, but not its metal: this plan is for one part.",
        );
    }
    let Some(over) = plan.spec.over else { return };
    if plan.clearance.drill.is_none() {
        say(
            found,
            Level::Caution,
            format!(
                "No drill at hand is right for the screw to pass: the hole wants {} or a little over.",
                print::mm(plan.clearance.hole.hole, 3)
            ),
        );
    }
    let thick = over
        .thickness
        .is_some_and(|thickness| thickness > plan.tapping.chosen.drill.diameter * 4.0);
    if over.hole == UpperHole::Tapping && thick {
        say(
            found,
            Level::Caution,
            "The upper part is over four drill diameters thick: the tapping drill may wander in it. Think of drilling it to clearance first and spotting the lower part through it.",
        );
    }
    if over.thickness.is_none() {
        say(
            found,
            Level::Note,
            "The upper part's thickness was not given, so the depth stop cannot be worked out for both parts together.",
        );
    }
}

fn person(spec: &HoleSpec, found: &mut Vec<Warning>) {
    say(
        found,
        Level::Danger,
        "Eyes: wear glasses; drills and taps snap. Clamp the work. No gloves, loose sleeves or rings near the spindle. Move swarf with a brush, never by hand or with an air line.",
    );
    if spec.tap == Tap::Hand {
        say(
            found,
            Level::Danger,
            "When a tap is guided by the drill chuck, isolate the machine and turn the chuck by hand.",
        );
    }
    metals::say_by_metal(spec, |material| material.dangers, Level::Danger, found);
    if metals::each(spec).any(|material| material.pressure_work == PressureWork::Plausible) {
        say(
            found,
            Level::Danger,
            "Steam, boilers, pressure: these figures are no design. The national boiler code and the club's boiler inspector decide, before cutting.",
        );
    }
}
