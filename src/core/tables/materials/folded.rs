//! A name without case, space and marks, as names are compared.

/// Longest text looked at, in letters and digits; every name of ours is shorter.
pub(super) const LONGEST: usize = 48;

/// Letters and digits alone, small, with the two American spellings made British.
pub(super) fn fold(text: &str) -> String {
    let kept = text.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase);
    let folded: String = kept.take(LONGEST).collect();
    folded.replace("aluminum", "aluminium").replace("gray", "grey")
}
