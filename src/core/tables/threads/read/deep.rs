//! A thread with its depth behind it, as drawings letter it: `2 BA x 3/8 deep`.

use super::usual::as_meant;
use crate::units::read::{Bare, length};

/// The words behind a depth.
const DEEP: [&str; 3] = ["deep", "depth", "dp"];

/// A text taken apart into a thread and the depth behind it, both as typed; none where it is no such text.
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::read::with_depth;
/// assert_eq!(with_depth("2 BA x 3/8 deep"), Some(("2 BA", "3/8")));
/// assert_eq!(with_depth("6BA x 1/4 DP"), Some(("6BA", "1/4")));
/// assert_eq!(with_depth("M6x12 deep"), Some(("M6", "12")));
/// assert_eq!(with_depth("1/4 x 40 ME 1 1/8 in deep"), Some(("1/4 x 40 ME", "1 1/8 in")));
/// assert_eq!(with_depth("2 BA"), None);
/// ```
#[must_use]
pub fn with_depth(typed: &str) -> Option<(&str, &str)> {
    let typed = typed.trim().trim_end_matches('.');
    let lower = typed.to_ascii_lowercase();
    let word = DEEP.iter().find(|word| lower.ends_with(*word))?;
    let before = typed.get(..typed.len().checked_sub(word.len())?)?.trim_end();
    // The longest figure first: "1 1/8" before "1/8".
    let places = before.char_indices().filter(|(_, mark)| matches!(mark, ' ' | 'x' | 'X' | '×'));
    let parts = places.filter_map(|(place, mark)| {
        Some((before.get(..place)?, before.get(place + mark.len_utf8()..)?.trim()))
    });
    let bare = |thread: &'_ str| thread.trim_end_matches([' ', 'x', 'X', '×', ',']).len();
    parts
        .filter(|(_, depth)| length(depth, Bare::Mm).is_ok())
        .filter_map(|(thread, depth)| Some((thread.get(..bare(thread))?, depth)))
        .find(|(thread, _)| as_meant(thread).is_ok())
}
