//! What a field of a note holds beside a name: a thread or a material among other words, a metal with its size or
//! beside figures that say nothing of it, a kind of metal. Leaves out what its author is asked.

use holewright_core::tables::materials::asked::{self, spoken_of};
use holewright_core::tables::materials::stock::{without_figures, without_size};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::read::as_meant;

use super::belongs::{Group, Thing};
use super::fields::LONGEST_FIELD;

/// The most words that are read of a field.
const WORDS: usize = 10;

/// The material or the kind that is named beside figures that say nothing of it: "brass 303".
pub(super) fn beside_figures(typed: &str) -> Vec<Thing> {
    let words = without_figures(typed);
    let has_figures = typed.chars().any(|letter| letter.is_ascii_digit());
    if is_too_long(typed) || !has_figures || Group::Materials.named(typed).is_some() {
        return Vec::new();
    }
    Group::Materials.named_unasked(&words).map_or_else(|| of_kind(&words), |thing| vec![thing])
}

/// The one thread or material with a figure in its name that a longer text holds: "brass 2BA". None where it holds
/// several, or a material of another family than the one that the words name: "brass 303".
pub(super) fn within(group: Group, typed: &str) -> Option<Thing> {
    if group == Group::Drills || is_too_long(typed) || group.named(typed).is_some() {
        return None;
    }
    let bare = bare(group, typed);
    let spoken_of = if group == Group::Materials { spoken_of(&bare) } else { Vec::new() };
    let words: Vec<&str> = bare.split_whitespace().take(WORDS).collect();
    let held = (1..words.len()).rev().map(|count| {
        let names = words.windows(count).map(|words| words.join(" "));
        let names = names.filter(|name| name.chars().any(|letter| letter.is_ascii_digit()));
        let mut things: Vec<Thing> = names
            .filter_map(|name| group.named(&name).or_else(|| usual_thread(group, &name)))
            .filter(|thing| is_of_family(thing, &spoken_of))
            .collect();
        things.dedup();
        things
    });
    let things = held.into_iter().find(|things| !things.is_empty())?;
    match things.as_slice() {
        [thing] => Some(thing.clone()),
        _ => None,
    }
}

/// Whether a thing is of a family that is spoken of, where one is.
fn is_of_family(thing: &Thing, spoken_of: &[&Material]) -> bool {
    let slug = thing.id.strip_prefix("materials/");
    let family = slug.and_then(materials::find).map(|material| material.family);
    spoken_of.is_empty() || spoken_of.iter().any(|held| Some(held.family) == family)
}

pub(super) fn is_too_long(typed: &str) -> bool {
    typed.chars().nth(LONGEST_FIELD).is_some()
}

pub(super) fn all_of(materials: &[&Material]) -> Vec<Thing> {
    let at = |held: &&Material| super::belongs::at(held.path().trim_start_matches('/'));
    materials.iter().filter_map(at).collect()
}

/// The materials that a text names together, the commonest first; none where it names one, or says something else.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::within::of_kind;
/// assert_eq!(of_kind("Bronze").len(), 7);
/// assert_eq!(of_kind("stainless")[0].title, "Stainless steel 303");
/// assert!(of_kind("gunmetal").is_empty() && of_kind("the blue bar").is_empty());
/// ```
#[must_use]
pub fn of_kind(typed: &str) -> Vec<Thing> {
    if is_too_long(typed) { Vec::new() } else { all_of(&asked::of_kind(typed)) }
}

/// A text as it is read: of a metal without its size, so that no figure of it is taken for a grade.
pub(super) fn bare(group: Group, typed: &str) -> String {
    let without = if group == Group::Materials { without_size(typed) } else { None };
    without.unwrap_or_else(|| typed.to_owned())
}

/// Of several threads of a size the usual one.
pub(super) fn usual_thread(group: Group, typed: &str) -> Option<Thing> {
    if group != Group::Threads || !typed.chars().any(|letter| letter.is_ascii_digit()) {
        return None;
    }
    let read = as_meant(typed).ok()?;
    super::belongs::at(read.thread.path().trim_start_matches('/'))
}

#[cfg(test)]
mod tests {
    use super::within;
    use crate::rules::notes::belongs::Group;

    #[test]
    fn what_a_longer_text_holds_is_asked_where_it_is_one() {
        for (group, typed, expected) in [
            (Group::Threads, "M3 by point five", "M3"),
            (Group::Threads, "brass 2BA", "2 BA"),
            (Group::Threads, "1/4 x 40 model", "1/4 in × 40 ME"),
            (Group::Threads, "4 BA and 6 BA", ""),
            (Group::Threads, "4 BA", ""),
            (Group::Threads, "no thread", ""),
            (Group::Materials, "EN8 / black bar mixed", "Medium carbon steel"),
            (Group::Materials, "round brass 303", ""),
            (Group::Materials, "the 303 bar 3/16", "Stainless steel 303"),
            (Group::Materials, "silver steel bit 3/16", ""),
            (Group::Materials, "the blue bar", ""),
            (Group::Drills, "about 3 mm", ""),
        ] {
            let found = within(group, typed).map(|thing| thing.title).unwrap_or_default();
            assert_eq!(found, expected, "{typed}");
        }
    }
}
