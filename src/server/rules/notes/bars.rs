//! Whether a drill's number with a bar behind it is no figure of a gauge: the field of the drill stands above the text of
//! a note, and "No 50" above "Bar was bright" speaks of a drill and a piece of stock.
//!
//! Only the field itself is believed. Lines that a text has of its own are read as they stand.

use super::folded::folded;
use super::gauge::BEFORE_SO_MANY_BAR;

/// What stands behind a bar of metal at the beginning of a sentence.
const BEHIND_A_BAR: [&str; 4] = ["was", "is", "of", "stock"];

/// What begins like this in such a sentence makes it one on a gauge all the same.
const OF_A_GAUGE: [&str; 18] = [
    "gauge", "gage", "dial", "needle", "pump", "held", "hold", "reach", "test", "leak", "burst",
    "valv", "show", "read", "most", "limit", "enough", "plenty",
];

/// Whether this number of a drill ends there, and is none of bars in the text behind it.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::bars::is_a_drill_before_stock;
/// assert!(is_a_drill_before_stock("silver steel", "No 50", "Bar was bright."));
/// assert!(!is_a_drill_before_stock("silver steel", "No 50", "Bar was reached."));
/// assert!(!is_a_drill_before_stock("pumped up to", "No 50", "Bar was bright."));
/// ```
#[must_use]
pub fn is_a_drill_before_stock(before: &str, drill: &str, text: &str) -> bool {
    let sentence = text.split(['.', '\n']).next().unwrap_or_default();
    is_a_drills_number(drill)
        && begins_with_a_bar(sentence)
        && !is_on_a_gauge(sentence)
        && !BEFORE_SO_MANY_BAR.iter().any(|word| ends_with(before, word))
}

/// "No 50", "No. 50" and nothing else.
fn is_a_drills_number(line: &str) -> bool {
    let number = line.trim().strip_prefix("No").map(|rest| rest.trim_start_matches('.').trim());
    number.is_some_and(|number| {
        (1..=2).contains(&number.len()) && number.bytes().all(|byte| byte.is_ascii_digit())
    })
}

/// A sentence that says what the bar was: the unit of a gauge has no capital and no such word behind it.
fn begins_with_a_bar(sentence: &str) -> bool {
    let mut words = sentence.split(' ');
    words.next() == Some("Bar") && words.next().is_some_and(|word| BEHIND_A_BAR.contains(&word))
}

fn is_on_a_gauge(sentence: &str) -> bool {
    let looks = folded(sentence);
    let mut words = looks.split(|c: char| !c.is_alphanumeric());
    words.any(|word| OF_A_GAUGE.iter().any(|beginning| word.starts_with(&folded(beginning))))
}

fn ends_with(line: &str, word: &str) -> bool {
    folded(line).trim_end_matches(|c: char| !c.is_alphanumeric()).ends_with(word)
}
