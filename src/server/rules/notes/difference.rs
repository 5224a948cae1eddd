//! What changed from one wording to the next, word by word.

use std::time::Duration;

use similar::{ChangeTag, TextDiff};

/// The longest time a comparison may take; what is found by then is shown, with longer stretches.
const PATIENCE: Duration = Duration::from_millis(50);

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
    let diff = TextDiff::configure().timeout(PATIENCE).diff_words(old, new);
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
