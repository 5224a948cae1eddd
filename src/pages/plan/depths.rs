//! The depths of a plan as the page lists them.

use super::figure::Figure;
use crate::figures::Both;
use holewright_core::plan::{Action, Depths, Hole, HoleSpec, Operation, Part, Scale};
use holewright_core::units::{Length, print};

/// The depths, from the face of the tapped part; those not known are left out.
pub(super) fn depths(spec: &HoleSpec, plan: &[Operation], depths: &Depths) -> Vec<Figure> {
    // What is set at the machine where the drill goes through the part on top first.
    let through_both = plan
        .iter()
        .rfind(|step| step.action == Action::Drill && step.part == Part::Both)
        .and_then(|step| step.stop);
    let blind = spec.hole == Hole::Blind;
    let figure = |name, length: Length| Figure::both(name, Both::coarse(length));
    let only_blind = |length: Length| blind.then_some(length);
    let listed = [
        depths.full_thread.map(|depth| match spec.hole {
            Hole::Blind => figure("Full thread", depth),
            Hole::Through => figure("Through", depth),
        }),
        depths.stop.map(|stop| stopped("Drill, full diameter", stop, spec.scale)),
        through_both.map(|stop| stopped("Stop, through both parts", stop, spec.scale)),
        depths.set_to_point().map(|depth| figure("Drill, to the point", depth)),
        depths.set_wall().map(|wall| figure("Wall left under the point", wall)),
        only_blind(depths.tap_lead).map(|lead| figure("Lead of the last tap", lead)),
        depths
            .male_centre
            .and_then(only_blind)
            .map(|room| figure("More, if the tap has a male centre, up to", room)),
        only_blind(depths.swarf_room).map(|room| figure("More, for swarf, up to", room)),
        depths
            .diameters
            .map(|diameters| Figure::one("Depth over diameter", print::trimmed(diameters, 1))),
    ];
    listed.into_iter().flatten().collect()
}

/// A depth stop, first in the unit it is set in.
pub(super) fn stopped(name: &'static str, stop: Length, scale: Scale) -> Figure {
    let Both { mm, inch } = Both::coarse(stop);
    match scale {
        Scale::Metric => Figure { name, value: mm, other: Some(inch) },
        Scale::Inch => Figure { name, value: inch, other: Some(mm) },
    }
}

/// A stop in the unit it is set in: `9.8 mm`, `0.385 in`.
pub(super) fn as_set(stop: Length, scale: Scale) -> String {
    stopped("", stop, scale).value
}
