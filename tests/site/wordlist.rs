//! The wordlist: what a page, file, message or description said once, and says now. An old word that comes
//! back fails wherever it stands.

/// Before, after. A word is a whole word, whatever its case and however the line breaks.
const REPLACED: &[(&str, &str)] = &[
    ("asunder", "apart"),
    ("cut the chart", "show only"),
    ("record of acts", "log"),
    ("feed a minute", "feed rate"),
    ("surface speeds as printed", "cutting speeds as printed"),
    ("could be taken for", "could be mistaken for"),
    ("no limit held", "no standard limit"),
    ("by metal", "by material"),
    ("other metals below", "other materials below"),
    ("a drill or a metal", "a drill or a material"),
    ("keep this drawer", "save this drawer"),
    ("to a voice you know", "by telephone"),
    ("spindle speeds at hand", "machine speeds"),
    ("speeds the machine has", "machine speeds"),
    ("take care", "cautions"),
    ("look out for", "cautions"),
    ("where you meet it", "what it is used for"),
    ("what passes for it", "mistaken for it"),
    ("parted by", "separated by"),
    ("drawn by chance", "chosen at random"),
    ("it shall be", "use it as"),
    ("the password that stands", "your present password"),
    ("stands at this address", "there is … at this address"),
    ("is no choice here", "is not one of the choices"),
    ("make it void", "cancel it"),
    ("gone by here", "used here"),
    ("reckon", "work out"),
    ("so it will look", "this is how it will look"),
    ("kept for later", "left out until it does something"),
    ("as held by the cad library", "the standard, graded library"),
];

/// The first replaced word of a text, and what is said now.
pub(crate) fn replaced(text: &str) -> Option<(&'static str, &'static str)> {
    let lower = text.to_lowercase().replace('\u{a0}', " ").replace('’', "'");
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
