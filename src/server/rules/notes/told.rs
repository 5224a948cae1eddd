//! How each danger of a material is told beside a note: by the work in which it harms.

use holewright_core::tables::materials::{Caution, Material, Work};

/// How a danger is told beside a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Told {
    /// In words, and at the head of the note: it burns, or gives off fume, while it is cut.
    AtOnce,
    /// In words: it harms whoever breathes it, wherever the material is cut.
    InWords,
    /// In a line below: it harms whoever takes it in for years.
    InALine,
    /// That the material's page says more.
    OnItsPage,
}

/// How what harms in this work is told.
pub(super) const fn told(work: Work) -> Told {
    match work {
        Work::Fire | Work::Fume | Work::Shuns(_) => Told::AtOnce,
        Work::Dust | Work::Stock => Told::InWords,
        Work::Lead => Told::InALine,
        Work::MarkingOut
        | Work::Popping
        | Work::Drilling
        | Work::BreakThrough
        | Work::OpeningOut
        | Work::Clearing
        | Work::WideDrilling
        | Work::Threads
        | Work::Tapping
        | Work::Edges
        | Work::Screwing
        | Work::Lubrication
        | Work::Paraffin
        | Work::Fluid
        | Work::Swarf
        | Work::Hands
        | Work::Holding
        | Work::Reckoned
        | Work::Design
        | Work::Service
        | Work::Heat
        | Work::Grinding
        | Work::OtherCuts
        | Work::Background => Told::OnItsPage,
    }
}

/// The word of what is told beside a note; none of what its material's page says.
pub(super) const fn mark(work: Work) -> Option<&'static str> {
    match told(work) {
        Told::AtOnce => Some(if matches!(work, Work::Fume) { "fume" } else { "fire" }),
        Told::InWords => Some("dust"),
        Told::InALine => Some("lead"),
        Told::OnItsPage => None,
    }
}

/// Whether a material burns or gives off fume while it is cut, or is not to be worked at all.
pub(super) fn harms_at_once(material: &Material) -> bool {
    material.refused.is_some() || as_told(material, Told::AtOnce).next().is_some()
}

/// Its dangers that are told so.
pub(super) fn as_told(material: &Material, wanted: Told) -> impl Iterator<Item = &Caution> {
    material.dangers.iter().filter(move |danger| told(danger.work) == wanted)
}
