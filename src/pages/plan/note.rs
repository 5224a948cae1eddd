//! The address of a note's form with what is known of the job filled in.

use super::depths::as_set;
use crate::query::address;
use holewright_core::plan::{HolePlan, HoleSpec, TaperPlan};
use holewright_core::units::print;
use holewright_core::units::print::sentence;

/// `/notes/new` with thread, material, drill and depth, by the names of the note's own fields.
pub(super) fn address_of(plan: &HolePlan<'_>) -> String {
    let spec = plan.spec;
    let thread_depth = plan.depths.full_thread.map(|depth| print::mm(depth, 2));
    let stop = plan.depths.stop.map(|stop| as_set(stop, spec.scale));
    let depth = match (thread_depth, stop) {
        (Some(thread), Some(stop)) => format!("{thread} of full thread, drilled to {stop}"),
        (Some(thread), None) => format!("{thread}, through"),
        (None, _) => String::new(),
    };
    of_job(spec, &plan.tapping.planned().drill.label, &depth)
}

/// The same for a taper thread.
pub(super) fn of_taper(plan: &TaperPlan<'_>) -> String {
    let drill = plan.drill.map_or(plan.hole.label.as_str(), |drill| drill.label.as_str());
    let by_hand = print::mm(plan.depths.hand_tight, 1);
    of_job(plan.spec, drill, &format!("the fitting goes in {by_hand} by hand"))
}

fn of_job(spec: &HoleSpec, drill: &str, depth: &str) -> String {
    let thread = spec.thread.designation;
    let title = format!("{thread} in {}", spec.material.name);
    let material = sentence(spec.material.name);
    let known = [
        ("title", title.as_str()),
        ("material", material.as_str()),
        ("thread", thread),
        ("drill", drill),
        ("depth", depth),
    ];
    address("/notes/new", known.into_iter().filter(|(_, value)| !value.is_empty()))
}
