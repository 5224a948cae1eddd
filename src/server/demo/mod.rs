//! A club to try the program with: Marlbeck Model Engineers, invented, and marked so in every note.
//!
//! - `members`: who is in it; `row`: one note as a row; `casting`, `clock` and `bench`: the notes.
//! - `fill`: puts it into an empty data folder by the functions that the web uses, or takes it away; `command`: from the command line.
//!
//! Nothing in the notes is anybody's experience. Leaves out SQL.

mod bench;
mod casting;
mod clock;
mod command;
mod fill;
mod members;
mod row;

pub(super) use command::{fill_into, remove_from};
pub use fill::{Filled, NotDone, fill, remove};
pub use members::{MEMBERS, Member};
pub use row::{Fate, MARK, Row, Verdict};

/// Every note of the demonstration.
#[must_use]
pub fn rows() -> Vec<Row> {
    [casting::ROWS, clock::ROWS, bench::ROWS].concat()
}
