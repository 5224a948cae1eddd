//! A named figure of a plan, with its other unit beside it.

use crate::figures::Both;

/// A named figure of a step.
#[derive(Clone)]
pub(super) struct Figure {
    pub(super) name: &'static str,
    pub(super) value: String,
    /// The same in the other unit.
    pub(super) other: Option<String>,
}

impl Figure {
    /// A figure with one value.
    pub(super) fn one(name: &'static str, value: impl Into<String>) -> Self {
        Self { name, value: value.into(), other: None }
    }

    /// A length in both units.
    pub(super) fn both(name: &'static str, both: Both) -> Self {
        Self { name, value: both.mm, other: Some(both.inch) }
    }
}
