//! Whether two notes say much the same, by the runs of three words that stand in both.

use std::collections::HashSet;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};

/// So many words of a note are looked at, and no more.
const WORDS: usize = 1_500;
/// How many words are a run.
const RUN: usize = 3;
/// A note with fewer runs says too little to be like another.
const FEWEST: usize = 5;
/// The share of the shorter note's runs, in hundredths, from which on both say much the same.
const SHARE: usize = 60;

/// The runs of words of one note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Runs(HashSet<u64>);

impl Runs {
    /// Those of a text. Signs, capitals and spaces do not count.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
        let words: Vec<String> = words.take(WORDS).map(str::to_lowercase).collect();
        let run = |words: &[String]| {
            let mut hasher = DefaultHasher::new();
            words.hash(&mut hasher);
            hasher.finish()
        };
        Self(words.windows(RUN).map(run).collect())
    }

    /// Whether both say much the same: most of what the shorter says stands in the other.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::alike::Runs;
    /// let one = Runs::of("Tapping 4 BA in gunmetal: drilled No. 32, dry, and the tap squealed.");
    /// let again = Runs::of("Drilled No. 32, dry, and the tap squealed. It broke off in the third hole.");
    /// let other = Runs::of("Turning a gland nut: the thread first, then the bore, then part it off.");
    /// assert!(one.are_like(&again) && again.are_like(&one));
    /// assert!(!one.are_like(&other));
    /// ```
    #[must_use]
    pub fn are_like(&self, other: &Self) -> bool {
        let shorter = self.0.len().min(other.0.len());
        let both = self.0.intersection(&other.0).count();
        shorter >= FEWEST && both * 100 >= shorter * SHARE
    }
}

/// The words that tell a title from others: the two longest, by which earlier notes are looked for.
#[must_use]
pub fn telling(title: &str) -> Vec<String> {
    let words = title.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let mut words: Vec<String> = words.take(30).map(str::to_lowercase).collect();
    words.sort_by_key(|word| std::cmp::Reverse(word.chars().count()));
    words.dedup();
    words.truncate(2);
    words
}
