//! The table of materials.

use super::{Cell, Table};
use crate::calc::aim::base_percent;
use crate::tables::materials::{Material, by_family};
use crate::units::print;

/// Every material by family, with the engagement to aim for.
#[must_use]
pub fn list() -> Table {
    let row = |material: &Material| {
        let marks: Vec<&str> =
            material.designations.iter().map(|designation| designation.mark).collect();
        vec![
            Cell::text(material.slug),
            Cell::text(material.name),
            Cell::text(material.family.to_string()),
            match material.refused {
                Some(_) => Cell::text("none"),
                None => Cell::number(print::trimmed(base_percent(material.group), 0)),
            },
            Cell::text(marks.join(", ")),
            Cell::text(material.group.to_string()),
        ]
    };
    Table {
        columns: &["material", "name", "family", "aim_percent", "designations", "group"],
        rows: by_family().iter().flat_map(|(_, kin)| kin).map(|material| row(material)).collect(),
    }
}
