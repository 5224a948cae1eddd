//! Words put right: a misspelt word is taken for the nearest one the reference knows.

use super::index;

/// From so many letters on, one may be wrong. A shorter word is never put right: `bsf` and `bsp` are
/// one letter apart.
const ONE_MAY: usize = 4;
/// From so many letters on, two may be wrong.
const TWO_MAY: usize = 7;
/// No word of the reference is longer.
const LONGEST: usize = 24;
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
fn nearest(typed: &str) -> Option<(&'static str, usize)> {
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

/// How many letters may be wrong in a word of this length; `None` where none may.
pub(super) const fn most_wrong(length: usize) -> Option<usize> {
    match length {
        ONE_MAY..TWO_MAY => Some(1),
        TWO_MAY..=LONGEST => Some(2),
        _ => None,
    }
}

/// How many letters are wrong, if no more than so many: left out, put in, changed, or swapped with
/// the next (Damerau's distance, no letter touched twice).
pub(super) fn letters_apart(typed: &str, word: &str, most: usize) -> Option<usize> {
    if typed.chars().count().abs_diff(word.chars().count()) > most {
        return None;
    }
    let word: Vec<char> = word.chars().collect();
    let at = |row: &[usize], place: usize| row.get(place).copied().unwrap_or(usize::MAX / 2);
    let mut two_above: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=word.len()).collect();
    let mut row: Vec<usize> = Vec::with_capacity(word.len() + 1);
    let mut letter_above = None;
    for (line, letter) in typed.chars().enumerate() {
        row.clear();
        row.push(line + 1);
        let mut wanted_before = None;
        for (place, wanted) in word.iter().copied().enumerate() {
            let changed = at(&above, place) + usize::from(letter != wanted);
            let mut least = changed.min(at(&above, place + 1) + 1).min(at(&row, place) + 1);
            if wanted_before == Some(letter) && letter_above == Some(wanted) {
                least = least.min(at(&two_above, place - 1) + 1);
            }
            row.push(least);
            wanted_before = Some(wanted);
        }
        if row.iter().all(|wrong| *wrong > most) {
            return None;
        }
        letter_above = Some(letter);
        std::mem::swap(&mut two_above, &mut above);
        std::mem::swap(&mut above, &mut row);
    }
    above.last().copied().filter(|wrong| *wrong <= most)
}
