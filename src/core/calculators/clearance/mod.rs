//! `/calculators/clearance`: the hole a screw passes through, its drill and its float.

mod answer;
mod fields;

pub use answer::{Answer, Drilled, ForErrors, Question, Screw, answer};
pub(super) use fields::{CENTRE_ERROR, DIAMETER, FIT, THREAD, centre_error, screw};
pub use fields::{DECLARATION, answer_to};
