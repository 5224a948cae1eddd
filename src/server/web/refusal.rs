//! The page of a refusal that the server makes itself: wrong method, too busy, our fault.

use crate::Error;
use holewright_pages::link::Link;
use holewright_pages::{Context, problem};

/// The page, with the number under which the log holds the rest.
#[must_use]
pub fn body(error: &Error, request_id: &str, context: &Context) -> String {
    let detail =
        format!("Here is what happened: {error}. The number of this request is {request_id}.");
    let links = match error {
        // Whoever joined with it opens it again, to come back.
        Error::SpentSlip => vec![
            Link::new("/sign-in", "It was used by you? Sign in"),
            Link::new("/reset", "Forgotten the password, and read a code out? Go on here"),
        ],
        _ => Vec::new(),
    };
    let said = (error.title(), detail.as_str());
    problem::page(error.status().as_u16(), said, &links, context).text().to_owned()
}
