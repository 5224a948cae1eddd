//! The page of a refusal that the server makes itself: wrong method, too busy, our fault.

use crate::server::Error;

/// The page, with the id under which the log holds the rest.
#[must_use]
pub fn body(error: &Error, request_id: &str) -> String {
    let status = error.status();
    let title = status.canonical_reason().unwrap_or_default();
    format!(
        "<!doctype html>\n<html lang=\"en-GB\">\n<head><meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title} – Holewright</title></head>\n\
         <body><main><h1>{title}</h1>\n<p>{error}.</p>\n\
         <p>If you report this, give the number <code>{request_id}</code>.</p>\n\
         <p><a href=\"/\">Start page</a></p></main></body>\n</html>\n"
    )
}
