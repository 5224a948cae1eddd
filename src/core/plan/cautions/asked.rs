//! What the plan assumed, since it was not said.

use super::{Found, Place, speaks_of_pressure};
use crate::calc::aim::Aim;
use crate::plan::{Hole, HolePlan, Level, TaperPlan};
use crate::units::print;

pub(super) fn assumed(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    let mut say = |text: String| found.say(Place::Assumed, Level::Note, text);
    if spec.hole == Hole::Blind && spec.depth.is_none() {
        let length = plan.depths.full_thread.map_or_else(String::new, |it| print::mm(it, 2));
        say(format!("No depth was given: {length} of full thread, 1½ diameters, is taken."));
    }
    if spec.screw.is_some() && speaks_of_pressure(spec) {
        say("The screw is named, but no strength is given on a plan in a metal that may hold steam or pressure: those go by their code.".to_owned());
    } else if spec.screw.is_some() && plan.strength.is_none() {
        say("The screw is named, but what the thread carries wants its length and a metal whose strength is held.".to_owned());
    }
    if spec.lone_thickness.is_some() {
        say("The upper part has a thickness but no material: this plan is for one part.".to_owned());
    }
    if spec.head.is_some() && spec.over.is_none() {
        say("A head was given, but no part on top: this plan is for the tapped part.".to_owned());
    }
    if spec.over.is_some_and(|over| over.thickness.is_none()) {
        say("The upper part's thickness was not given, so there is no depth stop for both together."
            .to_owned());
    }
}

/// The same of a taper thread, whose depth follows from its gauge length.
pub(super) fn taper(plan: &TaperPlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    let mut say = |text: String| found.say(Place::Assumed, Level::Note, text);
    let [by_hand, thread] =
        [plan.depths.hand_tight, plan.depths.thread].map(|length| print::mm(length, 1));
    if !plan.depths.gauge_is_printed {
        say(format!(
            "No gauge length is printed for this size: {by_hand}, four and a half threads, is taken, as the printed ones are. Go by the fitting."
        ));
    }
    if spec.hole == Hole::Blind && spec.depth.is_some() {
        say(format!(
            "The depth of a taper thread is its gauge length and three threads, {thread}: the depth asked for is not used."
        ));
    }
    let unused: Vec<&str> = [
        (spec.measured_hole.is_some(), "the hole as measured"),
        (spec.finish.is_some(), "the last tap"),
        (spec.head.is_some(), "the head"),
        (spec.screw.is_some(), "the metal of the screw"),
        (spec.aim != Aim::Usual, "how much thread"),
    ]
    .into_iter()
    .filter_map(|(is_given, words)| is_given.then_some(words))
    .collect();
    if !unused.is_empty() {
        say(format!(
            "Not used here, since a taper thread goes by its list and its fitting: {}.",
            unused.join(", ")
        ));
    }
    if spec.over.is_some() {
        say("A taper thread holds a fitting, not a part on top: this plan is for the tapped part."
            .to_owned());
    }
}
