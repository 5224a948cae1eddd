//! What changed from one wording to the next, word by word.
//!
//! A comparison may take as many steps as the square of its words. Where that is too much, lines are
//! compared, and words in those that changed; where that is too much still, what changed is shown as
//! one stretch. It hangs on the texts alone and not on the clock, so that a page is the same each time.

use similar::{ChangeTag, TextDiff};

/// The steps of one comparison: two notes of some thousand words.
const ONE: u64 = 16_000_000;
/// The steps of all that stand on a page.
const PAGE: u64 = 3 * ONE;

/// A stretch of text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// In both.
    Same(String),
    /// In the old one alone.
    Gone(String),
    /// In the new one alone.
    Added(String),
}

/// The stretches of both texts, in the order of reading. A space alone between two changed words is
/// changed with them: "one two" for "five six" reads as one change and not as two.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::difference::{between, Part};
/// let parts = between("drill 2.95 mm deep", "drill No. 32 deep");
/// assert_eq!(parts[1], Part::Gone("2.95 mm".to_owned()));
/// assert_eq!(parts[2], Part::Added("No. 32".to_owned()));
/// ```
#[must_use]
pub fn between(old: &str, new: &str) -> Vec<Part> {
    Effort(ONE).between(old, new)
}

/// The steps that may still be taken.
#[derive(Debug)]
pub struct Effort(u64);

impl Effort {
    /// Those for all comparisons of one page.
    #[must_use]
    pub const fn of_a_page() -> Self {
        Self(PAGE)
    }

    /// As [`between`], as finely as these steps allow.
    #[must_use]
    pub fn between(&mut self, old: &str, new: &str) -> Vec<Part> {
        if self.suffices_for(words(old) + words(new)) {
            return by_words(old, new);
        }
        let mut parts = Vec::new();
        if !self.suffices_for(lines(old) + lines(new)) {
            self.region(&mut parts, old, new);
            return parts;
        }
        let (mut gone, mut added) = (String::new(), String::new());
        for line in TextDiff::from_lines(old, new).iter_all_changes() {
            match line.tag() {
                ChangeTag::Delete => gone.push_str(line.value()),
                ChangeTag::Insert => added.push_str(line.value()),
                ChangeTag::Equal => {
                    self.region(&mut parts, &gone, &added);
                    gone.clear();
                    added.clear();
                    keep(&mut parts, line.value());
                }
            }
        }
        self.region(&mut parts, &gone, &added);
        parts
    }

    /// Puts what took the place of what behind the parts.
    fn region(&mut self, parts: &mut Vec<Part>, gone: &str, added: &str) {
        if self.suffices_for(words(gone) + words(added)) {
            for part in by_words(gone, added) {
                match part {
                    Part::Same(text) => keep(parts, &text),
                    changed => parts.push(changed),
                }
            }
            return;
        }
        if !gone.is_empty() {
            parts.push(Part::Gone(gone.to_owned()));
        }
        if !added.is_empty() {
            parts.push(Part::Added(added.to_owned()));
        }
    }

    /// Takes the steps for a comparison of so many pieces, if there are enough.
    fn suffices_for(&mut self, pieces: usize) -> bool {
        let steps = u64::try_from(pieces).unwrap_or(u64::MAX).saturating_pow(2);
        let suffices = steps <= self.0.min(ONE);
        self.0 -= if suffices { steps } else { 0 };
        suffices
    }
}

fn words(text: &str) -> usize {
    text.split_whitespace().count()
}

fn lines(text: &str) -> usize {
    text.lines().count()
}

fn by_words(old: &str, new: &str) -> Vec<Part> {
    let diff = TextDiff::from_words(old, new);
    let mut parts = Vec::new();
    let mut change = Change::default();
    for word in diff.iter_all_changes() {
        match word.tag() {
            ChangeTag::Delete => change.take_out(word.value()),
            ChangeTag::Insert => change.put_in(word.value()),
            ChangeTag::Equal if change.is_some() && is_gap(word.value()) => {
                change.gap.push_str(word.value());
            }
            ChangeTag::Equal => {
                change.end(&mut parts);
                keep(&mut parts, word.value());
            }
        }
    }
    change.end(&mut parts);
    parts
}

/// The words changed in one place.
#[derive(Default)]
struct Change {
    gone: String,
    added: String,
    /// The space behind them, which belongs to the change if another changed word follows.
    gap: String,
}

impl Change {
    fn is_some(&self) -> bool {
        !(self.gone.is_empty() && self.added.is_empty())
    }

    fn take_out(&mut self, word: &str) {
        self.close_gap();
        self.gone.push_str(word);
    }

    fn put_in(&mut self, word: &str) {
        self.close_gap();
        self.added.push_str(word);
    }

    fn close_gap(&mut self) {
        self.gone.push_str(&self.gap);
        self.added.push_str(&self.gap);
        self.gap.clear();
    }

    /// Puts the change behind the parts, then the space that did not change.
    fn end(&mut self, parts: &mut Vec<Part>) {
        let Self { gone, added, gap } = std::mem::take(self);
        if !gone.is_empty() {
            parts.push(Part::Gone(gone));
        }
        if !added.is_empty() {
            parts.push(Part::Added(added));
        }
        keep(parts, &gap);
    }
}

/// A new line is no gap: what stands on either side of it changed for reasons of its own.
fn is_gap(text: &str) -> bool {
    text.chars().all(|letter| letter.is_whitespace() && letter != '\n')
}

fn keep(parts: &mut Vec<Part>, text: &str) {
    match parts.last_mut() {
        Some(Part::Same(held)) => held.push_str(text),
        _ if text.is_empty() => {}
        _ => parts.push(Part::Same(text.to_owned())),
    }
}
