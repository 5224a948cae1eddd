//! What was wrong with a field of a form, in words that help.

use crate::tables::materials::{self, Material};
use crate::tables::threads::{self, Thread};

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
    /// An error without choices.
    pub(super) fn new(field: &'static str, message: impl Into<String>) -> Self {
        Self { field, message: message.into(), choices: Vec::new() }
    }
}

/// The threads that could be meant, as choices.
pub(super) fn thread_choices(error: &threads::read::ReadError) -> Vec<Choice> {
    use threads::read::ReadError;
    let threads = match error {
        ReadError::Ambiguous { candidates, .. } => candidates.as_slice(),
        ReadError::Unknown { nearest, .. } => nearest.as_slice(),
        _ => &[],
    };
    let choice = |thread: &&Thread| Choice {
        value: thread.designation.to_owned(),
        words: thread.designation.to_owned(),
    };
    threads.iter().map(choice).collect()
}

/// The materials that could be meant, as choices.
pub(super) fn material_choices(error: &materials::read::ReadError) -> Vec<Choice> {
    use materials::read::ReadError;
    let (ReadError::Ambiguous { candidates: materials, .. }
    | ReadError::Unknown { nearest: materials, .. }) = error;
    let choice = |material: &&Material| Choice {
        value: material.slug.to_owned(),
        words: sentence_case(material.name),
    };
    materials.iter().map(choice).collect()
}

/// A whole sentence: a capital at its front, a full stop at its end.
pub(super) fn sentence(words: &str) -> String {
    let stop = if words.ends_with(['.', '?']) { "" } else { "." };
    format!("{}{stop}", sentence_case(words))
}

/// A name with a capital at its front, to stand at the head of a line.
pub(super) fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// What was typed, short enough to quote back: nobody needs two thousand characters returned in a sentence.
pub(super) fn quoted(typed: &str) -> String {
    const LONGEST: usize = 40;
    if typed.chars().count() > LONGEST {
        let start: String = typed.chars().take(LONGEST).collect();
        format!("“{start}…”")
    } else {
        format!("“{typed}”")
    }
}
