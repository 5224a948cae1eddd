//! Which characters a reader can see.

use icu_properties::CodePointSetData;
use icu_properties::props::DefaultIgnorableCodePoint;

/// Neither a control code nor a mark that turns the writing round, which can make a text read other
/// than it is.
pub(super) fn is_seen(c: char) -> bool {
    // The last two of each plane are no characters, and never will be.
    !c.is_control()
        && u32::from(c) & 0xfffe != 0xfffe
        && !matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Whether the character is one that programs show as nothing: soft hyphens, marks of no width, selectors
/// of a variant, tags.
#[must_use]
pub fn takes_no_room(c: char) -> bool {
    CodePointSetData::new::<DefaultIgnorableCodePoint>().contains(c)
}

/// Whether a reader sees nothing of the text.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::seen::is_blank;
/// assert!(is_blank(" \u{3164}\u{200b}\u{2800}\n"));
/// assert!(!is_blank("4 BA"));
/// ```
#[must_use]
pub fn is_blank(text: &str) -> bool {
    // The pattern of no dots is a letter of Braille, and as white as a space.
    text.chars().all(|c| c.is_whitespace() || !is_seen(c) || takes_no_room(c) || c == '\u{2800}')
}
