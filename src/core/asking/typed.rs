//! One field as typed, and reading it.

use std::fmt::Display;

use super::error::{FieldError, quoted, sentence};
use super::word::Word;
use crate::units::Length;
use crate::units::read::{self, Bare};

/// One field as typed.
#[derive(Clone, Copy, Debug)]
pub struct Typed<'a> {
    /// Its name in the address.
    pub field: &'static str,
    /// What was typed, trimmed.
    pub text: &'a str,
}

impl Typed<'_> {
    /// An error at this field.
    pub fn error(self, message: impl Into<String>) -> FieldError {
        FieldError::new(self.field, message)
    }

    /// What a reader makes of it.
    ///
    /// # Errors
    /// The reader's, as a sentence.
    pub fn read<T, E: Display>(
        self,
        reader: impl FnOnce(&str) -> Result<T, E>,
    ) -> Result<T, FieldError> {
        reader(self.text).map_err(|error| self.error(sentence(&error.to_string())))
    }

    /// What a reader makes of it; nothing where nothing was typed.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn optional<T, E: Display>(
        self,
        reader: impl FnOnce(&str) -> Result<T, E>,
    ) -> Result<Option<T>, FieldError> {
        if self.text.is_empty() { Ok(None) } else { self.read(reader).map(Some) }
    }

    /// A length; a bare number is millimetres.
    ///
    /// # Errors
    /// It is none.
    pub fn length(self) -> Result<Option<Length>, FieldError> {
        self.optional(|text| read::length(text, Bare::Mm))
    }

    /// One of a few words; nothing typed is the default.
    ///
    /// # Errors
    /// It is none of them.
    pub fn one_of<T: Copy + Default>(self, words: &[Word<T>]) -> Result<T, FieldError> {
        if self.text.is_empty() {
            return Ok(T::default());
        }
        let found = words.iter().find(|word| word.slug.eq_ignore_ascii_case(self.text));
        found.map(|word| word.value).ok_or_else(|| {
            let choices: Vec<&str> = words.iter().map(|word| word.slug).collect();
            let choices = choices.join(" or ");
            self.error(format!("{} is not one of the choices. Write {choices}.", quoted(self.text)))
        })
    }
}

/// What a field holds, or its error kept with the others.
pub fn keep<T: Default>(errors: &mut Vec<FieldError>, read: Result<T, FieldError>) -> T {
    read.unwrap_or_else(|error| {
        errors.push(error);
        T::default()
    })
}
