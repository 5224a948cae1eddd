//! The text of a wording on a page: what was done, what happened, what it belongs to.

use std::fmt::Display;

use askama::Template;

use crate::rules::notes::dangers::Dangers;
use crate::rules::notes::found::Sense;
use crate::rules::notes::state::Subject;
use crate::rules::notes::wording::Wording;
use crate::rules::notes::{dangers, hazards, markdown, pressure};
use holewright_pages::link::Link;

/// Where what can hurt stands on the page of a note.
pub(super) const ANCHOR: &str = "dangers";

/// A wording; shown in a page with `{{ text|safe }}`, since it escapes what it holds itself.
#[derive(Clone, Debug, Template)]
#[template(path = "web/notes/text.html")]
pub(super) struct Text {
    lines: Vec<(&'static str, String)>,
    /// Made by [`markdown::html`], and so safe.
    html: String,
    things: Vec<Link>,
    /// What can hurt in the material it was done in.
    dangers: Vec<Dangers>,
    /// What of it is said in a line: of which materials, and the words.
    lasting: Vec<(String, &'static str)>,
    /// Where that stands on the page.
    anchor: String,
    /// What is said beside boilers and pressure.
    caution: Option<&'static str>,
    /// What its author and whoever decides are told of its words.
    prompts: Vec<&'static str>,
    is_warning: bool,
    /// A correction stands above it.
    is_struck: bool,
}

/// The line under the title of a note on what harms there and then.
#[derive(Clone, Debug, Template)]
#[template(path = "web/notes/at_once.html")]
pub(super) struct AtOnce {
    pub(super) materials: String,
    anchor: String,
}

/// What is said of this wording, where it speaks of boilers or pressure.
pub(super) fn caution(wording: &Wording) -> Option<&'static str> {
    (wording.subject == Subject::Pressure).then_some(pressure::CAUTION)
}

impl Text {
    /// The text of a wording.
    pub(super) fn of(wording: &Wording) -> Self {
        let (lines, things) = (wording.done.filled(), wording.things.iter());
        let dangers = dangers::of_note(wording);
        Self {
            lines: lines.map(|(field, typed)| (field.label, typed.to_owned())).collect(),
            html: markdown::html(&wording.text),
            things: things
                .map(|thing| Link::new(format!("/{}", thing.id), thing.title.as_str()))
                .collect(),
            lasting: dangers::lasting(&dangers),
            dangers,
            anchor: ANCHOR.to_owned(),
            caution: caution(wording),
            prompts: Vec::new(),
            is_warning: wording.sense == Sense::Warning,
            is_struck: false,
        }
    }

    /// The same for its author and whoever decides: what burns, poisons or maims by its words is said too.
    pub(super) fn prompting(wording: &Wording) -> Self {
        Self { prompts: hazards::of_note(wording), ..Self::of(wording) }
    }

    /// Whether it belongs to nothing of the reference.
    pub(super) fn is_on_no_page(&self) -> bool {
        self.things.is_empty()
    }

    /// What stands right under the title: what harms there and then, and the way down to it.
    pub(super) fn at_once(&self) -> Option<AtOnce> {
        let materials = dangers::at_once(&self.dangers)?;
        Some(AtOnce { materials, anchor: self.anchor.clone() })
    }

    /// The same on a page that shows several.
    pub(super) fn of_place(self, place: impl Display) -> Self {
        Self { anchor: format!("dangers-{place}"), ..self }
    }

    /// The same, struck.
    pub(super) fn struck(self, is_struck: bool) -> Self {
        Self { is_struck, ..self }
    }
}
