//! A link with its words.

use super::form::sentence_case;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;

/// A link with its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Link {
    pub(super) address: String,
    pub(super) words: String,
}

impl Link {
    /// A link.
    pub(super) fn new(address: impl Into<String>, words: impl Into<String>) -> Self {
        Self { address: address.into(), words: words.into() }
    }

    /// To a thread's page.
    pub(super) fn thread(thread: &Thread) -> Self {
        Self::new(thread.path(), thread.designation)
    }

    /// To a drill's page.
    pub(super) fn drill(drill: &Drill) -> Self {
        Self::new(drill.path(), drill.label.clone())
    }

    /// To a material's page.
    pub(super) fn material(material: &Material) -> Self {
        Self::new(material.path(), sentence_case(material.name))
    }
}
