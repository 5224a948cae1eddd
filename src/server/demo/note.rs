//! One note of the demonstration as a row of a table, and what becomes of it.

use super::members::Place;
use crate::rules::notes::fields::Done;
use crate::rules::notes::found::Found;
use crate::rules::notes::meant::Answers;
use crate::rules::notes::wording::Typed;

/// How each text begins.
pub const MARK: &str = "Demonstration: invented.";

/// One note.
#[derive(Clone, Copy, Debug)]
pub struct DemoNote {
    /// Title, the things it belongs to, text without the mark.
    pub said: [&'static str; 3],
    /// The first fields of what was done, in their order; the others are left out.
    pub done: &'static [&'static str],
    /// Whose it is.
    pub author: Place,
    /// How many days ago it was begun.
    pub days_ago: i64,
    /// What became of it.
    pub fate: Fate,
}

/// What became of a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It lies on its author's desk.
    Draft,
    /// A moderator gave it back, with what to change.
    ChangeAsked(&'static str),
    /// It waits for a moderator, or for the inspector where it speaks of pressure.
    Waiting,
    /// It was not taken, for this reason.
    Declined(&'static str),
    /// It is shown.
    Shown,
    /// It is shown, and others have said whether it worked.
    Judged(&'static [Verdict]),
    /// It is shown below this correction.
    Corrected(&'static str),
    /// It was shown and taken back, for this reason.
    Withdrawn(&'static str),
    /// It was shown and is hidden by this report.
    Hidden(&'static str),
}

/// Who found what, in what material and at what size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// Who.
    pub by: Place,
    /// What they found.
    pub found: Found,
    /// In what material.
    pub material: &'static str,
    /// At what size.
    pub size: &'static str,
    /// Why, or how.
    pub why: &'static str,
}

/// It worked.
pub(super) const fn worked(by: Place, material: &'static str, size: &'static str) -> Verdict {
    Verdict { by, found: Found::Worked, material, size, why: "" }
}

/// It did not.
pub(super) const fn did_not(by: Place, material: &'static str, size: &'static str) -> Verdict {
    Verdict { by, found: Found::DidNot, material, size, why: "" }
}

/// A row, written short.
pub(super) const fn note(
    said: [&'static str; 3],
    done: &'static [&'static str],
    (author, days_ago): (Place, i64),
    fate: Fate,
) -> DemoNote {
    DemoNote { said, done, author, days_ago, fate }
}

/// What a row says of the job, in this order; a field that is not here is left empty.
const ORDER: [&str; 7] = ["material", "thread", "drill", "depth", "lubricant", "speed", "machine"];

impl DemoNote {
    fn done_at(&self, field: &str) -> &'static str {
        let place = ORDER.iter().position(|name| *name == field);
        place.and_then(|place| self.done.get(place)).copied().unwrap_or_default()
    }

    /// The note as its author would have typed it into the form.
    #[must_use]
    pub fn typed(&self, form_key: String) -> Typed {
        let [title, on, text] = self.said;
        Typed {
            form_key,
            made_from: String::new(),
            title: title.to_owned(),
            text: format!("{MARK}\n\n{text}"),
            done: Done::from_each(|field| self.done_at(field.name).to_owned()),
            on: on.to_owned(),
            is_pressure: false,
            is_warning: false,
            meant: Answers::default(),
        }
    }
}
