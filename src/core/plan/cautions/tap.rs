//! What to watch for at the tap.

use super::{Found, Place};
use crate::plan::{Action, HoleSpec, Level, Part, Tap, TapSteel};
use crate::tables::threads::read::Hand;

pub(super) fn cautions(spec: &HoleSpec, found: &mut Found) {
    // By hand the first of the taps; under power or in forming there is but one.
    let first = Place::FirstTap;
    match spec.tap {
        Tap::Hand => found.say(
            first,
            Level::Danger,
            "Where the drill chuck guides the tap, isolate the machine and turn the chuck by hand.",
        ),
        Tap::Forming => found.say(
            Place::Drilling,
            Level::Caution,
            "This drill is for forming only, never for a cutting tap.",
        ),
        Tap::Machine => {}
    }
    if spec.tap_steel == TapSteel::Carbon {
        found.say(
            first,
            Level::Caution,
            "A carbon steel tap snaps without warning: stop as soon as it springs.",
        );
        let rescue: Vec<&str> =
            spec.material.broken_tap.advice().iter().map(|advice| advice.text).collect();
        found.say(
            Place::Standing,
            Level::Caution,
            format!("If the carbon steel tap breaks: {}", rescue.join(" ")),
        );
    }
    if spec.hand == Hand::Left {
        found.say(
            Place::At(Action::TryScrew, Part::Lower),
            Level::Note,
            "Left hand: taps, dies and screw must all be left-hand.",
        );
    }
}
