//! The drills that go before the tapping drill, and what a large drill is held in.
//!
//! # Source
//! Common practice, no source.

use std::borrow::Cow;

use super::drilling::{Metals, step};
use super::question::Steps;
use super::{HoleSpec, Operation, Part, lips};
use crate::calc::spotting;
use crate::tables::drills::Drill;
use crate::units::{Length, exceeds, falls_short, mm};

/// A drill wider than this wants a pilot about as wide as its web.
const PILOT_FROM: Length = mm(8.0);
/// From this width it wants a drill of half its size between.
const HALFWAY_FROM: Length = mm(10.0);
/// What a bench chuck holds.
const CHUCK: Length = mm(13.0);

/// Where the drills of one hole go, and how far.
#[derive(Clone, Copy)]
pub(super) struct Reach {
    pub(super) part: Part,
    pub(super) metals: Metals,
    pub(super) depth: Option<Length>,
    pub(super) stop: Option<Length>,
}

/// Whether the tapping drill meets the solid, or opens a hole that an earlier one left.
pub(super) fn meets(steps: &Steps<'_>) -> lips::Into {
    meets_after(steps.spec, steps.tapping)
}

/// The same of any drill.
pub(super) fn meets_after(spec: &HoleSpec, last: &Drill) -> lips::Into {
    if earlier(spec, last).is_empty() { lips::Into::Solid } else { lips::Into::Hole }
}

/// The drills that go first, in order; none where the tapping drill goes into the solid.
pub(super) fn before(steps: &Steps<'_>, reach: Reach) -> Vec<Operation> {
    before_drill(steps.spec, steps.tapping, reach)
}

/// The same before any drill.
pub(super) fn before_drill(spec: &HoleSpec, last: &'static Drill, reach: Reach) -> Vec<Operation> {
    let Reach { part, metals, depth, stop } = reach;
    let cut = |drill: &'static Drill, into: lips::Into, text: &str, why: &'static str| Operation {
        text: Cow::Owned(format!("{text}{}", lips::words(metals, into))),
        why: why.into(),
        lips: lips::lips(metals, into),
        stop,
        ..step(spec, part, drill, metals, depth)
    };
    let first = |drill: &'static Drill| {
        cut(
            drill,
            lips::Into::Solid,
            "Pilot to the same depth as the drill that follows; clear it often.",
            "A pilot about as wide as the web takes the load off the drill's point.",
        )
    };
    let next = |drill: &'static Drill| {
        cut(
            drill,
            lips::Into::Hole,
            "Open out to the same depth, half way to size.",
            "Each lip then cuts a narrower ring: less thrust, less heat, and the drill keeps to the hole.",
        )
    };
    let mut drills = earlier(spec, last).into_iter();
    let pilot = drills.next().map(first);
    pilot.into_iter().chain(drills.map(next)).collect()
}

/// The drills before the tapping drill, smallest first: a pilot, and for a large one another between.
fn earlier(spec: &HoleSpec, last: &Drill) -> Vec<&'static Drill> {
    let wide = last.diameter;
    if falls_short(wide, PILOT_FROM) {
        return Vec::new();
    }
    let nearest = |size: Length| {
        let off = |drill: &Drill| (drill.diameter - size).value.abs();
        spec.at_hand.drills().min_by(|a, b| off(a).total_cmp(&off(b)))
    };
    let pilot = nearest(spotting::web(wide)).filter(|drill| drill.diameter < wide * 0.6);
    let halfway = nearest(wide * 0.5)
        .filter(|_| !falls_short(wide, HALFWAY_FROM))
        .filter(|drill| drill.diameter > wide * 0.35 && drill.diameter < wide * 0.8)
        .filter(|drill| pilot.is_none_or(|pilot| drill.diameter > pilot.diameter * 1.25));
    pilot.into_iter().chain(halfway).collect()
}

/// What a drill too wide for a bench chuck is held in, and the other way to make its hole.
pub(super) fn held(drill: &Drill) -> &'static str {
    if exceeds(drill.diameter, CHUCK) {
        " Over 13 mm a drill has a taper or a turned-down shank: hold it in the taper if you can. Or drill what the chuck holds and bore the rest, which also puts the hole true."
    } else {
        ""
    }
}

#[cfg(test)]
mod tests {
    use super::{CHUCK, held};
    use crate::tables::drills::all;
    use crate::units::exceeds;

    #[test]
    fn only_what_a_chuck_does_not_hold_is_spoken_of() {
        for drill in all() {
            assert_eq!(held(drill).is_empty(), !exceeds(drill.diameter, CHUCK), "{}", drill.label);
        }
    }
}
