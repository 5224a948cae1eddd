//! What stands for every such job: said once, for the person.

use super::{Found, Place, materials};
use crate::plan::{HoleSpec, Level};
use crate::tables::materials::PressureWork;

/// Whether the plan speaks of steam and pressure: in a metal that turns up there, and with a taper thread.
pub(in crate::plan) fn speaks_of_pressure(spec: &HoleSpec) -> bool {
    spec.thread.taper.is_some()
        || materials::each(spec).any(|material| material.pressure_work == PressureWork::Plausible)
}

pub(super) fn cautions(spec: &HoleSpec, found: &mut Found) {
    let mut say = |text: &'static str| found.say(Place::Standing, Level::Danger, text);
    say("Eyes: wear glasses; drills and taps snap.");
    say("Clamp the work: a drill that catches spins it.");
    say("No gloves, loose sleeves, long hair or rings near the spindle.");
    say("Move swarf with a brush, never by hand or with an air line.");
    if speaks_of_pressure(spec) {
        say(
            "Steam, boilers, pressure: these figures are no design. The national boiler code and the club's boiler inspector decide, before cutting.",
        );
    }
}
