//! The calculators beside the plan: what each asks and what it answers, and the table of them all.
//!
//! A [`Declaration`] is all that pages, JSON, its description, the finder and the tests know of a
//! calculator. Most answer in a few [`Rows`], and every form of the answer is made from these. One whose
//! answer is more than rows has a variant of [`AnswerKind`] of its own, and then whoever shows answers
//! has to say how.

pub mod clearance;
mod declaration;
mod rows;
pub mod speeds;
pub mod tapping;

pub use declaration::{AnswerKind, Declaration, Finding, Form};
pub use rows::{Answered, Figure, FigureKind, Measure, Output, Plain, Rows, Value};

/// Every calculator, in the order the pages list them.
pub static CALCULATORS: [&Declaration; 3] =
    [&speeds::DECLARATION, &tapping::DECLARATION, &clearance::DECLARATION];

/// The calculator at an address.
///
/// # Examples
/// ```
/// use holewright_core::calculators::find;
/// assert_eq!(find("clearance").map(|found| found.title), Some("Clearance and float"));
/// ```
#[must_use]
pub fn find(slug: &str) -> Option<&'static Declaration> {
    CALCULATORS.into_iter().find(|calculator| calculator.slug == slug)
}
