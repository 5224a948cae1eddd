//! What the tap takes and what the thread carries, as the plan says it, and the way to more of it.

use crate::key::{Key, Signed};
use crate::query::address;
use holewright_core::calc::strip;
use holewright_core::calc::tap_effort::STRENGTH_SOURCE;
use holewright_core::plan::{HolePlan, Strength, TapEffort};
use holewright_core::tables::tapping_force;
use holewright_core::units::{in_newton_metres, in_newtons, print};

/// The sentences, each with the sign of its source.
pub(super) fn bearing(plan: &HolePlan<'_>, key: &mut Key) -> Vec<Signed> {
    let mut said = Vec::new();
    if let Some(effort) = &plan.effort {
        said.push(key.signed(&cut(plan, effort), tapping_force::SOURCE));
        let margin = effort.margin;
        let left = format!("What is left to the tap: {margin}. {}", margin.advice());
        said.push(key.signed(&left, STRENGTH_SOURCE));
    }
    said.extend(easier(plan).map(|words| key.signed(&words, strip::SOURCE)));
    said.extend(plan.strength.as_ref().map(|found| key.signed(&strength(found), strip::SOURCE)));
    said
}

/// The calculator of effort with what is known of this job.
pub(super) fn effort_address(plan: &HolePlan<'_>) -> Option<String> {
    plan.effort?;
    let known = [
        ("thread", plan.spec.thread.designation),
        ("material", plan.spec.material.slug),
        ("hole", plan.tapping.planned().drill.label.as_str()),
    ];
    Some(address("/calculators/tap-effort", known))
}

fn cut(plan: &HolePlan<'_>, effort: &TapEffort) -> String {
    let torque = print::to_figures(in_newton_metres(effort.cutting), 2);
    let row = effort.resists.row.printed_as;
    let metal = if effort.resists.is_borrowed {
        format!("{row}, which is borrowed for {}", plan.spec.material.name)
    } else {
        row.to_owned()
    };
    format!("The second tap takes about {torque} N·m in this hole, reckoned with {metal}.")
}

fn easier(plan: &HolePlan<'_>) -> Option<String> {
    let compared = plan.effort.as_ref()?.easier?;
    let drill = &plan.tapping.easier?.drill.label;
    let [effort, strength] = [compared.effort_percent, compared.strength_percent]
        .map(|percent| print::fixed(percent, 0));
    Some(format!(
        "The next easier drill, {drill}, takes {effort} % of that effort and leaves {strength} % of the screw’s thread that holds."
    ))
}

fn strength(found: &Strength) -> String {
    let engaged = print::mm(found.engaged, 2);
    let weakest = found.loads.in_words();
    let load = print::significant(in_newtons(found.loads.least()), 2);
    let longer = found
        .holding_length
        .filter(|length| *length > found.engaged)
        .map_or_else(String::new, |length| {
            format!("; from {} on the screw breaks first", print::mm(length, 1))
        });
    format!(
        "With {engaged} of thread {weakest}, at about {load} N{longer}: that is where something breaks, and no load to use."
    )
}
