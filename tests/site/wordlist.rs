//! The wordlist: what a page, file, message or description said once, and says now.

/// Words and turns that ours have taken the place of: before, after.
const REPLACED: &[(&str, &str)] = &[("asunder", "apart")];

/// The first replaced word of a text, and what is said now.
pub(crate) fn replaced(text: &str) -> Option<(&'static str, &'static str)> {
    let lower = text.to_lowercase().replace('\u{a0}', " ");
    let lower = lower.split_whitespace().collect::<Vec<_>>().join(" ");
    REPLACED.iter().find(|(before, _)| holds(&lower, before)).copied()
}

/// Whether the words stand in the text as whole words.
fn holds(text: &str, words: &str) -> bool {
    let apart = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    text.match_indices(words).any(|(at, found)| {
        apart(text[..at].chars().next_back()) && apart(text[at + found.len()..].chars().next())
    })
}
