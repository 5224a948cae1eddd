//! Whether a club has somebody who could pass a note on boilers, steam or pressure. Without one it would
//! wait for ever, and that has to be said.
//!
//! Leaves out who may pass what: that is asked of [`state`](super::state).

use super::state::{Act, NoteState, OnItsWay, Others, Subject, Who, after};
use crate::rules::auth::{MemberId, Rights};

/// Somebody who can sign in and inspects.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Inspector {
    /// Number.
    pub id: MemberId,
    /// All their rights.
    pub rights: Rights,
}

/// Whether the one that a note waits for exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Awaited {
    /// Somebody in the club could pass it.
    Exists,
    /// The club has no inspector.
    NoInspector,
    /// The club has no inspector but the note's author, who does not decide about it.
    NoneButItsAuthor,
}

/// Notes that nobody in the club could pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unattended {
    /// How many, at least one.
    pub notes: usize,
    /// Why, the same for each of them.
    pub why: Awaited,
}

/// Whether one of these could pass a waiting note on pressure of this author, none where the author
/// has left the club.
#[must_use]
pub fn awaited(author: Option<MemberId>, inspectors: &[Inspector]) -> Awaited {
    let waits = NoteState {
        on_its_way: Some(OnItsWay::Waiting(Subject::Pressure)),
        ..NoteState::default()
    };
    let others = if inspectors.len() > 1 { Others::Can } else { Others::Nobody };
    let passes = |by: &Inspector| {
        let who = Who { is_author: author == Some(by.id), rights: by.rights, others };
        after(Act::Pass, waits, who).is_ok()
    };
    match inspectors {
        [] => Awaited::NoInspector,
        some if some.iter().any(passes) => Awaited::Exists,
        _ => Awaited::NoneButItsAuthor,
    }
}

/// Those among the waiting notes on pressure, each given by its author, that nobody could pass.
#[must_use]
pub fn unattended(waiting: &[Option<MemberId>], inspectors: &[Inspector]) -> Option<Unattended> {
    let reasons = waiting.iter().map(|author| awaited(*author, inspectors));
    let reasons: Vec<Awaited> = reasons.filter(|why| *why != Awaited::Exists).collect();
    reasons.first().map(|why| Unattended { notes: reasons.len(), why: *why })
}
