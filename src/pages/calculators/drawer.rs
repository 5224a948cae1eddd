//! What the reader's drawer has to do with a calculator: what it filled, and the line that says so.

use super::{address, asked};
use crate::Visit;
use crate::controls::EVERY_SERIES;
use crate::drawer::{self, Fill, Filled, Notice};
use holewright_core::asking::Asked;
use holewright_core::calculators::Declaration;

/// A question with what the reader's drawer fills in it, and what the page says of that.
pub(super) fn with_drawer<'a>(
    visit: &Visit<'a>,
    calculator: &Declaration,
    fills: &[Fill],
) -> (Asked, Filled<'a>, Option<Notice>) {
    let filled = drawer::filled(visit, fills);
    let used = asked(calculator, &filled.query);
    let without = asked(calculator, &visit.query).with("series", EVERY_SERIES);
    let notice =
        Notice::of_choice(&filled, &address(calculator, &without), &address(calculator, &used));
    (used, filled, notice)
}
