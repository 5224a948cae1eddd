//! What was typed in each field of one question, kept as typed.

use super::{FieldError, Typed, cut, is_carried};

/// The fields of a question by their names in the address, in order, and what was typed in them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asked {
    typed: Vec<(&'static str, String)>,
}

impl Asked {
    /// What was typed in the fields of these names; the first filling of a name counts, and other
    /// names are left alone.
    pub fn new<'a>(
        names: impl IntoIterator<Item = &'static str>,
        pairs: impl IntoIterator<Item = (&'a str, &'a str)> + Clone,
    ) -> Self {
        let text = |name| {
            let mut held = pairs.clone().into_iter().map(|(held, text)| (held, text.trim()));
            held.find(|(held, text)| *held == name && !text.is_empty())
                .map_or_else(String::new, |(_, text)| cut(name, text).to_owned())
        };
        Self { typed: names.into_iter().map(|name| (name, text(name))).collect() }
    }

    /// Whether there is such a field.
    #[must_use]
    pub fn has(&self, field: &str) -> bool {
        self.typed.iter().any(|(name, _)| *name == field)
    }

    /// What was typed in a field, trimmed; empty where nothing was.
    #[must_use]
    pub fn typed(&self, field: &str) -> &str {
        self.typed.iter().find(|(name, _)| *name == field).map_or("", |(_, text)| text)
    }

    /// The fields that were filled, in order, with what was typed.
    pub fn filled(&self) -> impl Iterator<Item = (&str, &str)> {
        let held = self.typed.iter().map(|(name, text)| (*name, text.as_str()));
        held.filter(|(_, text)| !text.is_empty())
    }

    /// The same with one field filled otherwise.
    #[must_use]
    pub fn with(&self, field: &str, value: &str) -> Self {
        let fill = |(name, text): &(&'static str, String)| {
            (*name, if *name == field { value.to_owned() } else { text.clone() })
        };
        Self { typed: self.typed.iter().map(fill).collect() }
    }

    /// The same without what a link is not to carry.
    #[must_use]
    pub fn carried(&self, errors: &[FieldError]) -> Self {
        let carry = |(name, text): &(&'static str, String)| {
            let is_carried = is_carried(errors, Typed { field: name, text });
            (*name, if is_carried { text.clone() } else { String::new() })
        };
        Self { typed: self.typed.iter().map(carry).collect() }
    }
}
