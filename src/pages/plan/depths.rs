//! The depths of a plan as the page lists them.

use super::steps::Figure;
use crate::figures::Both;
use holewright_core::plan::{Depths, Hole};
use holewright_core::units::{Length, print};

/// The depths, from the face of the tapped part; those not known are left out.
pub(super) fn depths(hole: Hole, depths: &Depths) -> Vec<Figure> {
    let blind = hole == Hole::Blind;
    let figure = |name, length: Length| Figure::both(name, Both::coarse(length));
    let only_blind = |length: Length| blind.then_some(length);
    let listed = [
        depths.full_thread.map(|depth| figure("Full thread", depth)),
        depths.drill_full_diameter.map(|depth| figure("Drill, full diameter", depth)),
        depths.drill_to_point.map(|depth| figure("Drill, to the point", depth)),
        depths.wall.map(|wall| figure("Wall left under the point", wall)),
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
