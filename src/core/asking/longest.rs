//! The longest text a field may hold: what is longer is refused before it is read.

use super::error::QUOTED;
use super::{FieldError, Typed};
use crate::tables::drills::owned;

/// Of a single value, in characters: more than any thread, metal or size has.
const VALUE: usize = 200;
/// Of a list.
const LIST: usize = 2000;

/// The most characters a field may hold, by its name in the address.
#[must_use]
pub fn longest(field: &str) -> usize {
    match field {
        "owned" => owned::LONGEST,
        "series" | "spindle_speeds" => LIST,
        _ => VALUE,
    }
}

/// A text as a field keeps it. One longer than the field may hold is cut behind the first character
/// too many, so that it is refused however often it comes back.
#[must_use]
pub fn cut<'a>(field: &str, text: &'a str) -> &'a str {
    let end = text.char_indices().nth(longest(field) + 1).map_or(text.len(), |(at, _)| at);
    text.get(..end).unwrap_or(text)
}

/// The refusal of a text longer than its field may hold.
#[must_use]
pub fn too_long(typed: Typed<'_>) -> Option<FieldError> {
    let most = longest(typed.field);
    typed.text.chars().nth(most)?;
    Some(
        typed.error(format!("That is too long: {most} characters are the most. Write it shorter.")),
    )
}

/// Whether a link may carry what stands in a field: it was read, or is short enough to quote whole. A
/// page has many links, and each would repeat it.
#[must_use]
pub fn is_carried(errors: &[FieldError], typed: Typed<'_>) -> bool {
    typed.text.chars().nth(QUOTED).is_none()
        || errors.iter().all(|error| error.field != typed.field)
}
