//! What somebody typed into the form of the queue.

use std::collections::BTreeMap;

use super::queued::{Reasons, is_place, new_place};
use crate::db::notes::queue;
use crate::extract::Fields;
use crate::rules::notes::decision::Decision;
use crate::rules::notes::ready::{Ready, TO_CHANGE};
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::wording;

/// The most wordings on the page: of a reported note also the one that waits.
pub(super) const PARTS: usize = 2 * queue::MOST;

/// What was typed into the queue's form: of the wording that is decided about by its field's own name, as a
/// page with one note sends it, or with its place behind; of the others with theirs.
pub(super) struct Typed<'a> {
    pub(super) fields: &'a Fields,
    pub(super) id: i64,
    /// Where on the page the wording stands that is decided about.
    pub(super) place: String,
    /// What is to be done, where the queue knows it.
    pub(super) what: Option<Decision>,
    /// Nothing yet: the words of a ready-made reason are to be changed first.
    pub(super) is_to_change: bool,
    /// The ready-made reason that was tapped or chosen.
    pub(super) ready: Option<&'static Ready>,
}

impl<'a> Typed<'a> {
    pub(super) fn read(fields: &'a Fields, id: i64) -> Self {
        let new = new_place(id);
        let word = fields.as_typed("do");
        let is_to_change = word == TO_CHANGE;
        let tapped = Ready::named(word);
        let decision = tapped.map(|ready| ready.sends.decision()).or_else(|| Decision::read(word));
        let is_of_what_waits = is_to_change || decision.is_some_and(Decision::is_of_what_waits);
        let is_about_the_new = fields.get("place") == new
            || (is_of_what_waits && fields.has(&format!("version-{new}")));
        let place = if is_about_the_new { new } else { id.to_string() };
        let typed = Self { fields, id, place, what: decision, is_to_change, ready: tapped };
        match is_to_change {
            false => typed,
            true => {
                let ready = Ready::named(typed.of_it("ready"));
                let what = ready.map(|ready| ready.sends.decision());
                Self { what, ready, ..typed }
            }
        }
    }

    /// What this field of the wording holds.
    pub(super) fn of_it(&self, name: &str) -> &'a str {
        self.field(name, &self.place)
    }

    /// What this field of the whole note holds.
    pub(super) fn of_the_note(&self, name: &str) -> &'a str {
        self.field(name, &self.id.to_string())
    }

    fn field(&self, name: &str, place: &str) -> &'a str {
        let placed = format!("{name}-{place}");
        let name = if self.fields.has(name) { name } else { &placed };
        self.fields.as_typed(name)
    }

    /// What was typed as the reason.
    pub(super) fn reason(&self) -> String {
        wording::text(self.of_it("reason"))
    }

    /// Whether its author is told of an earlier note.
    pub(super) fn points(&self) -> bool {
        self.ready.is_some_and(Ready::points)
    }

    /// What its author is told: the reason that was tapped, with the earlier note it speaks of, and what was typed.
    pub(super) fn told(&self, like: Option<&(i64, String)>) -> String {
        let typed = self.reason();
        match (self.ready, like) {
            (Some(ready), Some((note, title))) if ready.points() => {
                ready.pointing((*note, title), &typed)
            }
            (Some(ready), _) => ready.with(&typed),
            (None, _) => typed,
        }
    }

    /// The note that stands behind this one on the page.
    pub(super) fn next(&self) -> Option<i64> {
        let notes = self.fields.each().filter_map(|(name, _)| name.strip_prefix("last-"));
        let notes: Vec<i64> = notes.filter_map(|id| id.parse().ok()).collect();
        let behind = notes.iter().skip_while(|id| **id != self.id).nth(1);
        behind.or(notes.first().filter(|first| **first != self.id)).copied()
    }

    /// The wordings as the page showed them that this was sent from: a page that comes back names no others, so that
    /// nobody decides about one that they have not read.
    pub(super) fn read_wordings(&self) -> BTreeMap<String, i64> {
        let read = self.fields.each().filter_map(|(name, typed)| {
            let place = name.strip_prefix("version-").filter(|place| is_place(place))?;
            Some((place.to_owned(), typed.parse().ok()?))
        });
        read.take(PARTS).collect()
    }

    /// The reasons typed at other wordings.
    pub(super) fn beside(&self) -> Reasons {
        let beside = self.fields.each().filter_map(|(name, typed)| {
            let place = name.strip_prefix("reason-").filter(|place| is_place(place))?;
            let reason = (place.to_owned(), wording::text(typed));
            Some(reason).filter(|(place, typed)| *place != self.place && !is_blank(typed))
        });
        beside.take(PARTS).collect()
    }
}
