//! A plain text cut into the words that are compared, and joined into one.
//!
//! Letters and digits make a word; a point or a stroke belongs to it between two digits, so `2.05`
//! and `7/64` are words, and `B.A.` is two. A mixed number, `1 1/4`, is one word, `1-1/4`.

/// The words of a plain text, in the order written.
pub(super) fn words(plain: &str) -> Vec<String> {
    let mut words = Vec::new();
    let mut word = String::new();
    let mut letters = plain.chars().peekable();
    while let Some(letter) = letters.next() {
        let is_inside = matches!(letter, '.' | '/')
            && word.ends_with(|before: char| before.is_ascii_digit())
            && letters.peek().is_some_and(char::is_ascii_digit);
        if letter.is_alphanumeric() || is_inside {
            word.push(letter);
        } else {
            push(&mut words, &mut word);
        }
    }
    push(&mut words, &mut word);
    words
}

/// Adds a word that has ended; a fraction goes to the whole number before it.
fn push(words: &mut Vec<String>, word: &mut String) {
    if word.is_empty() {
        return;
    }
    match words.last_mut() {
        Some(whole) if word.contains('/') && is_whole(whole) => {
            whole.push('-');
            whole.push_str(word);
        }
        _ => words.push(word.clone()),
    }
    word.clear();
}

/// Whether a word is a whole number that a fraction may follow.
fn is_whole(word: &str) -> bool {
    word.len() <= 2 && word.chars().all(|letter| letter.is_ascii_digit())
}

/// A plain text with nothing between its words: `EN 1A` and `en-1a` are one.
pub(super) fn joined(plain: &str) -> String {
    words(plain).concat()
}

/// Words that join others and say nothing themselves. `in` is among them: beside a size it is the
/// inch, and every size of an inch thread has it.
const FILLERS: [&str; 14] =
    ["a", "an", "and", "at", "by", "for", "from", "in", "into", "of", "on", "the", "to", "with"];

/// Whether a word says nothing about what is meant.
pub(super) fn is_filler(word: &str) -> bool {
    FILLERS.contains(&word)
}

/// Whether there is a figure in it.
pub(super) fn has_figure(word: &str) -> bool {
    word.contains(|letter: char| letter.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::words;

    #[test]
    fn a_fraction_goes_to_the_whole_number_before_it_and_to_nothing_else() {
        for (text, expected) in [
            ("1 1/4 bsw", &["1-1/4", "bsw"][..]),
            ("40 1/4", &["40-1/4"]),
            ("100 1/4", &["100", "1/4"]),
            ("m6 1/4", &["m6", "1/4"]),
            ("2.05 mm", &["2.05", "mm"]),
            ("a.b 1/x x/1 5.", &["a", "b", "1", "x", "x", "1", "5"]),
        ] {
            assert_eq!(words(text), expected, "{text}");
        }
    }
}
