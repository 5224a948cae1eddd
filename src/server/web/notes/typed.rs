//! What somebody typed into the form of the queue.

use super::queued::{Reasons, is_place, new_place};
use crate::db::notes::queue;
use crate::extract::Fields;
use crate::rules::notes::ready::{Ready, Sends};
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
    /// What is to be done.
    pub(super) what: &'a str,
    /// The ready-made reason that was tapped.
    pub(super) ready: Option<&'static Ready>,
}

impl<'a> Typed<'a> {
    pub(super) fn read(fields: &'a Fields, id: i64) -> Self {
        let new = new_place(id);
        let ready = Ready::named(fields.as_typed("do"));
        let what = match ready.map(|ready| ready.sends) {
            Some(Sends::Back) => "change",
            Some(Sends::Away) => "decline",
            None => fields.as_typed("do"),
        };
        let decides_what_waits = matches!(what, "pass" | "change" | "decline");
        let is_about_the_new = fields.get("place") == new
            || (decides_what_waits && fields.has(&format!("version-{new}")));
        let place = if is_about_the_new { new } else { id.to_string() };
        Self { fields, id, place, what, ready }
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
