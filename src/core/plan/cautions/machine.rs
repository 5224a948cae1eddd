//! What the speeds of the machines make of the drills and of a tap under power.

use super::{Found, Place, say};
use crate::calc::setting::{SetTo, Setting};
use crate::calc::speed_choice::Reach;
use crate::calc::spindle::on_a_dial;
use crate::plan::drilling::{self, Metals};
use crate::plan::{Action, Hole, HolePlan, HoleSpec, Level, Part, Tap, UpperHole, Warning};
use crate::tables::drills::Drill;
use crate::units::{Length, in_rpm, print};

/// What the machines' speeds make of the drills and of a tap under power, each at its step.
pub(super) fn at_its_steps(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = &drilling::on_one_machine(plan.spec, plan.tapping.chosen.drill);
    let lower = Metals::one(spec.material);
    let tapping_metals = match spec.over {
        Some(over) if over.hole == UpperHole::Tapping => Metals::both(over.material, spec.material),
        _ => lower,
    };
    let mut here = Vec::new();
    let drill = plan.tapping.planned().drill;
    let tapping = Cut { drill, metals: tapping_metals, hole: spec.hole };
    drill_speed(spec, tapping, &mut here);
    let is_said = here.iter().any(|warning| warning.level == Level::Note);
    found.all(Place::Drilling, here);
    if let (Some(over), Some(drill)) = (spec.over, plan.clearance.drill)
        && over.hole == UpperHole::Tapping
    {
        let mut here = Vec::new();
        let opening = Cut { drill, metals: Metals::one(over.material), hole: Hole::Through };
        drill_speed(spec, opening, &mut here);
        // A machine that is slow is slow for every drill: once in a plan is enough.
        here.retain(|warning| !(is_said && warning.level == Level::Note));
        found.all(Place::At(Action::OpenOut, Part::Upper), here);
    }
    let mut here = Vec::new();
    tap_speed(spec, plan.geometry.major, &mut here);
    found.all(Place::At(Action::Tap, Part::Lower), here);
}

fn tap_speed(spec: &HoleSpec, major: Length, found: &mut Vec<Warning>) {
    if spec.tap != Tap::Machine {
        return;
    }
    if let Some(set) = drilling::tap_setting(spec, major)
        && let SetTo::NoneSlowEnough(slowest) = &set.to
    {
        say(
            found,
            Level::Caution,
            format!(
                "The slowest speed, {}, is too fast for the tap (about {} rev/min): turn it by hand.",
                slowest.words(),
                wanted(&set)
            ),
        );
    }
}

/// The slow end of what the material takes, as a dial reads it.
fn wanted(set: &Setting) -> String {
    print::fixed(in_rpm(on_a_dial(set.takes.low)), 0)
}

/// What one drill does.
struct Cut {
    drill: &'static Drill,
    metals: Metals,
    hole: Hole,
}

fn drill_speed(spec: &HoleSpec, cut: Cut, found: &mut Vec<Warning>) {
    let Cut { drill, metals, hole } = cut;
    let Some(set) = drilling::drill_setting(spec, metals, drill.diameter) else { return };
    let wanted = wanted(&set);
    let material = metals.tougher();
    match &set.to {
        SetTo::On(held) if held.reach == Reach::TooSlow && !set.is_near_enough() => say(
            found,
            Level::Note,
            format!(
                "{} as fast as the {} drill would take (about {wanted} rev/min). {}",
                held.machine.as_ref().map_or_else(
                    || "No machine at hand is".to_owned(),
                    |name| format!("The {name} is not")
                ),
                drill.label,
                match hole {
                    Hole::Through => material.feed_when_slow(),
                    Hole::Blind => material.feed_when_slow_in_blind(),
                }
            ),
        ),
        SetTo::NoneSlowEnough(slowest) => {
            let largest = drilling::largest_for(metals, slowest.speed)
                .map_or_else(String::new, |largest| print::mm(largest, 1));
            say(
                found,
                Level::Caution,
                format!(
                    "The slowest speed, {}, is too fast for the {} drill (about {wanted} rev/min). {} The largest drill it suits in {} is {largest}: open the hole out to there and bore, ream or file the rest, or use a slower machine.",
                    slowest.words(),
                    drill.label,
                    material.harm_when_fast(),
                    material.name,
                ),
            );
        }
        _ => {}
    }
}
