//! What a table of tapping sizes is for: a material, or the usual group.

use crate::calc::Error;
use crate::calc::aim::{Aim, MIDDLE_GROUP, base_percent};
use crate::calc::tapping::{DrillChoice, Question, choose, usual};
use crate::tables::drills;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;

/// What is tapped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TappedIn {
    /// No material was named: the middle of the aims, grey iron and gunmetal.
    UsualGroup,
    /// The material named.
    Material(&'static Material),
}

impl TappedIn {
    /// The drill to take for a thread, out of every drill of every series.
    ///
    /// # Errors
    /// As [`choose`].
    pub fn choice(self, thread: &'static Thread) -> Result<DrillChoice, Error> {
        match self {
            Self::UsualGroup => usual(thread, MIDDLE_GROUP),
            Self::Material(material) => {
                let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
                choose(question, drills::all())
            }
        }
    }

    /// The aim before what a thread's size makes of it, percent.
    #[must_use]
    pub fn aim_percent(self) -> f64 {
        match self {
            Self::UsualGroup => base_percent(MIDDLE_GROUP),
            Self::Material(material) => base_percent(material.group),
        }
    }

    /// In a sentence: `grey iron and gunmetal`, `silver steel`.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::UsualGroup => MIDDLE_GROUP.to_string(),
            Self::Material(material) => material.name.to_owned(),
        }
    }

    /// As an address writes it; empty for the usual group.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::UsualGroup => "",
            Self::Material(material) => material.slug,
        }
    }
}
