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
    told_and_marked(work).0
}

/// The word of what is told beside a note; none of what its material's page says.
pub(super) const fn mark(work: Work) -> Option<&'static str> {
    told_and_marked(work).1
}

/// How it is told, and the word for it in a list.
const fn told_and_marked(work: Work) -> (Told, Option<&'static str>) {
    match work {
        Work::Fire | Work::Shuns(_) => (Told::AtOnce, Some("fire")),
        Work::Fume => (Told::AtOnce, Some("fume")),
        Work::Dust | Work::Stock => (Told::InWords, Some("dust")),
        Work::Lead => (Told::InALine, Some("lead")),
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
        | Work::Background => (Told::OnItsPage, None),
    }
}

#[cfg(test)]
#[test]
fn what_burns_or_poisons_is_told_beside_a_note_and_nothing_else() {
    use holewright_core::tables::materials;
    for danger in materials::all().iter().flat_map(|material| material.dangers) {
        let is_told = told(danger.work) != Told::OnItsPage;
        assert_eq!(is_told, danger.work.burns_or_poisons(), "{:?}", danger.work);
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
