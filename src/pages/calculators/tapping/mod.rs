//! `/calculators/tapping`: engagement and hole for any diameter, pitch and form.

mod answer;
mod page;
mod percent;
mod pitch;
mod request;

pub use answer::{Answer, Left, Subject, answer};
pub use request::{Question, Request};

pub(super) use page::show;
