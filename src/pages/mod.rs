//! Every public page as a pure function of its address: no server, no database, no clock.
//!
//! The same function compiled for a phone with no signal must give the same bytes.

/// What varies from reader to reader, as plain values.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Context {
    /// Scheme and host for absolute addresses, without a final slash: `https://club.example`.
    pub base_url: String,
}

/// A finished page, redirect or refusal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// HTTP status.
    pub status: u16,
    /// Headers the page itself decides: content type, location.
    pub headers: Vec<(&'static str, String)>,
    /// The body.
    pub body: String,
}

/// Answers one address: `answer("/threads/ba/5", "", &context)`.
#[must_use]
pub fn answer(path: &str, _query: &str, _context: &Context) -> Answer {
    Answer {
        status: 404,
        headers: vec![("content-type", "text/html; charset=utf-8".to_owned())],
        body: format!("nothing at {}", path.len()),
    }
}
