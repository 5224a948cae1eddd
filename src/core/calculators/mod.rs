//! The calculators beside the plan: what each asks and what it answers, and the table of them all.
//!
//! A [`Declaration`] is all that pages, JSON, its description, the finder and the tests know of a
//! calculator. Most answer in a few [`Rows`], and every form of the answer is made from these:
//! `point_length.rs` is the pattern. One whose answer is more than rows has a variant of [`AnswerKind`]
//! of its own, and then whoever shows answers has to say how.
//!
//! Fields are read in the order of the form by [`crate::asking::Reading`], which keeps every error. What
//! two fields cannot be together is refused once both are read, at the one to be changed:
//! `reading.refuse(FIELD.error(…))`, as in `clearance/fields.rs`. A count is a `Field::count`.

pub mod blind_hole;
pub mod clearance;
mod declaration;
mod fastener;
mod point_length;
pub mod position;
mod rows;
pub mod speeds;
mod strength;
mod tap_effort;
pub mod tapping;
mod usual_hole;

pub use declaration::{AnswerKind, Declaration, Finding, Form};
pub use rows::{Answered, Figure, FigureKind, Measure, Output, Plain, Rows, Value};

/// Every calculator, in the order the pages list them.
pub static CALCULATORS: &[&Declaration] = &[
    &speeds::DECLARATION,
    &tapping::DECLARATION,
    &clearance::DECLARATION,
    &blind_hole::DECLARATION,
    &fastener::DECLARATION,
    &position::DECLARATION,
    &tap_effort::DECLARATION,
    &strength::DECLARATION,
    &point_length::DECLARATION,
];

/// The calculator at an address.
///
/// # Examples
/// ```
/// use holewright_core::calculators::find;
/// assert_eq!(find("clearance").map(|found| found.title), Some("Clearance and float"));
/// ```
#[must_use]
pub fn find(slug: &str) -> Option<&'static Declaration> {
    CALCULATORS.iter().copied().find(|calculator| calculator.slug == slug)
}
