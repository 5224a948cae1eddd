//! The threads and drills that a text names: `4 BA`, `M3`, `No. 43`, `3.3 mm`, `7/64 in`.
//!
//! Only a figure with its unit or system is taken: a bare number says nothing. What could mean two
//! things is left alone.

use std::ops::Range;

use holewright_core::tables::{drills, threads};

/// Most words of one name: `1/4 x 40 ME`.
const WORDS: usize = 4;
/// Most links in one text, and most texts tried: a long text full of numbers must not cost much.
const LINKS: usize = 60;
const TRIED: usize = 400;

/// Words beside a length that is no drill.
const BEFORE_A_DEPTH: [&str; 3] = ["blind", "depth", "deep"];
const BEHIND_A_DEPTH: [&str; 2] = ["deep", "depth"];

/// A name in the text, and the address of what it names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// Where it stands, in bytes.
    pub place: Range<usize>,
    /// `/threads/ba/4`.
    pub address: String,
}

/// What may still be tried in one text, however many pieces it comes in.
#[derive(Clone, Copy, Debug)]
pub struct Budget {
    links: usize,
    tried: usize,
}

impl Default for Budget {
    fn default() -> Self {
        Self { links: LINKS, tried: TRIED }
    }
}

/// The names in a text, in order.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::figures::{find, Budget};
/// let text = "Drilled No. 43, tapped 4 BA.";
/// let found: Vec<_> = find(text, &mut Budget::default());
/// assert_eq!(&text[found[0].place.clone()], "No. 43");
/// assert_eq!(found[0].address, "/drills/number/43");
/// assert_eq!(found[1].address, "/threads/ba/4");
/// ```
#[must_use]
pub fn find(text: &str, budget: &mut Budget) -> Vec<Named> {
    let words = words(text);
    let mut found = Vec::new();
    let mut place = 0;
    while place < words.len() && budget.links > 0 && budget.tried > 0 {
        let named = may_begin(text, words.get(place))
            .then(|| (1..=WORDS).rev().find_map(|count| named(text, &words, place, count, budget)))
            .flatten();
        match named {
            Some((named, count)) => {
                budget.links -= 1;
                found.push(named);
                place += count;
            }
            None => place += 1,
        }
    }
    found
}

/// The words of a text: what stands between spaces.
fn words(text: &str) -> Vec<Range<usize>> {
    let mut words = Vec::new();
    let mut start = None;
    for (place, c) in text.char_indices() {
        match (c.is_whitespace(), start) {
            (true, Some(began)) => {
                words.push(began..place);
                start = None;
            }
            (false, None) => start = Some(place),
            _ => {}
        }
    }
    if let Some(began) = start {
        words.push(began..text.len());
    }
    words
}

/// Whether a name can begin with this word: a number, `M3`, `#43`, `No.` and `letter`, or the mark of a
/// thread system.
fn may_begin(text: &str, word: Option<&Range<usize>>) -> bool {
    let Some(word) = word.and_then(|place| text.get(place.clone())) else { return false };
    let word = word.trim_start_matches(['(', '[', '“', '‘', '"', '\'']);
    let has_digit = word.bytes().any(|byte| byte.is_ascii_digit());
    let lower = word.trim_end_matches('.').to_ascii_lowercase();
    (has_digit && word.len() <= 24)
        || ["no", "number", "letter"].contains(&lower.as_str())
        || threads::systems().iter().any(|system| system.mark.eq_ignore_ascii_case(&lower))
}

fn named(
    text: &str,
    words: &[Range<usize>],
    place: usize,
    count: usize,
    budget: &mut Budget,
) -> Option<(Named, usize)> {
    let (first, last) = (words.get(place)?, words.get(place + count - 1)?);
    let whole = text.get(first.start..last.end)?;
    let inner = whole.trim_start_matches(['(', '[', '“', '‘', '"', '\'']);
    let start = first.start + (whole.len() - inner.len());
    // The inch mark belongs to the figure, a closing quotation mark does not.
    let inner = inner.trim_end_matches(['.', ',', ';', ':', ')', ']', '!', '?', '”', '’', '\'']);
    if inner.len() > 40 || inner.contains(['\n', ',', ';']) || !is_a_figure(inner) {
        return None;
    }
    budget.tried = budget.tried.checked_sub(1)?;
    let address = address(inner)?;
    if address.starts_with("/drills/") && !is_marked(inner) && is_a_depth(text, words, place, count)
    {
        return None;
    }
    Some((Named { place: start..start + inner.len(), address }, count))
}

