//! The page of a refusal that the server makes itself: wrong method, too busy, our fault.

use crate::Error;
use holewright_pages::{Context, problem};

/// The page, with the number under which the log holds the rest.
#[must_use]
pub fn body(error: &Error, request_id: &str, context: &Context) -> String {
    let detail =
        format!("Here is what happened: {error}. The number of this request is {request_id}.");
    problem::page(error.status().as_u16(), error.title(), &detail, context).text().to_owned()
}
