//! What to do when something goes wrong: the list of troubles, and each with its ways out in order.

pub mod asked;
mod index;
mod show;

pub(super) use index::index;
pub(super) use show::show;

use crate::query;
use asked::{MATERIAL, TAP_STEEL};
use holewright_core::tables::materials::Material;
use holewright_core::tables::tool_steel::ToolSteel;

/// The page of a tap broken in a metal; where its steel is known, that too.
pub(super) fn broken_tap_in(material: &Material, steel: Option<ToolSteel>) -> String {
    let steel = steel.map(|steel| (TAP_STEEL, steel.slug()));
    query::address("/rescue/broken-tap", [(MATERIAL, material.slug)].into_iter().chain(steel))
}
