//! Whether a verdict was found on what its note is about, or elsewhere: "it worked for me, in nylon, M6" says nothing of
//! a note on 8 BA in silver steel.

use holewright_core::tables::materials;

use super::belongs::{self, Group, Thing};
use super::meant::meant;

/// Between the things that one field names: "8 BA, 5/64 drill".
const BETWEEN: [char; 2] = [',', ';'];

/// The groups of things, in the order in which a text is read.
const GROUPS: [Group; 3] = [Group::Threads, Group::Materials, Group::Drills];
/// The most parts that are read.
const MOST: usize = 6;

/// Whether one of these texts names a material, a thread or a drill, and the note belongs to others of that group and
/// not to this one. What a note leaves open, and what nothing can be read of, is not elsewhere.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::elsewhere::is_elsewhere;
/// let note = ["threads/ba/8", "materials/silver-steel"].map(str::to_owned);
/// assert!(is_elsewhere(&note, ["nylon", "M6"]));
/// assert!(!is_elsewhere(&note, ["drill rod", "8BA"]));
/// assert!(!is_elsewhere(&note, ["the blue bar", ""]));
/// ```
#[must_use]
pub fn is_elsewhere(note: &[String], typed: [&str; 2]) -> bool {
    parts(typed).any(|part| is_another(note, part))
}

/// The parts of two fields that may each name something: people take either field for either.
pub(super) fn parts(typed: [&str; 2]) -> impl Iterator<Item = &str> {
    let each = typed.into_iter().flat_map(|typed| typed.split(BETWEEN));
    each.map(str::trim).filter(|part| !part.is_empty()).take(MOST)
}

/// The one thing of a group that a part names, also where it is misspelt.
pub(super) fn thing(group: Group, part: &str) -> Option<Thing> {
    as_spelt(group, part).or_else(|| meant(group, part))
}

fn as_spelt(group: Group, part: &str) -> Option<Thing> {
    let without_its_word = || match group {
        Group::Drills => part.strip_suffix("drill").and_then(|size| group.named(size.trim())),
        Group::Materials | Group::Threads => None,
    };
    group.named(part).or_else(without_its_word)
}

/// Whether all of a text names things of the reference, spelt as there: a page asks it of many texts.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::elsewhere::is_read;
/// assert!(is_read("silver steel, 5/64 drill") && is_read("bronze") && is_read(""));
/// assert!(is_read("3/16 bronze") && !is_read("hold it by hand"));
/// ```
#[must_use]
pub fn is_read(typed: &str) -> bool {
    let is_kind = |part: &str| !materials::asked::of_kind(part).is_empty();
    let is_named = |part: &str| {
        GROUPS.into_iter().any(|group| as_spelt(group, part).is_some()) || is_kind(part)
    };
    typed.split(BETWEEN).count() <= MOST && parts([typed, ""]).all(is_named)
}

fn is_another(note: &[String], part: &str) -> bool {
    let found = GROUPS.into_iter().find_map(|group| Some((group, named(group, part)?)));
    let Some((group, named)) = found else { return false };
    let mut own = note.iter().filter(|id| holds(group, id)).peekable();
    own.peek().is_some() && !own.any(|id| named.contains(id))
}

/// The addresses of what a text names of a group: one thing, also where it is misspelt, or all of a kind of material.
fn named(group: Group, part: &str) -> Option<Vec<String>> {
    let kind = || {
        let named = belongs::named(part).ok()?.things;
        named.iter().all(|id| holds(group, id)).then_some(named)
    };
    kind().or_else(|| thing(group, part).map(|thing| vec![thing.id]))
}

fn holds(group: Group, id: &str) -> bool {
    belongs::at(id).is_some_and(|thing| group.holds(&thing))
}

#[cfg(test)]
mod tests {
    use super::is_elsewhere;

    #[test]
    fn another_size_drill_or_material_is_elsewhere() {
        let note =
            ["threads/ba/8", "materials/silver-steel", "drills/number/49"].map(str::to_owned);
        for (typed, expected) in [
            (["", ""], false),
            (["silver steel", "8 BA"], false),
            (["silver stel", ""], false),
            (["", "No. 49"], false),
            (["", "8 BA, No. 49"], false),
            (["the blue bar", "rather large"], false),
            (["", "6 BA"], true),
            (["", "1.9 mm drill"], true),
            (["", "8 BA, 5/64 drill"], true),
            (["stainless", "8 BA"], true),
            (["free-cutting brass", ""], true),
            (["silver steel; nylon", ""], true),
            // Two fields, and people take either.
            (["6 BA", "brass"], true),
        ] {
            assert_eq!(is_elsewhere(&note, typed), expected, "{typed:?}");
        }
    }

    #[test]
    fn what_a_note_leaves_open_is_not_elsewhere() {
        let note = ["drills/number/43".to_owned()];
        assert!(!is_elsewhere(&note, ["brass", "4 BA"]));
        assert!(is_elsewhere(&note, ["brass", "No. 42"]));
        assert!(!is_elsewhere(&[], ["brass", "No. 42"]));
        // A note on one bronze, found so in "bronze"; a size says of no other.
        let bronze = ["materials/phosphor-bronze-drawn".to_owned()];
        assert!(!is_elsewhere(&bronze, ["bronze", ""]));
        assert!(!is_elsewhere(&bronze, ["3/16 bronze", ""]));
        assert!(is_elsewhere(&bronze, ["3/16 silver steel", ""]));
        let aluminium = ["materials/aluminium-6063".to_owned()];
        for kind in ["ali", "aluminium", "1/2 aluminium bar"] {
            assert!(!is_elsewhere(&aluminium, [kind, ""]), "{kind}");
        }
        assert!(is_elsewhere(&aluminium, ["aluminium 6082", ""]));
    }
}
