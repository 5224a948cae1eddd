//! How many letters two words are apart, and how many may be.

/// From so many letters on, one may be wrong. A shorter word is never put right: `bsf` and `bsp` are
/// one letter apart.
const ONE_MAY: usize = 4;
/// From so many letters on, two may be wrong.
const TWO_MAY: usize = 7;
/// No word of the reference is longer.
const LONGEST: usize = 24;

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
///
/// # Examples
/// ```
/// use holewright_core::finder::letters_apart;
/// assert_eq!(letters_apart("iorn", "iron", 2), Some(1));
/// assert_eq!(letters_apart("iorn", "copper", 2), None);
/// ```
#[must_use]
pub fn letters_apart(typed: &str, word: &str, most: usize) -> Option<usize> {
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
