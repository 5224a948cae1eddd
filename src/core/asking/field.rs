//! One field, declared once for pages, addresses, JSON and its description.

use std::borrow::Cow;

use super::limits::Limits;
use super::typed::Typed;
use super::word::Word;
use super::{Asked, FieldError, Taken, error::quoted, too_long};
use crate::units::read::{self, Bare};
use crate::units::{Angle, Length, in_degrees, in_mm};

/// How a page asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Control {
    /// A line of text.
    Text,
    /// A few words side by side, the first being the usual.
    Pick,
    /// A list of words, the first being the usual.
    List,
    /// A list of words that may be left alone, with the line that says so.
    OpenList(&'static str),
    /// A list of the metals, with the line for none of them.
    Metal(&'static str),
    /// The drill series, any of them ticked.
    Series,
}

/// What an empty field means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// There is no answer without it; what to say then.
    Always(&'static str),
    /// The same as if this were typed.
    Usually(&'static str),
    /// Nothing, or what the calculator says.
    Open,
}

/// What a field says about itself.
#[derive(Clone, Copy, Debug)]
pub struct About {
    /// Its name in the address, which is a promise.
    pub name: &'static str,
    /// What it asks for, on a page.
    pub label: &'static str,
    /// What may be typed; what an empty field means is added to it.
    pub hint: &'static str,
    /// What it is, for a program.
    pub description: &'static str,
    /// Something that is taken.
    pub example: &'static str,
    /// What an empty field means.
    pub need: Need,
    /// The least and the most.
    pub limits: Limits,
}

impl About {
    /// What may be typed, and what an empty field means.
    #[must_use]
    pub fn hint(&self) -> Cow<'static, str> {
        match (self.need, self.hint) {
            (Need::Usually(usual), "") => format!("{usual} if left empty").into(),
            (Need::Usually(usual), hint) => format!("{hint}; {usual} if left empty").into(),
            (Need::Always(_) | Need::Open, hint) => hint.into(),
        }
    }
}

/// A field and how it is read.
#[derive(Debug)]
pub struct Field<T: 'static> {
    about: About,
    control: Control,
    words: &'static [Word<T>],
    /// What was typed, where it is none of the words.
    read: fn(Typed<'_>) -> Result<T, FieldError>,
    /// The figure that the limits are for.
    figure: fn(&T) -> f64,
    /// What it was taken for, where its text could mean something else too.
    taken: fn(Typed<'_>, &Asked) -> Option<Taken>,
}

impl<T: Clone + Sync> Field<T> {
    /// A field that is read like this.
    pub const fn new(about: About, read: fn(Typed<'_>) -> Result<T, FieldError>) -> Self {
        Self {
            about,
            control: Control::Text,
            words: &[],
            read,
            figure: |_| 0.0,
            taken: |_, _| None,
        }
    }

    /// A choice of a few words.
    pub const fn words(about: About, control: Control, words: &'static [Word<T>]) -> Self {
        Self { control, words, ..Self::new(about, |typed| Err(typed.error(""))) }
    }

    /// The same field, asked for like this.
    #[must_use]
    pub const fn with_control(self, control: Control) -> Self {
        Self { control, ..self }
    }

    /// The same field, with the figure that its limits are for.
    #[must_use]
    pub const fn measured(self, figure: fn(&T) -> f64) -> Self {
        Self { figure, ..self }
    }

    /// The same field, which says what it was taken for where its text could mean something else too.
    #[must_use]
    pub const fn taking(self, taken: fn(Typed<'_>, &Asked) -> Option<Taken>) -> Self {
        Self { taken, ..self }
    }

    /// The same field, which has something of its own to say of what is none of its words.
    #[must_use]
    pub const fn or(self, read: fn(Typed<'_>) -> Result<T, FieldError>) -> Self {
        Self { read, ..self }
    }

    /// The error at this field.
    pub fn error(&self, message: impl Into<String>) -> FieldError {
        FieldError::new(self.about.name, message)
    }

    /// What a filled field holds.
    pub(super) fn value(&self, typed: Typed<'_>) -> Result<T, FieldError> {
        if let Some(error) = too_long(typed) {
            return Err(error);
        }
        let named = self.words.iter().find(|word| word.slug.eq_ignore_ascii_case(typed.text));
        if let Some(word) = named {
            return Ok(word.value.clone());
        }
        let value = (self.read)(typed).map_err(|error| self.or_what_is_taken(error, typed))?;
        match self.about.limits.refusal((self.figure)(&value), typed.text) {
            None => Ok(value),
            Some(message) => Err(typed.error(message)),
        }
    }

    /// Where its reader says no more than no, what is taken: the limits, or the few words.
    fn or_what_is_taken(&self, error: FieldError, typed: Typed<'_>) -> FieldError {
        if !error.message.is_empty() {
            return error;
        }
        if self.words.is_empty() {
            let taken = self.about.limits.what_is_taken(typed.text);
            return taken.map_or(error, |message| typed.error(message));
        }
        let slugs: Vec<&str> = self.words.iter().map(|word| word.slug).collect();
        let slugs = slugs.join(" or ");
        typed.error(format!("{} is not one of the choices. Write {slugs}.", quoted(typed.text)))
    }
}

impl Field<Length> {
    /// A length; a bare number is millimetres.
    pub const fn length(about: About) -> Self {
        Self::new(about, |typed| typed.read(|text| read::length(text, Bare::Mm)))
            .measured(|it| in_mm(*it))
    }
}

impl Field<u8> {
    /// A count of things, with its limits.
    pub const fn count(about: About) -> Self {
        Self::new(about, |typed| typed.text.parse().map_err(|_| typed.error("")))
            .measured(|count| f64::from(*count))
    }
}

impl Field<Angle> {
    /// An angle in degrees.
    pub const fn angle(about: About) -> Self {
        Self::new(about, |typed| typed.read(read::angle)).measured(|it| in_degrees(*it))
    }
}

/// A field of any kind, as far as forms and descriptions go.
pub trait AnyField: Sync {
    /// What it says about itself.
    fn about(&self) -> &About;
    /// How a page asks for it.
    fn control(&self) -> Control;
    /// Its words in addresses, and as a person reads them.
    fn choices(&self) -> Vec<(&'static str, &'static str)>;
    /// Whether this would be taken in it.
    ///
    /// # Errors
    /// What is wrong with it.
    fn check(&self, text: &str) -> Result<(), FieldError>;
    /// What it was taken for in a question, where its text could mean something else too.
    fn taken(&self, asked: &Asked) -> Option<Taken>;
}

impl<T: Clone + Sync> AnyField for Field<T> {
    fn about(&self) -> &About {
        &self.about
    }

    fn control(&self) -> Control {
        self.control
    }

    fn choices(&self) -> Vec<(&'static str, &'static str)> {
        self.words.iter().map(|word| (word.slug, word.words)).collect()
    }

    fn check(&self, text: &str) -> Result<(), FieldError> {
        self.value(Typed { field: self.about.name, text }).map(drop)
    }

    fn taken(&self, asked: &Asked) -> Option<Taken> {
        let text = asked.typed(self.about.name);
        (self.taken)(Typed { field: self.about.name, text }, asked)
    }
}
