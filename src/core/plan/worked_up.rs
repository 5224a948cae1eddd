//! The drills that go before the tapping drill.
//!
//! # Source
//! Common practice, no source.

use super::drilling::{Metals, step};
use super::order::Steps;
use super::{Operation, Part, lips};
use crate::calc::spotting;
use crate::tables::drills::Drill;
use crate::units::{Length, mm};

/// A drill wider than this wants a pilot about as wide as its web.
const PILOT_FROM: Length = mm(8.0);

/// Whether the tapping drill meets the solid, or opens a hole that an earlier one left.
pub(super) fn meets(steps: &Steps<'_>) -> lips::Into {
    if pilot(steps).is_some() { lips::Into::Hole } else { lips::Into::Solid }
}

/// The drills that go first, in order; none where the tapping drill goes into the solid.
pub(super) fn before(
    steps: &Steps<'_>,
    part: Part,
    metals: Metals,
    depth: Option<Length>,
) -> Vec<Operation> {
    let into = |drill: &'static Drill| Operation {
        text: "Pilot to the same depth as the drill that follows; clear it often.".into(),
        why: "A pilot about as wide as the web takes the load off the drill's point.".into(),
        ..step(steps.spec, part, drill, metals, depth)
    };
    pilot(steps).map(into).into_iter().collect()
}

/// A pilot for a wide drill: the drill at hand nearest a quarter of its diameter.
fn pilot(steps: &Steps<'_>) -> Option<&'static Drill> {
    let wide = steps.tapping.diameter;
    if wide < PILOT_FROM {
        return None;
    }
    let web = spotting::web(wide);
    let off = |drill: &Drill| (drill.diameter - web).value.abs();
    let drill = steps.spec.at_hand.drills().min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (drill.diameter < wide * 0.6).then_some(drill)
}
