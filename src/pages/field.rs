//! One field of a form as a template shows it: label, hint, what was typed, what was wrong with it.

use std::borrow::Cow;

use askama::Template;

use super::FieldError;
use super::link::Link;

/// One field; shown in a page with `{{ field|safe }}`, since it escapes what it holds itself.
#[derive(Clone, Debug, Template)]
#[template(path = "partials/field.html")]
pub struct Field {
    /// Its name in the address and its id on the page.
    pub name: &'static str,
    /// What it asks for.
    pub label: &'static str,
    /// What may be typed, below the label; empty for none.
    pub hint: Cow<'static, str>,
    /// The control, with what was typed.
    pub kind: Kind,
    /// What was wrong with it.
    pub error: Option<Trouble>,
    /// What a browser offers in a line of text while it is typed.
    pub offered: Vec<String>,
}

/// What sort of control it is.
#[derive(Clone, Debug)]
pub enum Kind {
    /// A line of text, as typed.
    Text(String),
    /// A line of ordinary words, which a browser may look over for spelling: as typed.
    Words(String),
    /// A line of text of a kind that browsers fill in by themselves: as typed, and its kind.
    Familiar(String, &'static str),
    /// A password of a kind that password managers know. It is never shown again.
    Secret(&'static str),
    /// Several lines of text, as typed.
    Long(String),
    /// Known already, and sent along unseen.
    Known(String),
    /// A list to choose one from.
    List(Vec<Item>),
    /// A list to choose one from: items that stand alone, then items under headings.
    Grouped(Vec<Item>, Vec<Group>),
    /// A few choices side by side, one of them taken.
    Pick(Vec<Item>),
    /// A few choices side by side, any of them taken.
    Ticks(Vec<Item>),
}

/// One item of a choice.
#[derive(Clone, Debug)]
pub struct Item {
    /// What it adds to the address.
    pub value: Cow<'static, str>,
    /// What a reader sees.
    pub words: Cow<'static, str>,
    /// Whether it is the one chosen.
    pub taken: bool,
}

/// Items of a list under their heading.
#[derive(Clone, Debug)]
pub struct Group {
    /// What they have in common.
    pub heading: String,
    /// The items, in order.
    pub items: Vec<Item>,
}

/// The errors for the summary of a page: one that two fields share is said once, and leads to the first.
#[must_use]
pub fn each_once(errors: &[FieldError]) -> Vec<&FieldError> {
    let mut once: Vec<&FieldError> = Vec::new();
    for error in errors {
        if once.iter().all(|held| held.message != error.message) {
            once.push(error);
        }
    }
    once
}

/// What was wrong, and what could be meant.
#[derive(Clone, Debug)]
pub struct Trouble {
    /// What is wrong and what is accepted.
    pub message: String,
    /// Addresses with another value in the field.
    pub choices: Vec<Link>,
}

impl Field {
    /// A line of text.
    pub fn text(
        name: &'static str,
        label: &'static str,
        hint: impl Into<Cow<'static, str>>,
        typed: &str,
    ) -> Self {
        Self::new(name, label, hint, Kind::Text(typed.to_owned()))
    }

    /// The same field, but known already and so not asked for.
    pub fn known(self) -> Self {
        let taken = |mut items: Vec<Item>| {
            items.retain(|item| item.taken);
            items.pop().map_or_else(String::new, |item| item.value.into_owned())
        };
        let known = match self.kind {
            Kind::Text(typed) | Kind::Words(typed) => typed,
            Kind::List(items) => taken(items),
            Kind::Grouped(mut items, groups) => {
                items.extend(groups.into_iter().flat_map(|group| group.items));
                taken(items)
            }
            _ => return self,
        };
        Self { kind: Kind::Known(known), ..self }
    }

    /// A field without an error.
    pub fn new(
        name: &'static str,
        label: &'static str,
        hint: impl Into<Cow<'static, str>>,
        kind: Kind,
    ) -> Self {
        Self { name, label, hint: hint.into(), kind, error: None, offered: Vec::new() }
    }

    /// The same line of text, in which these are offered.
    #[must_use]
    pub fn offering(self, offered: Vec<String>) -> Self {
        Self { offered, ..self }
    }

    /// The field with its error, if it has one among these; `fill` makes the address that puts a choice in the field.
    pub fn judged(mut self, errors: &[FieldError], fill: impl Fn(&str, &str) -> String) -> Self {
        let found = errors.iter().find(|error| error.field == self.name);
        self.error = found.map(|error| Trouble {
            message: error.message.clone(),
            choices: error
                .choices
                .iter()
                .map(|choice| Link::new(fill(self.name, &choice.value), choice.words.clone()))
                .collect(),
        });
        self
    }

    /// The ids of what describes the control, for assistive technology.
    pub fn described_by(&self) -> Option<String> {
        let name = self.name;
        match (self.hint.is_empty(), self.error.is_some()) {
            (true, false) => None,
            (true, true) => Some(format!("{name}-error")),
            (false, false) => Some(format!("{name}-hint")),
            (false, true) => Some(format!("{name}-error {name}-hint")),
        }
    }
}

/// Items of their values, their words, and whether each is taken.
pub fn items<V, W>(choices: impl IntoIterator<Item = (V, W, bool)>) -> Vec<Item>
where
    V: Into<Cow<'static, str>>,
    W: Into<Cow<'static, str>>,
{
    let item = |(value, words, taken): (V, W, bool)| Item {
        value: value.into(),
        words: words.into(),
        taken,
    };
    choices.into_iter().map(item).collect()
}
