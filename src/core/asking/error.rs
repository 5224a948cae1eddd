//! What was wrong with a field, in words that help.

use crate::tables::materials::{self, Material};
use crate::tables::threads::{self, Thread};
use crate::units::print;

/// One field that could not be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FieldError {
    /// The field's name in the address: `thread`.
    pub field: &'static str,
    /// What was typed, what is understood there, an example.
    pub message: String,
    /// What could be meant, to choose from.
    pub choices: Vec<Choice>,
}

/// Something that could be meant, as the field would take it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What to put in the field.
    pub value: String,
    /// The words a person reads.
    pub words: String,
}

impl FieldError {
    /// The message with what could be meant behind it, for a door that shows no links.
    #[must_use]
    pub fn in_words(&self) -> String {
        let choices: Vec<&str> = self.choices.iter().map(|choice| choice.words.as_str()).collect();
        match choices.as_slice() {
            [] => self.message.clone(),
            choices => format!("{} Possible here: {}.", self.message, choices.join(", ")),
        }
    }

    /// An error without choices.
    pub fn new(field: &'static str, message: impl Into<String>) -> Self {
        Self { field, message: message.into(), choices: Vec::new() }
    }
}

/// The error of a thread that could not be read, with those that could be meant as choices.
pub fn thread_error(field: &'static str, error: &threads::read::ReadError) -> FieldError {
    use threads::read::ReadError;
    let (message, threads) = match error {
        ReadError::Ambiguous { typed, candidates } => (
            format!(
                "{} could be more than one thread: write the system with the size.",
                quoted(typed)
            ),
            candidates.as_slice(),
        ),
        ReadError::Unknown { nearest, .. } => (error.to_string(), nearest.as_slice()),
        ReadError::Empty | ReadError::TooLong => (error.to_string(), [].as_slice()),
    };
    let choice = |thread: &&Thread| Choice {
        value: thread.designation.to_owned(),
        words: thread.designation.to_owned(),
    };
    FieldError { field, message, choices: threads.iter().map(choice).collect() }
}

/// The materials that could be meant, as choices.
pub fn material_choices(error: &materials::read::ReadError) -> Vec<Choice> {
    use materials::read::ReadError;
    let (ReadError::Ambiguous { candidates: materials, .. }
    | ReadError::Unknown { nearest: materials, .. }) = error;
    let choice = |material: &&Material| Choice {
        value: material.slug.to_owned(),
        words: print::sentence(material.name),
    };
    materials.iter().map(choice).collect()
}

/// A whole sentence: a capital at its front, a full stop at its end.
pub fn sentence(words: &str) -> String {
    let stop = if words.ends_with(['.', '?']) { "" } else { "." };
    format!("{}{stop}", print::sentence(words))
}

/// The most characters that are quoted back: nobody needs two thousand returned in a sentence.
pub(super) const QUOTED: usize = 40;

/// What was typed, short enough to quote back.
pub fn quoted(typed: &str) -> String {
    if typed.chars().count() > QUOTED {
        let start: String = typed.chars().take(QUOTED).collect();
        format!("“{start}…”")
    } else {
        format!("“{typed}”")
    }
}