/// A figure with a unit or a system: it has a digit, or is a letter drill by name, and more than that.
fn is_a_figure(text: &str) -> bool {
    let lower = text.to_ascii_lowercase();
    let is_letter_drill = lower.strip_prefix("letter ").is_some_and(|rest| rest.len() == 1);
    let has_digit = text.bytes().any(|byte| byte.is_ascii_digit());
    let has_unit = text.contains(['"', '#', '″']) || text.chars().any(char::is_alphabetic);
    is_letter_drill || (has_digit && has_unit)
}

/// Whether a drill's mark stands before it.
fn is_marked(text: &str) -> bool {
    let lower = text.to_lowercase();
    ["#", "no", "number", "letter"].iter().any(|mark| lower.starts_with(mark))
        && !lower.contains('-')
}

/// Whether the words around a length say how deep something goes: "blind 10 mm", "to a depth of 8 mm", "3 mm deep".
fn is_a_depth(text: &str, words: &[Range<usize>], place: usize, count: usize) -> bool {
    let word = |place: usize| words.get(place).and_then(|word| text.get(word.clone()));
    let before = |back: usize| place.checked_sub(back).and_then(word);
    let folded =
        |word: &str| word.trim_matches(|c: char| !c.is_alphanumeric()).to_ascii_lowercase();
    // A sentence that ends says nothing of what begins behind it.
    let said_before = |back: usize| {
        let word = before(back).filter(|word| !word.ends_with(['.', ';', '!', '?']));
        word.map(folded).unwrap_or_default()
    };
    let of = said_before(1) == "of" && said_before(2) == "depth";
    let ends =
        word(place + count - 1).is_some_and(|last| last.ends_with(['.', ',', ';', ':', '!', '?']));
    let behind = word(place + count).filter(|_| !ends).map(folded).unwrap_or_default();
    of || BEFORE_A_DEPTH.contains(&said_before(1).as_str())
        || BEHIND_A_DEPTH.contains(&behind.as_str())
}

/// A size with the unit of length behind it, or a drill's mark before it, is a drill; else a thread.
fn address(text: &str) -> Option<String> {
    let lower = text.to_lowercase();
    let is_length =
        ["mm", "in", "in.", "inch", "thou", "\"", "″"].iter().any(|unit| lower.ends_with(unit));
    if let Ok(thread) = threads::read::candidates(text) {
        return Some(thread.path());
    }
    if !is_length && !is_marked(text) {
        return None;
    }
    drills::read::read(text).ok().map(drills::Drill::path)
}

#[cfg(test)]
mod tests {
    use super::{Budget, find};

    #[test]
    fn a_length_that_says_how_deep_is_no_drill() {
        for (text, expected) in [
            ("Tapped 4 BA, blind 10 mm.", &["4 BA"][..]),
            ("blind (10 mm)", &[]),
            ("Drilled 3.3 mm, 10 mm deep, then 4 BA.", &["3.3 mm", "4 BA"]),
            ("to a depth of 8 mm with a 3.3 mm drill", &["3.3 mm"]),
            ("Depth: 8 mm", &[]),
            ("a 10mm depth", &[]),
            ("1/4 in deep", &[]),
            // Another sentence, another thing; and what is marked as a drill is one.
            ("It is blind. 10 mm drill, dry.", &["10 mm"]),
            ("blind, No. 43", &["No. 43"]),
            ("blind 4 BA", &["4 BA"]),
            ("Drilled 10 mm. Deep swarf.", &["10 mm"]),
            ("10 mm, deep", &["10 mm"]),
        ] {
            let found = find(text, &mut Budget::default());
            let found: Vec<&str> = found.iter().map(|named| &text[named.place.clone()]).collect();
            assert_eq!(found, expected, "{text}");
        }
    }
}
