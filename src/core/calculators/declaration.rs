//! All that is known of a calculator outside it.

use super::rows::Rows;
use crate::asking::{AnyField, Asked, Need, Taken};

/// One calculator.
pub struct Declaration {
    /// Its part of the address, a promise; dashes may stand in it.
    pub slug: &'static str,
    /// Its name on pages and links.
    pub title: &'static str,
    /// What it answers, in a sentence.
    pub answers: &'static str,
    /// How it is found.
    pub finding: Finding,
    /// What it asks.
    pub form: Form,
    /// What it answers with.
    pub answer: AnswerKind,
}

/// How the finder finds it.
pub struct Finding {
    /// What it is called there.
    pub title: &'static str,
    /// What it answers, in a few words.
    pub why: &'static str,
    /// What it is called outright: a text of just this means it.
    pub names: &'static [&'static str],
    /// Words about it: a text of these may mean it.
    pub words: &'static [&'static str],
}

/// What is asked.
pub struct Form {
    /// The fields in sight, in the order a person thinks.
    pub first: &'static [&'static dyn AnyField],
    /// What the rest is about.
    pub rest_heading: &'static str,
    /// The fields below the fold.
    pub rest: &'static [&'static dyn AnyField],
    /// The page only asks until one of these is sent, filled or not: a form sends all its fields.
    pub begun_by: &'static [&'static dyn AnyField],
    /// The words on the button.
    pub button: &'static str,
}

/// What a calculator answers with. Whoever shows answers matches every one of these.
pub enum AnswerKind {
    /// A few figures, shown alike for all calculators.
    Rows(&'static dyn Rows),
    /// [`super::speeds`]
    Speeds,
    /// [`super::tapping`]
    Tapping,
    /// [`super::clearance`]
    Clearance,
}

impl Declaration {
    /// Its page: `/calculators/speeds`.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/calculators/{}", self.slug)
    }

    /// Every field, in the order of an address.
    pub fn fields(&self) -> impl Iterator<Item = &'static dyn AnyField> + Clone {
        self.form.first.iter().chain(self.form.rest).copied()
    }

    /// What was typed in its fields.
    pub fn asked<'a>(&self, pairs: impl IntoIterator<Item = (&'a str, &'a str)> + Clone) -> Asked {
        Asked::new(self.fields().map(|field| field.about().name), pairs)
    }

    /// What was taken for one thing in a question and could mean another.
    #[must_use]
    pub fn taken(&self, asked: &Asked) -> Vec<Taken> {
        self.fields().filter_map(|field| field.taken(asked)).collect()
    }

    /// Nothing that begins the question was sent, filled or not: the page only asks.
    #[must_use]
    pub fn only_asks(&self, was_sent: impl Fn(&str) -> bool) -> bool {
        !self.form.begun_by.iter().any(|field| was_sent(field.about().name))
    }

    /// A question that is answered: the first field that begins it, and those that must be filled.
    #[must_use]
    pub fn example(&self) -> Vec<(&'static str, &'static str)> {
        let begins = self.form.begun_by.first().map(|field| field.about().name);
        let needed = self
            .fields()
            .map(AnyField::about)
            .filter(|about| Some(about.name) == begins || matches!(about.need, Need::Always(_)));
        needed.map(|about| (about.name, about.example)).collect()
    }

    /// A question that fills every field.
    #[must_use]
    pub fn whole_example(&self) -> Vec<(&'static str, &'static str)> {
        self.fields().map(AnyField::about).map(|about| (about.name, about.example)).collect()
    }
}
