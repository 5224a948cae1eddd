//! `/calculators/clearance`: the hole a screw passes through, its drill and its float.

mod answer;
mod page;
mod request;

pub use answer::{Answer, Drilled, ForErrors, Question, Screw, answer};
pub use request::Request;

pub(super) use page::show;
