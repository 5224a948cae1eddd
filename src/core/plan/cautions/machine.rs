//! What the speeds of the machine make of the drills and of a tap under power.

use super::{Found, Place, say};
use crate::calc::speed_choice::Reach;
use crate::plan::drilling::{self, Metals};
use crate::plan::{Action, HolePlan, HoleSpec, Level, Part, Tap, UpperHole, Warning};
use crate::tables::drills::Drill;
use crate::units::{in_rpm, print};

/// What the machine's speeds make of the drills and of a tap under power, each at its step.
pub(super) fn at_its_steps(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    let lower = Metals::one(spec.material);
    let tapping_metals = match spec.over {
        Some(over) if over.hole == UpperHole::Tapping => Metals::both(over.material, spec.material),
        _ => lower,
    };
    let mut here = Vec::new();
    drill_speed(spec, plan.tapping.chosen.drill, tapping_metals, &mut here);
    found.all(Place::Drilling, here);
    if let (Some(over), Some(drill)) = (spec.over, plan.clearance.drill)
        && over.hole == UpperHole::Tapping
    {
        let mut here = Vec::new();
        drill_speed(spec, drill, Metals::one(over.material), &mut here);
        found.all(Place::At(Action::OpenOut, Part::Upper), here);
    }
    let mut here = Vec::new();
    tap_speed(plan, &mut here);
    found.all(Place::At(Action::Tap, Part::Lower), here);
}

fn tap_speed(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    if let (Tap::Machine, Some(range)) = (spec.tap, spec.material.tapping.first()) {
        let tap = drilling::setting(range, plan.geometry.major, &spec.spindle);
        if tap.reach == Reach::TooFast {
            say(
                found,
                Level::Caution,
                format!(
                    "The slowest speed at hand, {} rev/min, is too fast for the tap (about {} rev/min): turn it by hand.",
                    print::fixed(in_rpm(tap.speed), 0),
                    print::fixed(in_rpm(tap.wanted), 0)
                ),
            );
        }
    }
}

fn drill_speed(spec: &HoleSpec, drill: &Drill, metals: Metals, found: &mut Vec<Warning>) {
    let Some(set) = drilling::drill_setting(metals, drill.diameter, &spec.spindle) else { return };
    let wanted = print::fixed(in_rpm(set.wanted), 0);
    match set.reach {
        Reach::TooSlow => say(
            found,
            Level::Note,
            format!(
                "The spindle is slower than the {} drill likes (about {wanted} rev/min): feed lightly and clear often.",
                drill.label
            ),
        ),
        Reach::TooFast => {
            let largest = drilling::largest_for(metals, set.speed)
                .map_or_else(String::new, |largest| print::mm(largest, 1));
            say(
                found,
                Level::Caution,
                format!(
                    "The slowest speed at hand, {} rev/min, is too fast for the {} drill (about {wanted} rev/min). The largest drill it suits in {} is {largest}: open the hole out to there and bore, ream or file the rest, or use a slower machine.",
                    print::fixed(in_rpm(set.speed), 0),
                    drill.label,
                    metals.tougher().name,
                ),
            );
        }
        _ => {}
    }
}
