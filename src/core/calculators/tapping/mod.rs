//! `/calculators/tapping`: engagement and hole for any diameter, pitch and form.

mod answer;
mod fields;
mod pitch;

pub use answer::{Answer, Left, NEAR, Subject, answer};
pub use fields::{DECLARATION, FORMS, Question, answer_to};
