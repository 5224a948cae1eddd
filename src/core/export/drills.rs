//! The drill tables: a chart, and the drills nearest to one.

use super::{Cell, Table};
use crate::calc::neighbours::{Neighbour, around};
use crate::tables::drills::Drill;
use crate::units::{in_inch, in_mm, print};

/// These drills.
#[must_use]
pub fn chart(drills: impl IntoIterator<Item = &'static Drill>) -> Table {
    let row = |drill: &'static Drill| {
        vec![
            Cell::text(drill.series.slug()),
            Cell::text(drill.size.as_str()),
            Cell::text(drill.label.as_str()),
            Cell::mm(drill.diameter),
            Cell::inch(drill.diameter),
        ]
    };
    Table {
        columns: &["series", "size", "drill", "diameter_mm", "diameter_in"],
        rows: drills.into_iter().map(row).collect(),
    }
}

/// The nearest drills each way, in every series.
#[must_use]
pub fn nearest(drill: &Drill) -> Table {
    let row = |near: Neighbour| {
        vec![
            Cell::text(near.drill.series.slug()),
            Cell::text(near.drill.size.as_str()),
            Cell::text(near.drill.label.as_str()),
            Cell::mm(near.drill.diameter),
            Cell::number(print::fixed(in_mm(near.error), 3)),
            Cell::number(print::fixed(in_inch(near.error) * 1000.0, 1)),
        ]
    };
    let near = around(drill).into_iter().flat_map(|found| [found.below, found.above]).flatten();
    Table {
        columns: &["series", "size", "drill", "diameter_mm", "larger_by_mm", "larger_by_thou"],
        rows: near.map(row).collect(),
    }
}
