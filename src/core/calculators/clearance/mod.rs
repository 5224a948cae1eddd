//! `/calculators/clearance`: the hole a screw passes through, its drill and its float.

mod answer;
mod fields;

pub use answer::{Answer, Drilled, ForErrors, Question, Screw, answer};
pub use fields::{DECLARATION, answer_to};
