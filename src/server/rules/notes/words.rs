//! The words of a text, as the index of the notes takes them: letters and figures that stand together.

use std::borrow::Cow;
use std::collections::HashMap;

use icu_normalizer::DecomposingNormalizerBorrowed as DecomposingNormalizer;

/// Where a word stands in its text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// Where it begins.
    pub from: usize,
    /// Where it has ended.
    pub to: usize,
}

impl Word {
    /// The word, of the text it stands in.
    #[must_use]
    pub fn of(self, text: &str) -> &str {
        text.get(self.from..self.to).unwrap_or_default()
    }
}

/// The words of a text.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::words::words;
/// let found: Vec<&str> = words("3.3 mm, no café").map(|word| word.of("3.3 mm, no café")).collect();
/// assert_eq!(found, ["3", "3", "mm", "no", "café"]);
/// ```
pub fn words(text: &str) -> impl Iterator<Item = Word> {
    let mut letters = text.char_indices().peekable();
    std::iter::from_fn(move || {
        let (from, first) = letters.find(|(_, letter)| is_letter(*letter))?;
        let mut to = from + first.len_utf8();
        while let Some((at, letter)) =
            letters.next_if(|(_, letter)| is_letter(*letter) || is_mark(*letter))
        {
            to = at + letter.len_utf8();
        }
        Some(Word { from, to })
    })
}

/// Small letters without accents, as the index holds words.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::words::folded;
/// assert_eq!(folded("CAFÉ"), "cafe");
/// ```
#[must_use]
pub fn folded(word: &str) -> Cow<'_, str> {
    if word.bytes().all(|byte| byte.is_ascii() && !byte.is_ascii_uppercase()) {
        return word.into();
    }
    let apart = DecomposingNormalizer::new_nfd().normalize(word);
    let letters = apart.chars().filter(|letter| !is_mark(*letter));
    letters.flat_map(char::to_lowercase).collect()
}

/// How often each word was looked for. The index goes through all the places of a word each time.
#[derive(Debug, Default)]
pub struct Uses(HashMap<String, usize>);

impl Uses {
    /// The most times that one word is looked for, alone or with others that stand beside it.
    pub const MOST: usize = 4;

    /// The text up to where a word stands in it once more than may be.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::words::Uses;
    /// let mut uses = Uses::default();
    /// assert_eq!(uses.within("3.3"), "3.3");
    /// assert_eq!(uses.within("3+3-3"), "3+3-");
    /// ```
    pub fn within<'a>(&mut self, text: &'a str) -> &'a str {
        for word in least_words(text) {
            let uses = self.0.entry(folded(word.of(text)).into_owned()).or_default();
            if *uses == Self::MOST {
                return text.get(..word.from).unwrap_or_default();
            }
            *uses += 1;
        }
        text
    }
}

/// The words of a text, divided wherever the index could divide them: it does not know each letter that
/// we do.
fn least_words(text: &str) -> impl Iterator<Item = Word> {
    let is_plain = |letter: char| {
        let known = ['\u{0}'..='\u{24f}', '\u{386}'..='\u{523}'];
        letter.is_alphanumeric() && known.iter().any(|letters| letters.contains(&letter))
    };
    let mut letters = text.char_indices().peekable();
    std::iter::from_fn(move || {
        let (from, first) = letters.find(|(_, letter)| is_letter(*letter))?;
        let mut to = from + first.len_utf8();
        while is_plain(first)
            && let Some((at, letter)) = letters.next_if(|(_, letter)| is_plain(*letter))
        {
            to = at + letter.len_utf8();
        }
        Some(Word { from, to })
    })
}

/// A letter, a figure, or a character of private use: the index takes these for letters too.
fn is_letter(letter: char) -> bool {
    letter.is_alphanumeric() || ('\u{e000}'..='\u{f8ff}').contains(&letter)
}

/// An accent behind its letter.
fn is_mark(letter: char) -> bool {
    ('\u{300}'..='\u{36f}').contains(&letter)
}

#[cfg(test)]
mod tests {
    use super::Uses;

    #[test]
    fn no_way_of_writing_it_looks_for_a_word_more_often_than_may_be() {
        for divider in ["+", " ", "\u{338}", "\u{1e900}", "\u{8a1}", "\u{93f}"] {
            let text = ["a"; 9].join(divider);
            let mut uses = Uses::default();
            let within = uses.within(&text);
            assert_eq!(within.matches('a').count(), Uses::MOST, "{text}: {within}");
        }
        let mut uses = Uses::default();
        assert_eq!(uses.within("a+á+À+ä+å"), "a+á+À+ä+");
        assert_eq!(uses.within("A"), "");
        assert_eq!(uses.within("3.3 3.4 молоко 机械机"), "3.3 3.4 молоко 机械机");
    }
}
