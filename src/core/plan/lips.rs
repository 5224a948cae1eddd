//! How the lips of a drill are ground for what it goes through.
//!
//! # Source
//! Common practice, no source.

use super::Lips;
use super::drilling::Metals;
use crate::tables::materials::{Family, Material};

/// What the drill meets.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Into {
    /// The solid.
    Solid,
    /// A hole that is there, which it opens.
    Hole,
}

/// A metal that a dubbed drill drags in, or hardens where it rubs.
fn wants_keen(material: &Material, into: Into) -> bool {
    let hardens = material.work_hardens && (into == Into::Solid || !material.grabs);
    material.family == Family::Copper && !material.grabs || hardens
}

/// A metal that a dubbed drill cuts badly, though it does not harden.
const fn is_steel(material: &Material) -> bool {
    matches!(material.family, Family::Steel | Family::Stainless | Family::Nickel | Family::Titanium)
}

/// The metal of these that wants keen lips. Beside one that grabs steel does too: held down, keen lips are
/// the safer.
fn keen_for(metals: Metals, into: Into) -> Option<&'static Material> {
    let steel = || metals.each().filter(|_| metals.grab()).find(|metal| is_steel(metal));
    metals.each().find(|material| wants_keen(material, into)).or_else(steel)
}

/// The lips for these metals; none where the drill serves as it comes.
pub(super) fn lips(metals: Metals, into: Into) -> Option<Lips> {
    if keen_for(metals, into).is_some() {
        return Some(Lips::Keen);
    }
    metals.grab().then_some(Lips::Dubbed)
}

/// The sentence for the step, with a space before it; empty where there is nothing to say.
pub(super) fn words(metals: Metals, into: Into) -> String {
    let keen = keen_for(metals, into);
    let grabbing = metals.each().find(|material| material.grabs);
    match (keen, grabbing, into) {
        (Some(keen), Some(grabbing), _) if keen.slug != grabbing.slug => format!(
            " Keep the drill's lips keen for the {}; hold the work down, and hold the drill back in the {}, which may grab.",
            keen.name, grabbing.name
        ),
        (Some(keen), None, _) if keen.family == Family::Copper => {
            format!(" Use a drill with keen lips: {} drags on a blunt edge.", keen.name)
        }
        (Some(_), ..) | (None, None, _) => String::new(),
        (None, Some(grabbing), Into::Solid) => {
            format!(" Dub the drill's lips (a small flat on each edge): {} grabs.", grabbing.name)
        }
        (None, Some(grabbing), Into::Hole) => format!(
            " Dub the drill's lips and hold the part down: {} grabs a drill that opens a hole.",
            grabbing.name
        ),
    }
}
