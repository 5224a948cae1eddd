//! The remarks on a note, as a reader of its page sees them: those that are shown, and of the reader's own also those
//! that wait or were not taken.

use super::super::when::day;
use super::item::author;
use crate::db::notes::read::{Note, Version};
use crate::db::notes::remarks::Remark;
use crate::rules::auth::SignedIn;
use crate::rules::notes::remarks::State;
use crate::rules::notes::state::{Subject, sees_waiting};

/// One remark on the page.
pub(super) struct RemarkShown {
    pub(super) id: i64,
    pub(super) text: String,
    pub(super) by: String,
    pub(super) day: String,
    /// It was made on an earlier wording.
    pub(super) is_earlier: bool,
    /// How it stands, for whoever made it, where readers do not see it.
    pub(super) state: Option<String>,
    /// Whether the reader can take it back.
    pub(super) is_own: bool,
    /// Whether the reader can take it away from readers, with a reason.
    pub(super) may_take_away: bool,
}

/// The remarks on a note.
pub(super) struct Remarked {
    pub(super) shown: Vec<RemarkShown>,
    /// Where the reader decides about them, if they do and there are any.
    pub(super) decide: Option<String>,
}

impl Remarked {
    /// Those that this reader sees below this wording.
    pub(super) fn of(note: &Note, version: &Version, reader: Option<&SignedIn>) -> Self {
        let is_own = |remark: &Remark| {
            reader.is_some_and(|reader| remark.by.as_ref().is_some_and(|by| by.id == reader.id))
        };
        // Below a note of their own, or a remark of their own, the list of remarks says whether they may.
        let is_theirs = reader.is_some_and(|reader| note.is_by(reader.id));
        let may_take_away = |remark: &Remark| {
            let subject = remark.subject.with(version.wording.subject);
            let decides = reader.is_some_and(|reader| sees_waiting(subject, reader.rights));
            decides && remark.state == State::Shown && !is_theirs && !is_own(remark)
        };
        let seen = note.remarks.iter().filter(|it| it.state == State::Shown || is_own(it));
        let shown = seen.map(|remark| RemarkShown {
            id: remark.id,
            text: remark.text.clone(),
            by: author(remark.by.as_ref().map(|by| by.name.as_str())),
            day: day(remark.made_at),
            is_earlier: remark.of != version.id,
            state: state(remark),
            may_take_away: may_take_away(remark),
            is_own: is_own(remark) && matches!(remark.state, State::Waiting | State::Shown),
        });
        let decides = |remark: &&Remark| {
            let subject = remark.subject.with(version.wording.subject);
            let is_open = matches!(remark.state, State::Waiting | State::Shown);
            is_open && reader.is_some_and(|reader| sees_waiting(subject, reader.rights))
        };
        let some = note.remarks.iter().any(|remark| decides(&remark));
        Self {
            shown: shown.collect(),
            decide: some.then(|| format!("/queue/remarks?note={}", note.id.0)),
        }
    }
}

fn state(remark: &Remark) -> Option<String> {
    match (remark.state, remark.subject) {
        (State::Waiting, Subject::Usual) => {
            Some("Only you see it: it is waiting for a moderator.".to_owned())
        }
        (State::Waiting, Subject::Pressure) => {
            Some("Only you see it: it is waiting for an inspector.".to_owned())
        }
        (State::Declined, _) => Some(format!("Only you see it. Not taken: {}", remark.reason)),
        (State::Shown | State::Withdrawn, _) => None,
    }
}
