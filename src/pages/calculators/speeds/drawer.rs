//! The machine's speeds from the reader's drawer, where the address names none.

use super::request::Request;
use crate::pages::Visit;
use crate::pages::calculators::drawer::notice;
use crate::pages::drawer::{self, Notice};

/// The request with what the reader's drawer fills, and what the page says of it.
pub(super) fn with_drawer(visit: &Visit<'_>, typed: &Request) -> (Request, Option<Notice>) {
    let filled = drawer::filled(visit, &drawer::SPEEDS);
    let used = Request::of(filled.query.clone());
    let notice = notice(&filled, &typed.asked, &used.asked);
    (used, notice)
}
