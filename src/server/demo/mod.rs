//! A club to try the program with: Marlbeck Model Engineers, invented, and marked so in every note.
//!
//! - `members`: who is in it; `note`: one note as a row of the table; `casting`, `clock` and `bench`: the notes.
//! - `fill`: puts it into an empty data folder by the functions that the web uses, or takes it away; `command`: from the command line.
//!
//! Nothing in the notes is anybody's experience. Leaves out SQL.

mod bench;
mod casting;
mod clock;
mod command;
mod fill;
mod members;
mod note;

pub(super) use command::{fill_into, remove_from};
pub use fill::{Filled, NotDone, fill, remove};
pub use members::{MEMBERS, Member};
pub use note::{DemoNote, Fate, MARK, Verdict};

/// Every note of the demonstration.
#[must_use]
pub fn notes() -> Vec<DemoNote> {
    [casting::NOTES, clock::NOTES, bench::NOTES].concat()
}
