//! Whether two notes say much the same, by the runs of three words that stand in both; of one author's on one thread
//! in one material by their words.

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
        let words: Vec<String> = words(text).collect();
        Self(words.windows(RUN).map(hashed).collect())
    }

    /// Whether both say much the same: most of what the shorter says stands in the other.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::alike::Runs;
    /// let one = Runs::of("Tapping 4 BA in gunmetal: drilled No. 32, dry, and the tap squealed.");
    /// let again = Runs::of("Drilled No. 32, dry, and the tap squealed. It broke off.");
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

/// Of what one author says of one thread in one material so much of the shorter's words, in hundredths, is the same.
const SHARE_OF_WORDS: usize = 50;

/// What one note says, to be compared with others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// With its title.
    all: Runs,
    /// Without: another title does not make another note.
    text: Runs,
    words: HashSet<u64>,
}

impl Said {
    /// A note's title and text.
    #[must_use]
    pub fn of(title: &str, text: &str) -> Self {
        let all = format!("{title}\n{text}");
        let words = words(text).map(|word| hashed(&word)).collect();
        Self { all: Runs::of(&all), text: Runs::of(text), words }
    }

    /// Whether both say much the same. Two are close that one author wrote on one thread in one material.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::alike::Said;
    /// let text = "Drilled 3.3 mm, paraffin, and the tap squealed in the third hole.";
    /// let one = Said::of("Tapping 4 BA in gunmetal", text);
    /// // Another title, and the last words gone.
    /// let trimmed = Said::of("Second thoughts on a squealing tap", "Drilled 3.3 mm, paraffin, and the tap squealed.");
    /// assert!(one.are_like(&trimmed, false));
    /// // Told again in other words.
    /// let again = Said::of("Squeal", "The tap squealed in paraffin; drilled it 3.3 mm once more.");
    /// assert!(one.are_like(&again, true) && !one.are_like(&again, false));
    /// let other = Said::of("Holding it", "Soft jaws turned to fit, and a stop behind the work.");
    /// assert!(!one.are_like(&other, true));
    /// ```
    #[must_use]
    pub fn are_like(&self, other: &Self, are_close: bool) -> bool {
        let shorter = self.words.len().min(other.words.len());
        let both = self.words.intersection(&other.words).count();
        let is_told_again = shorter >= FEWEST && both * 100 >= shorter * SHARE_OF_WORDS;
        self.all.are_like(&other.all)
            || self.text.are_like(&other.text)
            || (are_close && is_told_again)
    }
}

fn words(text: &str) -> impl Iterator<Item = String> {
    let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.take(WORDS).map(str::to_lowercase)
}

fn hashed(words: &(impl Hash + ?Sized)) -> u64 {
    let mut hasher = DefaultHasher::new();
    words.hash(&mut hasher);
    hasher.finish()
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
