//! Words of a search that stand in no note and name nothing, and what they are read as: a name of the tables, or
//! the nearest word that some note has.
//!
//! Leaves out which words those are: the index says.

use holewright_core::finder::{self, letters_apart};

use super::asked::{Forms, plain, read, stem};
use super::words::folded;

/// So many words of a search are read as others, no more.
pub const MOST: usize = 4;
/// A word of a note is looked for from so many letters on; in one of so many, two letters may be wrong.
const LETTERS: (usize, usize) = (5, 8);

/// What was typed, with some of its words read as others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    typed: Vec<String>,
    /// How many were read as others.
    changed: usize,
}

impl Reading {
    /// As it was typed.
    #[must_use]
    pub fn of(typed: &str) -> Self {
        Self { typed: typed.split_whitespace().map(str::to_owned).collect(), changed: 0 }
    }

    /// The text, if some word of it is read as another.
    #[must_use]
    pub fn changed(&self) -> Option<String> {
        (self.changed > 0).then(|| self.typed.join(" "))
    }

    /// Reads these words as those that the tables know, where they then name a thing, alone or with the words beside
    /// them; says which are left.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::misspelt::Reading;
    /// let mut reading = Reading::of("silver stel squeel");
    /// assert_eq!(reading.name_things(&["stel", "squeel"]), ["squeel"]);
    /// assert_eq!(reading.changed().as_deref(), Some("silver steel squeel"));
    /// ```
    pub fn name_things<'a>(&mut self, strange: &[&'a str]) -> Vec<&'a str> {
        let mut left = Vec::new();
        for word in strange {
            let typed = folded(word);
            let known = finder::nearest(&typed).map(|(known, _)| known);
            let known = known.filter(|known| known.get(..1) == typed.get(..1));
            match known.and_then(|known| self.with(word, known).filter(|with| with.names(known))) {
                Some(with) => *self = with,
                None => left.push(*word),
            }
        }
        left
    }

    /// Reads a word as this one.
    pub fn take(&mut self, word: &str, for_it: &str) {
        if let Some(with) = self.with(word, for_it) {
            *self = with;
        }
    }

    fn with(&self, word: &str, for_it: &str) -> Option<Self> {
        let is_it = |typed: &String| plain(typed).is_some_and(|typed| typed == word);
        let mut with = self.clone();
        let places = with.typed.iter_mut().filter(|typed| is_it(typed));
        let changed = places.map(|typed| for_it.clone_into(typed)).count();
        (changed > 0).then_some(())?;
        with.changed += 1;
        Some(with)
    }

    /// Whether a word of it is, or is part of, the name of a thing.
    fn names(&self, word: &str) -> bool {
        let asked = read(&self.typed.join(" "));
        asked.iter().any(|asked| asked.word == word && !asked.things.is_empty())
    }
}

/// What the words of the notes begin with among which the nearest to this is looked for: its own first two letters, and
/// the first with the third, which are those of a word where two letters are swapped or one is put in. None of a word
/// that is too short.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::misspelt::beginnings;
/// assert_eq!(beginnings("wnadered"), ["wn", "wa"]);
/// assert_eq!(beginnings("iorn"), [""; 0]);
/// ```
#[must_use]
pub fn beginnings(word: &str) -> Vec<String> {
    let letters: Vec<char> = folded(word).chars().collect();
    let [first, second, third, ..] = letters[..] else { return Vec::new() };
    if letters.len() < LETTERS.0 {
        return Vec::new();
    }
    let mut both = vec![format!("{first}{second}"), format!("{first}{third}")];
    both.dedup();
    both
}

/// Of the words of the notes the nearest to this, in any of its forms.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::misspelt::nearest;
/// let written = ["square", "squeals", "squeeze"].map(str::to_owned);
/// assert_eq!(nearest("squeel", &written), Some("squeals"));
/// assert_eq!(nearest("squint", &written), None);
/// ```
#[must_use]
pub fn nearest<'a>(word: &str, written: &'a [String]) -> Option<&'a str> {
    let word = folded(word);
    let most = if word.chars().count() >= LETTERS.1 { 2 } else { 1 };
    let apart = |other: &str| letters_apart(&word, other, most);
    let near = written.iter().filter(|other| Forms::of(other).is_some()).filter_map(|other| {
        let own = [apart(other), apart(&stem(other))];
        Some((own.into_iter().flatten().min()?, other.len().abs_diff(word.len()), other.as_str()))
    });
    near.min().map(|(.., other)| other)
}
