//! One shown note in a list: its title, whose it is, the first words, what others found.

use askama::Template;

use super::super::when::day;
use super::text::ANCHOR;
use crate::db::notes::Listed;
use crate::db::notes::search::Hit;
use crate::rules::notes::around::Stretch;
use crate::rules::notes::found::Sense;
use crate::rules::notes::state::Subject;
use crate::rules::notes::{dangers, markdown};

/// Characters of a note's text in a list.
const EXTRACT: usize = 280;

/// One note; shown in a page with `{{ item|safe }}`.
#[derive(Clone, Debug, Template)]
#[template(path = "web/notes/item.html")]
pub(super) struct Item {
    id: i64,
    title: String,
    by: String,
    day: String,
    set_up: String,
    /// The newest correction, in the place of the text it corrects.
    correction: Option<String>,
    extract: Vec<Stretch>,
    is_warning: bool,
    counts: String,
    /// What can hurt in it, in a word each.
    danger: Option<String>,
    /// It speaks of pressure: an inspector has read what readers see.
    is_inspected: bool,
}

impl Item {
    /// A note with its first words.
    pub(super) fn of(note: &Listed) -> Self {
        let text = markdown::extract(&note.wording.text, EXTRACT);
        Self::with(note, vec![Stretch { text, is_found: false }])
    }

    /// A note with the words that were looked for.
    pub(super) fn found(hit: &Hit) -> Self {
        Self::with(&hit.note, hit.around.clone())
    }

    fn with(note: &Listed, extract: Vec<Stretch>) -> Self {
        let set_up = note.wording.done.filled().filter(|(field, _)| field.is_in_lists);
        let set_up: Vec<&str> = set_up.map(|(_, typed)| typed).collect();
        let newest = note.corrections.first();
        Self {
            id: note.id,
            title: note.wording.title.clone(),
            by: author(note.author.as_deref()),
            day: day(note.shown_at),
            set_up: set_up.join(" · "),
            correction: newest.map(|correction| markdown::extract(&correction.text, EXTRACT)),
            extract,
            is_warning: note.wording.sense == Sense::Warning,
            counts: note.wording.sense.counts((note.worked, note.did_not)),
            danger: dangers::in_words(&note.wording),
            is_inspected: note.wording.subject == Subject::Pressure,
        }
    }
}

/// Whose it is, in words.
pub(super) fn author(name: Option<&str>) -> String {
    name.unwrap_or("a former member").to_owned()
}
