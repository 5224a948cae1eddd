//! The table of materials.

use super::{Cell, Table};
use crate::calc::aim::base_percent;
use crate::tables::materials::{Material, all};
use crate::units::print;

/// Every material, with the engagement to aim for.
#[must_use]
pub fn list() -> Table {
    let row = |material: &Material| {
        let marks: Vec<&str> =
            material.designations.iter().map(|designation| designation.mark).collect();
        vec![
            Cell::text(material.slug),
            Cell::text(material.name),
            Cell::number(print::trimmed(base_percent(material.group), 0)),
            Cell::text(marks.join(", ")),
            Cell::text(material.group.to_string()),
        ]
    };
    Table {
        columns: &["material", "name", "aim_percent", "designations", "group"],
        rows: all().iter().map(row).collect(),
    }
}
