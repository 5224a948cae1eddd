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

/// A size with the unit of length behind it, or a drill's mark before it, is a drill; else a thread.
fn address(text: &str) -> Option<String> {
    let lower = text.to_lowercase();
    let is_length =
        ["mm", "in", "in.", "inch", "thou", "\"", "″"].iter().any(|unit| lower.ends_with(unit));
    let is_marked = ["#", "no", "number", "letter"].iter().any(|mark| lower.starts_with(mark))
        && !lower.contains('-');
    if let Ok(thread) = threads::read::candidates(text) {
        return Some(thread.path());
    }
    if !is_length && !is_marked {
        return None;
    }
    drills::read::read(text).ok().map(drills::Drill::path)
}
