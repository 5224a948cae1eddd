//! What a field was taken for where its text could mean more than one thing, with the others beside it.

use super::error::{quoted, thread_error};
use super::{Choice, FieldError, Typed};
use crate::tables::threads::Thread;
use crate::tables::threads::read::{self, AsMeant};

/// What a field was taken for, and what else it could mean.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The field's name in the address: `thread`.
    pub field: &'static str,
    /// What was typed, as it is quoted back.
    pub typed: String,
    /// What it was taken for: `1/4 in × 40 ME`.
    pub taken_as: String,
    /// Why that, in words that follow a colon; empty where it is plain.
    pub why: &'static str,
    /// What else it could mean, to choose from.
    pub others: Vec<Choice>,
}

impl Taken {
    /// It in words, for a door that shows no links.
    #[must_use]
    pub fn in_words(&self) -> String {
        let others: Vec<&str> = self.others.iter().map(|other| other.words.as_str()).collect();
        match others.as_slice() {
            [] => format!("{} is taken as {}.", self.typed, self.taken_as),
            others => {
                format!("{} is taken as {}; or {}?", self.typed, self.taken_as, others.join(", "))
            }
        }
    }
}

/// A thread as it is usually meant.
///
/// # Errors
/// It is none, or no reading of it is the usual one.
pub fn thread_as_meant(typed: Typed<'_>) -> Result<AsMeant, FieldError> {
    read::as_meant(typed.text).map_err(|error| thread_error(typed.field, &error))
}

/// The thread named, as it is usually meant.
///
/// # Errors
/// As [`thread_as_meant`].
pub fn thread(typed: Typed<'_>) -> Result<&'static Thread, FieldError> {
    thread_as_meant(typed).map(|read| read.thread)
}

/// A parallel thread; of a taper one it is said why not: `it has no effort in print`.
///
/// # Errors
/// As [`thread`], and for a taper thread.
pub fn parallel_thread(
    typed: Typed<'_>,
    why_no_taper: &str,
) -> Result<&'static Thread, FieldError> {
    let thread = thread(typed)?;
    if thread.taper.is_none() {
        Ok(thread)
    } else {
        Err(typed.error(format!(
            "{} is a taper thread: {why_no_taper}. Write a parallel one.",
            thread.designation
        )))
    }
}

/// What a thread was taken for; nothing where it could be no other.
#[must_use]
pub fn thread_taken(typed: Typed<'_>) -> Option<Taken> {
    let taken = read::as_meant(typed.text).ok()?.taken?;
    let other = |thread: &&'static Thread| Choice {
        value: thread.designation.to_owned(),
        words: thread.designation.to_owned(),
    };
    Some(Taken {
        field: typed.field,
        typed: quoted(typed.text),
        taken_as: taken.thread.designation.to_owned(),
        why: taken.why,
        others: taken.others.iter().map(other).collect(),
    })
}
