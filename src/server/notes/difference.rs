//! What changed from one wording to the next, word by word.

use std::time::Duration;

use similar::{ChangeTag, TextDiff};

/// Longer than this nobody waits: what is found by then is shown, coarser.
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

/// The stretches of both texts, in the order of reading.
///
/// # Examples
/// ```
/// use holewright::server::notes::difference::{between, Part};
/// let parts = between("drill 2.95 mm", "drill 3.0 mm");
/// assert_eq!(parts[1], Part::Gone("2.95".to_owned()));
/// assert_eq!(parts[2], Part::Added("3.0".to_owned()));
/// ```
#[must_use]
pub fn between(old: &str, new: &str) -> Vec<Part> {
    let diff = TextDiff::configure().timeout(PATIENCE).diff_words(old, new);
    let mut parts: Vec<Part> = Vec::new();
    for change in diff.iter_all_changes() {
        let text = change.value();
        match (parts.last_mut(), change.tag()) {
            (Some(Part::Same(held)), ChangeTag::Equal)
            | (Some(Part::Gone(held)), ChangeTag::Delete)
            | (Some(Part::Added(held)), ChangeTag::Insert) => held.push_str(text),
            (_, ChangeTag::Equal) => parts.push(Part::Same(text.to_owned())),
            (_, ChangeTag::Delete) => parts.push(Part::Gone(text.to_owned())),
            (_, ChangeTag::Insert) => parts.push(Part::Added(text.to_owned())),
        }
    }
    parts
}
