//! What the reader's drawer has to do with a calculator: what it filled, and the line that says so.

use super::asked::Asked;
use crate::controls::EVERY_SERIES;
use crate::drawer::{Filled, Notice};

/// The notice of a calculator; `typed` is what was asked, `used` the same with what the drawer filled.
pub(super) fn notice(filled: &Filled<'_>, typed: &Asked, used: &Asked) -> Option<Notice> {
    let without = typed.address_with("series", EVERY_SERIES);
    Notice::of_choice(filled, &without, &used.own_address())
}
