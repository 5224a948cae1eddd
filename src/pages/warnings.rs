//! Warnings as pages show them: by level, each level with a word, a shape and a rule at the side, so
//! that colour never stands alone.

use super::sentence::set;
use holewright_core::plan::{Level, Warning};

/// The warnings of one level.
pub(crate) struct WarningGroup<T = String> {
    /// The class that draws the rule at the side.
    pub(crate) class: &'static str,
    pub(crate) word: &'static str,
    /// A path in a box of 16: a ring, a triangle, an octagon.
    pub(crate) shape: &'static str,
    pub(crate) items: Vec<T>,
}

/// One caution in a line of its own.
pub(crate) struct Said {
    /// The class that draws the rule at the side.
    pub(crate) class: &'static str,
    pub(crate) word: &'static str,
    /// As for a group.
    pub(crate) shape: &'static str,
    pub(crate) text: String,
}

impl Said {
    /// A caution of a plan.
    pub(crate) fn of(warning: &Warning) -> Self {
        let (word, shape) = mark(warning.level);
        let text = set(&warning.text);
        Self { class: warning.level.slug(), word, shape, text }
    }
}

/// Warnings by level, worst first.
pub(crate) fn by_level<T>(warnings: impl IntoIterator<Item = (Level, T)>) -> Vec<WarningGroup<T>> {
    let mut groups = [Level::Danger, Level::Caution, Level::Note].map(group::<T>);
    for (level, item) in warnings {
        if let Some(group) = groups.iter_mut().find(|group| group.class == level.slug()) {
            group.items.push(item);
        }
    }
    groups.into_iter().filter(|group| !group.items.is_empty()).collect()
}

const fn group<T>(level: Level) -> WarningGroup<T> {
    let (word, shape) = mark(level);
    WarningGroup { class: level.slug(), word, shape, items: Vec::new() }
}

/// The word of a level, and the shape before it.
const fn mark(level: Level) -> (&'static str, &'static str) {
    match level {
        Level::Note => ("Note", "M8 1.5a6.5 6.5 0 1 0 .001 0zM8 7v5M8 4v1.5"),
        Level::Caution => ("Caution", "M8 1.5 15 14.5H1zM8 6v4.5M8 12v1"),
        Level::Danger => ("Danger", "M5 1h6l4 4v6l-4 4H5l-4-4V5zM8 4v5M8 11v1.5"),
    }
}
