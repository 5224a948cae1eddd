//! How many threads hold the screw, and what a chamfer may take of them.
//!
//! # Source
//! Common practice, no source.

use super::question::Steps;
use super::{Hole, HoleSpec};
use crate::calc::spotting;
use crate::calc::thread_form::Geometry;
use crate::units::{Length, in_mm, mm, print};

/// Fewer full threads than this hold nothing that matters.
const FEWEST: f64 = 3.0;

/// How the mouth of the thread is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Mouth {
    /// A chamfer to this diameter.
    Chamfer(Length),
    /// The sharp edge is taken off: a chamfer would take the thread.
    Edge,
}

/// A chamfer just over the major diameter, where it leaves thread enough.
pub(super) fn mouth(steps: &Steps<'_>) -> Mouth {
    // No countersink is set nearer than to a tenth.
    let wide = mm(print::round(in_mm(spotting::chamfer(steps.geometry.major)), 1));
    // At 90° a chamfer is as deep as it is wide on a side.
    let deep = (wide - steps.tapping.diameter) * 0.5;
    let mouths = match steps.spec.hole {
        Hole::Through => 2.0,
        Hole::Blind => 1.0,
    };
    let leaves = steps.depths.full_thread.map(|length| length - deep * mouths);
    match leaves {
        Some(left) if is_few(threads(left, steps.geometry)) => Mouth::Edge,
        _ => Mouth::Chamfer(wide),
    }
}

/// What a part holds the screw by, where it is too little.
pub(super) fn too_few(
    spec: &HoleSpec,
    geometry: &Geometry,
    full_thread: Option<Length>,
) -> Option<String> {
    let held = threads(full_thread?, geometry);
    if !is_few(held) {
        return None;
    }
    let number = print::fixed(held, 1);
    let otherwise = match spec.hole {
        Hole::Through => "a nut behind, a boss, or a finer thread",
        Hole::Blind => "a deeper hole, a boss, or a finer thread",
    };
    Some(format!("Only {number} threads hold, and three are the least: {otherwise}."))
}

fn threads(length: Length, geometry: &Geometry) -> f64 {
    in_mm(length) / in_mm(geometry.pitch)
}

/// To a tenth, as it is said.
fn is_few(threads: f64) -> bool {
    print::round(threads, 1) < FEWEST
}
