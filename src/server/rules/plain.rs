//! Words of another program on a terminal: nothing in them moves the cursor, colours, hides or begins a line.

use icu_properties::CodePointSetData;
use icu_properties::props::DefaultIgnorableCodePoint;

/// The text as one line that shows all that is in it: a character that has an effect and no shape is
/// written as its number.
///
/// # Examples
///
/// ```
/// use holewright_server::rules::plain::line;
///
/// assert_eq!(line("5 mm, Ø"), "5 mm, Ø");
/// assert_eq!(line("\u{1b}[2J\nsound"), "\\u{1b}[2J\\u{a}sound");
/// ```
#[must_use]
pub fn line(text: &str) -> String {
    let unseen = CodePointSetData::new::<DefaultIgnorableCodePoint>();
    let acts = |letter: char| {
        letter.is_control() || unseen.contains(letter) || matches!(letter, '\u{2028}' | '\u{2029}')
    };
    let mut line = String::with_capacity(text.len());
    for letter in text.chars() {
        if acts(letter) {
            line.extend(letter.escape_unicode());
        } else {
            line.push(letter);
        }
    }
    line
}
