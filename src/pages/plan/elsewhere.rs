//! Where a plan's hole is gone into further: its depths by themselves, and a tap broken in its metal.

use super::request::Request;
use crate::link::Link;
use crate::query;
use crate::rescue::broken_tap_in;
use holewright_core::plan::{HoleSpec, TapSteel};
use holewright_core::tables::drills::Drill;
use holewright_core::tables::tool_steel::ToolSteel;

/// The fields that the plan and the calculator of blind holes read alike.
const SHARED: [&str; 6] =
    ["thread", "depth", "part_thickness", "finish", "material", "point_angle"];

/// The calculator of blind holes, asked what the plan was asked, with the drill it took.
pub(super) fn blind_hole(request: &Request, drill: Option<&Drill>) -> String {
    let filled = SHARED.map(|field| (field, request.typed(field)));
    let drill = drill.map(|drill| ("drill", drill.label.as_str()));
    let filled = filled.into_iter().filter(|(_, typed)| !typed.is_empty()).chain(drill);
    query::address("/calculators/blind-hole", filled)
}

/// What to do about a tap broken in the metal that is tapped.
pub(super) fn broken_tap(spec: &HoleSpec) -> Link {
    let steel = match spec.tap_steel {
        TapSteel::Carbon => Some(ToolSteel::Carbon),
        TapSteel::HighSpeed => None,
    };
    let words = format!("If the tap breaks in {}", spec.material.name);
    Link::new(broken_tap_in(spec.material, steel), words)
}
