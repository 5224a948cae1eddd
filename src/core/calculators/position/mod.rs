//! `/calculators/position`: whether two parts go together when their holes' centres are off.

mod fields;
mod outputs;
mod words;

pub use fields::{DECLARATION, Found, answer_to};
