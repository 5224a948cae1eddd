//! What a material is called, and by whom: marks in force, marks withdrawn, marks of other countries.

use crate::key::{Key, Sign};
use holewright_core::tables::materials::{Designation, Material, Validity};

/// The marks of one validity.
pub(super) struct Marks {
    pub(super) heading: &'static str,
    pub(super) items: Vec<Mark>,
}

/// The marks read in one source.
pub(super) struct Mark {
    pub(super) marks: String,
    pub(super) sign: Sign,
}

/// The marks by validity, and in each by source: a source that gives three is named once.
pub(super) fn marks(material: &Material, key: &mut Key) -> Vec<Marks> {
    let groups = [
        ("In force", Validity::Current),
        ("Old, still on drawings", Validity::Old),
        ("Abroad, the same or the nearest", Validity::Abroad),
    ];
    let groups = groups.map(|(heading, validity)| Marks {
        heading,
        items: by_source(material.designations, validity, key),
    });
    groups.into_iter().filter(|group| !group.items.is_empty()).collect()
}

fn by_source(designations: &[Designation], validity: Validity, key: &mut Key) -> Vec<Mark> {
    let mut items: Vec<Mark> = Vec::new();
    for designation in designations.iter().filter(|known| known.validity == validity) {
        let sign = key.sign(designation.source);
        match items.iter_mut().find(|item| item.sign == sign) {
            Some(item) => item.marks = format!("{}, {}", item.marks, designation.mark),
            None => items.push(Mark { marks: designation.mark.to_owned(), sign }),
        }
    }
    items
}
