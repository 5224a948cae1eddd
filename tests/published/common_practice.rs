//! Habits of the trade that no source prints, replayed as such.

use crate::replay::{Family, Kind, Row};
use crate::{drill, size, tapping};

pub(crate) const FAMILIES: &[Family] = &[Family {
    file: "common_practice.csv",
    context: &["thread", "drill"],
    unused: &[],
    replay: engagement,
}];

/// A tapping size every club wall has: the drill exists, and leaves this much thread.
fn engagement(row: &mut Row) {
    let size = size::ba(row.text("thread"));
    let thread = size::thread(row, &size);
    let name = drill::name(row.text("drill"));
    if let Some(drill) = drill::held(row, &name) {
        row.check("percent", Kind::Formula, tapping::engagement(&thread, drill.diameter));
    }
}
