//! Whether copper or bronze in a note may be beryllium copper: nothing tells them apart by eye, file or magnet, so what is
//! unmarked, springy or out of the scrap box is taken for it until it is proved otherwise.

use super::folded::folded;
use super::markdown;
use super::pressure::split;
use super::within;
use super::wording::Wording;

/// The field that says in what it was done.
const MATERIAL: &str = "material";

/// What comes springy, of the kinds that are named together.
const SPRINGY: [&str; 2] = ["materials/phosphor-bronze-drawn", "materials/beryllium-copper"];

const METALS: [&str; 3] = ["copper", "bronze", "phosphor"];
/// What begins like this leaves open what it is.
const OPEN: [&str; 6] = ["unmark", "scrap", "spring", "unknown", "unidentif", "myster"];
/// In a text, what is so many words from the metal is said of it.
const NEAR: usize = 3;

/// Whether the metal was left at a kind of which some is springy, or is said to be unmarked, unknown, springy or scrap.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::unmarked::may_be;
/// assert!(may_be("spring bronze unmarked", usize::MAX));
/// assert!(may_be("A contact from unmarked, rather thin bronze", 3));
/// assert!(!may_be("Bronze bearing, and much further on a spring", 3));
/// ```
#[must_use]
pub fn may_be(text: &str, near: usize) -> bool {
    let looks = folded(text);
    let words: Vec<&str> = split(&looks).collect();
    let (metals, open) = (METALS.map(folded), OPEN.map(folded));
    let places = |is_it: &dyn Fn(&str) -> bool| -> Vec<usize> {
        let found = words.iter().enumerate().filter(|(_, word)| is_it(word));
        found.map(|(place, _)| place).collect()
    };
    let metals = places(&|word| metals.iter().any(|metal| word == metal));
    let open = places(&|word| open.iter().any(|begins| word.starts_with(begins.as_str())));
    metals.iter().any(|metal| open.iter().any(|open| metal.abs_diff(*open) <= near))
}

/// Whether what this note was done in may be beryllium copper.
#[must_use]
pub fn may_be_beryllium_copper(wording: &Wording) -> bool {
    let typed = wording.done.text(MATERIAL);
    let kind = within::of_kind(typed);
    let is_left_open = kind.iter().any(|thing| SPRINGY.contains(&thing.id.as_str()))
        && !kind.iter().any(|thing| wording.things.contains(thing));
    is_left_open
        || may_be(typed, usize::MAX)
        || may_be(&wording.title, NEAR)
        || may_be(&markdown::plain(&wording.text), NEAR)
}
