//! The shop notes in the database.
//!
//! - [`write`](mod@write): a wording kept on its author's desk or sent in; [`decide`]: what the queue
//!   decides; [`mend`]: with a small fix; [`undo`]: taken back; [`after`], [`verdicts`], [`reports`]: what happens to a note once it is shown.
//! - [`remarks`]: what members remark on a note, and what becomes of it.
//! - [`read_to`]: what was read beside a wording that is decided about.
//! - `wordings`: the rows of the wordings, where the SQL names the fields of a note.
//! - [`read`]: one note with all its wordings; [`lists`]: the shown notes; [`search`]: by their words;
//!   [`open`]: how much is open for a member; [`news`]: what is new to them; [`decided`]: the last decisions; [`queue`]: what waits, and what became of a member's notes;
//!   [`inspectors`]: who could pass what speaks of pressure; [`alike`]: earlier notes that say much the same;
//!   [`used`]: what was said of drills on a job; [`anew`]: all of it judged by new rules of pressure.
//!
//! Every write checks the rules of [`crate::rules::notes::state`] inside its own transaction.

pub mod after;
pub mod alike;
pub mod anew;
pub mod author;
mod current;
pub mod decide;
pub mod decided;
mod error;
pub mod inspectors;
pub mod lists;
pub mod mend;
pub mod news;
pub mod open;
pub mod printed;
pub mod queue;
pub mod read;
pub mod read_to;
mod recorded;
pub mod remarks;
pub mod reports;
pub mod search;
mod text;
pub mod undo;
pub mod used;
pub mod verdicts;
pub(super) mod wordings;
pub mod write;

pub use error::Error;
pub use lists::{Correction, Listed};
