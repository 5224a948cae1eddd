//! How much of a note whoever decides may change and still show it under its author's name.

use std::collections::HashMap;

/// So many words may go or come in any note.
const ALWAYS: usize = 12;
/// And one in so many of a longer one.
const ONE_IN: usize = 10;

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
    for word in before.split_whitespace() {
        *words.entry(word).or_default() += 1;
    }
    let many = before.split_whitespace().count();
    for word in after.split_whitespace() {
        *words.entry(word).or_default() -= 1;
    }
    let gone: i64 = words.values().filter(|count| **count > 0).sum();
    let come: i64 = -words.values().filter(|count| **count < 0).sum::<i64>();
    let most = i64::try_from(ALWAYS + many / ONE_IN).unwrap_or(i64::MAX);
    gone.max(come) <= most
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
        assert!(is_small("", &words(0, 12)) && !is_small("", &words(0, 13)));
    }
}
