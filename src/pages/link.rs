//! A link with its words.

use super::form::sentence_case;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;

/// A link with its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Link {
    pub(crate) address: String,
    pub(crate) words: String,
}

impl Link {
    /// A link.
    pub(crate) fn new(address: impl Into<String>, words: impl Into<String>) -> Self {
        Self { address: address.into(), words: words.into() }
    }

    /// To a thread's page.
    pub(crate) fn thread(thread: &Thread) -> Self {
        Self::new(thread.path(), thread.designation)
    }

    /// To a drill's page.
    pub(crate) fn drill(drill: &Drill) -> Self {
        Self::new(drill.path(), drill.label.clone())
    }

    /// To a material's page.
    pub(crate) fn material(material: &Material) -> Self {
        Self::new(material.path(), sentence_case(material.name))
    }
}
