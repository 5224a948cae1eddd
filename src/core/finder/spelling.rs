//! Words put right: a misspelt word is taken for the nearest one the reference knows.

use super::index;
use super::letters::{letters_apart, most_wrong};

/// So many words are put right, no more.
const MOST_WORDS: usize = 8;

/// A text with its misspelt words put right.
#[derive(Debug)]
pub(super) struct Corrected {
    pub(super) text: String,
    /// How many letters were wrong, one or more.
    pub(super) letters: usize,
}

/// The text with each misspelt word put right; `None` where every word is known, or starts a word
/// that is, or is like none.
pub(super) fn corrected(text: &str) -> Option<Corrected> {
    let mut right = Corrected { text: String::with_capacity(text.len()), letters: 0 };
    for (place, run) in runs(text).enumerate() {
        match nearest(run).filter(|_| place < 2 * MOST_WORDS) {
            Some((word, letters)) => {
                right.text.push_str(word);
                right.letters += letters;
            }
            None => right.text.push_str(run),
        }
    }
    (right.letters > 0).then_some(right)
}

/// The text cut between letters and everything else; nothing is left out.
fn runs(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    std::iter::from_fn(move || {
        let is_word = rest.chars().next()?.is_alphabetic();
        let end = rest.find(|next: char| next.is_alphabetic() != is_word).unwrap_or(rest.len());
        let (run, behind) = rest.split_at_checked(end)?;
        rest = behind;
        Some(run)
    })
}

/// The known word nearest to a misspelt one, with how many letters are wrong. Of words as near, one
/// that starts the same, then one as long, then the first in the alphabet. The start of a known word
/// needs no putting right: the search by words has it.
///
/// # Examples
/// ```
/// use holewright_core::finder::nearest;
/// assert_eq!(nearest("phospher"), Some(("phosphor", 1)));
/// assert_eq!(nearest("phosphor"), None);
/// ```
#[must_use]
pub fn nearest(typed: &str) -> Option<(&'static str, usize)> {
    let most = most_wrong(typed.chars().count())?;
    if !typed.starts_with(char::is_alphabetic) || index::is_start_of_word(typed) {
        return None;
    }
    index::words()
        .filter_map(|word| Some((letters_apart(typed, word, most)?, word)))
        .min_by_key(|(letters, word)| {
            let is_elsewhere = word.chars().next() != typed.chars().next();
            (*letters, is_elsewhere, word.len().abs_diff(typed.len()), *word)
        })
        .map(|(letters, word)| (word, letters))
}
