//! One sign for one source: a letter behind what was read in it, and the key that says the source once.

use super::cited;
use super::sentence::set;
use holewright_core::tables::materials::Advice;
use holewright_core::tables::source::Source;

/// The rules of the trade that no source prints.
pub(crate) const PRACTICE: Source = Source::common_practice("workshop practice");

/// The sources of a page, in the order in which they are first needed.
#[derive(Debug, Default)]
pub(crate) struct Key {
    sources: Vec<String>,
}

/// The sign of a source, behind a figure or a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Sign {
    /// `a`
    pub(crate) letter: String,
}

/// A line of the key.
#[derive(Clone, Debug)]
pub(crate) struct KeyLine {
    pub(crate) letter: String,
    pub(crate) source: String,
}

/// Words with the sign of their source.
#[derive(Clone, Debug)]
pub(crate) struct Signed {
    pub(crate) text: String,
    pub(crate) sign: Sign,
}

impl Key {
    /// The sign of a source: a new letter, or the one it has already.
    pub(crate) fn sign(&mut self, source: Source) -> Sign {
        let words = cited::source(source);
        let held = self.sources.iter().position(|held| *held == words);
        let place = held.unwrap_or_else(|| {
            self.sources.push(words);
            self.sources.len() - 1
        });
        Sign { letter: letter(place) }
    }

    /// Advice with its sign.
    pub(crate) fn advice(&mut self, advice: &Advice) -> Signed {
        self.signed(advice.text, advice.source)
    }

    /// Words with the sign of their source.
    pub(crate) fn signed(&mut self, text: &str, source: Source) -> Signed {
        Signed { text: set(text), sign: self.sign(source) }
    }

    /// A rule of the trade with its sign.
    pub(crate) fn practice(&mut self, text: &str) -> Signed {
        self.signed(text, PRACTICE)
    }

    /// Each piece of advice with its sign.
    pub(crate) fn all<'a>(&mut self, advice: impl IntoIterator<Item = &'a Advice>) -> Vec<Signed> {
        advice.into_iter().map(|advice| self.advice(advice)).collect()
    }

    /// What the signs stand for, in their order.
    pub(crate) fn lines(self) -> Vec<KeyLine> {
        let sources = self.sources.into_iter().enumerate();
        sources.map(|(place, source)| KeyLine { letter: letter(place), source }).collect()
    }
}

/// `a` to `z`, then `aa` to `zz`: enough for any page.
fn letter(place: usize) -> String {
    let one = |place: usize| char::from(b'a' + u8::try_from(place % 26).unwrap_or(0));
    match place.checked_sub(26) {
        None => one(place).to_string(),
        Some(beyond) => format!("{}{}", one(beyond / 26), one(beyond)),
    }
}

#[cfg(test)]
mod tests {
    use super::{Key, letter};
    use holewright_core::tables::source::Source;

    #[test]
    fn a_source_has_one_sign_wherever_it_stands() {
        let mut key = Key::default();
        let handbook = Source::published("a handbook, p. 1");
        let practice = Source::common_practice("workshop practice");
        let signs = [handbook, practice, handbook].map(|source| key.sign(source).letter);
        assert_eq!(signs, ["a", "b", "a"]);
        let lines: Vec<_> = key.lines().into_iter().map(|line| line.source).collect();
        assert_eq!(lines, ["a handbook, p. 1", "common practice, no source"]);
    }

    #[test]
    fn letters_go_on_behind_z() {
        assert_eq!([25, 26, 27, 52].map(letter), ["z", "aa", "ab", "ba"]);
    }
}
