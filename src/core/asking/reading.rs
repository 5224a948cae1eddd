//! Reading what was asked, field by field: every error is kept, so that all are shown at once.

use super::field::{AnyField, Field, Need};
use super::{Asked, FieldError, Typed};

/// What was asked, while it is read.
#[derive(Debug)]
pub struct Reading<'a> {
    asked: &'a Asked,
    errors: Vec<FieldError>,
}

impl<'a> Reading<'a> {
    /// Begins to read.
    #[must_use]
    pub const fn of(asked: &'a Asked) -> Self {
        Self { asked, errors: Vec::new() }
    }

    /// What was typed in a field; empty where nothing was. A field that the question does not have is
    /// an error: what is read has to be declared.
    pub fn typed<T: Clone + Sync>(&mut self, field: &Field<T>) -> Typed<'a> {
        let name = field.about().name;
        let typed = Typed { field: name, text: self.asked.typed(name) };
        if !self.asked.has(name) {
            self.errors.push(typed.error("This is read, and is no field of this question."));
        }
        typed
    }

    /// What a field holds, or its usual value; none where it is open, empty or in error.
    pub fn optional<T: Clone + Sync>(&mut self, field: &Field<T>) -> Option<T> {
        let typed = self.typed(field);
        let typed = match (typed.text, field.about().need) {
            ("", Need::Usually(text)) => Typed { text, ..typed },
            _ => typed,
        };
        if typed.text.is_empty() { None } else { self.keep(field.value(typed)) }
    }

    /// What a field holds; where it is empty, what to write is kept as its error.
    pub fn required<T: Clone + Sync>(&mut self, field: &Field<T>) -> Option<T> {
        if let Need::Always(message) = field.about().need
            && self.typed(field).text.is_empty()
        {
            self.errors.push(field.error(message));
            return None;
        }
        self.optional(field)
    }

    /// What a field holds, or what its kind begins with.
    pub fn or_default<T: Clone + Sync + Default>(&mut self, field: &Field<T>) -> T {
        self.optional(field).unwrap_or_default()
    }

    /// What was read; an error is kept with the others.
    pub fn keep<T>(&mut self, read: Result<T, FieldError>) -> Option<T> {
        read.map_err(|error| self.errors.push(error)).ok()
    }

    /// Keeps an error.
    pub fn refuse(&mut self, error: FieldError) {
        self.errors.push(error);
    }

    /// No error was found so far.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        self.errors.is_empty()
    }

    /// What was made of the fields, unless one was in error.
    ///
    /// # Errors
    /// All that were found.
    pub fn answered<A>(self, answer: Option<A>) -> Result<A, Vec<FieldError>> {
        match answer {
            Some(answer) if self.errors.is_empty() => Ok(answer),
            _ => Err(self.errors),
        }
    }
}
