//! `/calculators/blind-hole`: how deep to drill for so much full thread, whether the part holds it, and
//! what would make it possible.

mod fields;
mod outputs;
mod words;

pub use fields::{DECLARATION, Found, answer_to};
