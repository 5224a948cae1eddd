//! One shown note in a list: its title, whose it is, the first words, what others found.

use askama::Template;

use super::super::when::day;
use crate::db::notes::Listed;
use crate::db::notes::search::Hit;
use crate::rules::notes::around::Stretch;
use crate::rules::notes::markdown;
use crate::rules::notes::state::Subject;

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
    counts: String,
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
            counts: counts((note.worked, note.did_not)),
            is_inspected: note.wording.subject == Subject::Pressure,
        }
    }
}

/// Whose it is, in words.
pub(super) fn author(name: Option<&str>) -> String {
    name.unwrap_or("a former member").to_owned()
}

/// What others found of the shown wording, in words: for how many it worked, for how many it did not.
pub(super) fn counts(found: (i64, i64)) -> String {
    match (found, how_many(found)) {
        (_, None) => "Nobody else has said yet whether it works.".to_owned(),
        ((0, _), Some(how_many)) => format!("Did not work {how_many}."),
        (_, Some(how_many)) => format!("Worked {how_many}."),
    }
}

/// What others found of earlier wordings, if anybody did.
pub(super) fn earlier_counts(found: (i64, i64)) -> Option<String> {
    let how_many = how_many(found)?;
    let worked = if found.0 == 0 { "did not work" } else { "worked" };
    Some(format!("An earlier wording, which may have said something else, {worked} {how_many}."))
}

fn how_many(found: (i64, i64)) -> Option<String> {
    match found {
        (0, 0) => None,
        (count, 0) | (0, count) => Some(format!("for {}", members(count))),
        (worked, did_not) => {
            Some(format!("for {}, did not for {}", members(worked), members(did_not)))
        }
    }
}

fn members(count: i64) -> String {
    if count == 1 { "1 member".to_owned() } else { format!("{count} members") }
}
