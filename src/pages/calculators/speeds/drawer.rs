//! The machine's speeds from the reader's drawer, where the address names none.

use super::request::Request;
use crate::Visit;
use crate::calculators::drawer::notice;
use crate::drawer::{self, Notice};

/// The request with what the reader's drawer fills, and what the page says of it.
pub(super) fn with_drawer(visit: &Visit<'_>, typed: &Request) -> (Request, Option<Notice>) {
    let filled = drawer::filled(visit, &drawer::SPEEDS);
    let used = Request::of(filled.query.clone());
    let notice = notice(&filled, &typed.asked, &used.asked);
    (used, notice)
}
