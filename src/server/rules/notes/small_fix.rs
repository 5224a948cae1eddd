//! How much of a note whoever decides may change and still show it under its author's name.

use std::collections::HashMap;

/// So many words may go or come in any note.
const ALWAYS: i64 = 12;
/// And one in so many of a longer one.
const ONE_IN: i64 = 10;
/// No usual word has so many letters.
const USUAL: usize = 16;

/// Whether what changed of the title and the text is spelling, a metal, a title: few words. Their order does not
/// count.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::small_fix::is_small;
/// let before = "Reeming gun metal. It grabed where it broke through.";
/// assert!(is_small(before, "Reaming gunmetal. It grabbed where it broke through."));
/// assert!(!is_small(before, "Leave the chuck key in the chuck, and hold small work by hand: it is quicker so."));
/// ```
#[must_use]
pub fn is_small(before: &str, after: &str) -> bool {
    let mut words: HashMap<&str, i64> = HashMap::new();
    for word in split(before) {
        *words.entry(word).or_default() += 1;
    }
    let many: i64 = split(before).map(weight).sum();
    for word in split(after) {
        *words.entry(word).or_default() -= 1;
    }
    let weighed = |sign: i64| -> i64 {
        words.iter().map(|(word, count)| (count * sign).max(0) * weight(word)).sum()
    };
    weighed(1).max(weighed(-1)) <= ALWAYS + many / ONE_IN
}

fn split(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty())
}

/// What stands without a gap counts as so many words of the usual length.
fn weight(word: &str) -> i64 {
    i64::try_from(1 + word.chars().count() / USUAL).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests {
    use super::is_small;

    #[test]
    fn a_long_note_may_lose_one_word_in_ten() {
        let words = |from: usize, many: usize| {
            (from..from + many).map(|n| format!("w{n}")).collect::<Vec<_>>().join(" ")
        };
        let before = words(0, 200);
        assert!(is_small(&before, &words(32, 200)), "32 of 200 went and came");
        assert!(!is_small(&before, &words(33, 200)));
        assert!(!is_small(&before, &words(0, 300)), "a hundred more");
        assert!(!is_small(&before, ""));
        assert!(!is_small("Gland nut", &"hold-it-by-hand.".repeat(10)), "joined by hyphens");
        assert!(!is_small("Gland nut", &"holditbyhand".repeat(30)), "without a gap");
        assert!(is_small("", &words(0, 12)) && !is_small("", &words(0, 13)));
    }
}
