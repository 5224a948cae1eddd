//! What no page, file or message names: hosts, programs, makers, dealers, clubs.

/// What tells a web host, wherever it stands in a text.
const HOSTS: &[&str] =
    &["http:", "https:", "www.", ".com", ".org", ".net", ".co.", ".gov", ".info", ".ru,", ".de,"];

/// Programs, their libraries and the shelves of the web; makers, dealers and clubs. Whole words, however
/// they are written.
const OUTSIDE: &[&str] = &[
    "aalco",
    "acrylite",
    "alro",
    "audhe",
    "azom",
    "bd_warehouse",
    "boedeker",
    "bpel",
    "cad",
    "creasey",
    "curioustab",
    "dgi",
    "dirac",
    "docslib",
    "durbin",
    "emuge",
    "engineeringhardware",
    "ensinger",
    "euralliage",
    "finkelstein",
    "fitscher",
    "freecad",
    "github",
    "haustechnik",
    "ibls",
    "interlloy",
    "iscar",
    "jet",
    "j-2221vs",
    "kemper",
    "kmm",
    "lavallee",
    "lucefin",
    "makeitfrom",
    "matweb",
    "minithread",
    "ministeam",
    "norseman",
    "pakden",
    "plexiglas",
    "protocutter",
    "proto",
    "rajhans",
    "scribd",
    "screw_thread_lib",
    "sheartak",
    "somta",
    "statpearls",
    "studylib",
    "the-vms",
    "toolmex",
    "trafitec",
    "unik",
    "wiki",
    "wikipedia",
    "yamawa",
    "yg-1",
];

/// The first word of a text that does not belong there.
pub(crate) fn named(text: &str) -> Option<&'static str> {
    let lower = text.to_lowercase();
    let host = HOSTS.iter().find(|host| lower.contains(*host));
    host.or_else(|| OUTSIDE.iter().find(|word| holds(&lower, word))).copied()
}

/// Whether the words stand in the text as whole words.
fn holds(text: &str, words: &str) -> bool {
    let apart = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    text.match_indices(words).any(|(at, found)| {
        apart(text[..at].chars().next_back()) && apart(text[at + found.len()..].chars().next())
    })
}
