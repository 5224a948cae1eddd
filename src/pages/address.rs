//! A path as typed or pasted, and the one canonical spelling of it.

use form_urlencoded::parse;

/// The parts of a path: decoded, in lower case, none empty.
#[derive(Debug)]
pub(super) struct Address {
    segments: Vec<String>,
}

impl Address {
    /// Reads a path. Never fails: bytes that are no text become the replacement character.
    pub(super) fn read(path: &str) -> Self {
        let segments = path
            .split('/')
            .filter(|segment| !segment.is_empty())
            .map(|segment| decode(segment).to_lowercase())
            .collect();
        Self { segments }
    }

    /// The parts, to match on.
    pub(super) fn segments(&self) -> Vec<&str> {
        self.segments.iter().map(String::as_str).collect()
    }

    /// The one spelling: `/threads/ba/5`.
    pub(super) fn canonical(&self) -> String {
        format!("/{}", self.segments.join("/"))
    }
}

/// The one spelling of a path, whether or not a page stands there.
///
/// # Examples
/// ```
/// assert_eq!(holewright_pages::canonical("//Threads/%42A/"), "/threads/ba");
/// ```
#[must_use]
pub fn canonical(path: &str) -> String {
    Address::read(path).canonical()
}

/// Percent codes undone. In a path `+`, `&` and `=` stand for themselves.
fn decode(segment: &str) -> String {
    let shielded = segment.replace('+', "%2B").replace('&', "%26").replace('=', "%3D");
    parse(shielded.as_bytes()).next().map_or_else(String::new, |(text, _)| text.into_owned())
}
