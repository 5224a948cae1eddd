//! One field as typed, and reading it.

use std::fmt::Display;

use super::FieldError;
use super::controls::Word;
use super::form::{quoted, sentence};
use holewright_core::units::Length;
use holewright_core::units::read::{self, Bare};

/// One field as typed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Typed<'a> {
    pub(super) field: &'static str,
    pub(super) text: &'a str,
}

impl Typed<'_> {
    /// An error at this field.
    pub(super) fn error(self, message: impl Into<String>) -> FieldError {
        FieldError::new(self.field, message)
    }

    /// What a reader makes of it; nothing where nothing was typed.
    pub(super) fn optional<T, E: Display>(
        self,
        reader: impl FnOnce(&str) -> Result<T, E>,
    ) -> Result<Option<T>, FieldError> {
        if self.text.is_empty() {
            return Ok(None);
        }
        reader(self.text).map(Some).map_err(|error| self.error(sentence(&error.to_string())))
    }

    /// A length; a bare number is millimetres.
    pub(super) fn length(self) -> Result<Option<Length>, FieldError> {
        self.optional(|text| read::length(text, Bare::Mm))
    }

    /// One of a few words; nothing typed is the default.
    pub(super) fn one_of<T: Copy + Default>(self, words: &[Word<T>]) -> Result<T, FieldError> {
        if self.text.is_empty() {
            return Ok(T::default());
        }
        let found = words.iter().find(|word| word.slug.eq_ignore_ascii_case(self.text));
        found.map(|word| word.value).ok_or_else(|| {
            let choices: Vec<&str> = words.iter().map(|word| word.slug).collect();
            let choices = choices.join(" or ");
            self.error(format!("{} is no choice here. Write {choices}.", quoted(self.text)))
        })
    }
}

/// What a field holds, or its error kept with the others.
pub(super) fn keep<T: Default>(errors: &mut Vec<FieldError>, read: Result<T, FieldError>) -> T {
    read.unwrap_or_else(|error| {
        errors.push(error);
        T::default()
    })
}
