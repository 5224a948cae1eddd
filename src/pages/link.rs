//! A link with its words.

use holewright_core::tables::drills::Drill;
use holewright_core::tables::materials::Material;
use holewright_core::tables::threads::Thread;
use holewright_core::units::print::sentence as sentence_case;

/// A link with its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// Where it leads.
    pub address: String,
    /// What a reader sees.
    pub words: String,
}

impl Link {
    /// A link.
    pub fn new(address: impl Into<String>, words: impl Into<String>) -> Self {
        Self { address: address.into(), words: words.into() }
    }

    /// To a thread's page.
    pub fn thread(thread: &Thread) -> Self {
        Self::new(thread.path(), thread.designation)
    }

    /// To a drill's page.
    pub fn drill(drill: &Drill) -> Self {
        Self::new(drill.path(), drill.label.clone())
    }

    /// To a material's page.
    pub fn material(material: &Material) -> Self {
        Self::new(material.path(), sentence_case(material.name))
    }
}
