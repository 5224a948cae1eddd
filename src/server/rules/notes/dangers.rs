//! What can hurt whoever does what a note says in a material that it belongs to: the dangers of the material's page.
//! What burns, poisons or is not to be worked at all is said in its own words, lead in a line; that there is more is
//! said too.

use holewright_core::tables::materials::{self, Material};
use holewright_core::units::print;

use super::belongs::{Group, Thing};
use super::told::{Told, as_told, harms_at_once, mark, told};
use super::wording::Wording;
use super::{perhaps, unmarked};

/// The field that says in what it was done.
const MATERIAL: &str = "material";

/// The dangers of one material.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dangers {
    /// What it is called.
    pub material: String,
    /// The address of its page.
    pub path: String,
    /// What burns, poisons or is not to be worked, in the words of that page; what was said of a material before it
    /// is not said again.
    pub words: Vec<&'static str>,
    /// What harms after years and is said in a line, on paper too: lead.
    pub lasting: Vec<&'static str>,
    /// What it is that is said of it, in a word each: "fire".
    pub marks: Vec<&'static str>,
    /// Whether some of it harms whoever cuts it there and then.
    pub is_at_once: bool,
}

/// Those of the material that a note was done in: of the one that its field names, else of each that it belongs to. Of
/// one that it is only shown beside, or that the field may mean, what burns or poisons is told all the same.
#[must_use]
pub fn of_note(wording: &Wording) -> Vec<Dangers> {
    let typed = wording.done.text(MATERIAL);
    let named = Group::Materials.named(typed);
    let mut things = wording.things.clone();
    if named.is_none() {
        things.extend(
            perhaps::meant(typed).into_iter().filter(|thing| !wording.things.contains(thing)),
        );
    }
    let mut found = of(&things, named.as_ref());
    found.extend(of_unmarked(wording).filter(|unmarked| is_news(unmarked, &found)));
    found
}

/// That of beryllium copper, where what the note was done in may be some and nobody knows.
fn of_unmarked(wording: &Wording) -> Option<Dangers> {
    let (copper, beryllium) = (materials::find("copper")?, materials::find("beryllium-copper")?);
    let of_it = || Dangers {
        material: "Unknown copper or bronze".to_owned(),
        path: beryllium.path(),
        words: grave(copper).collect(),
        lasting: Vec::new(),
        marks: vec!["dust"],
        is_at_once: true,
    };
    unmarked::may_be_beryllium_copper(wording).then(of_it)
}

/// Whether no material before it says the same.
fn is_news(danger: &Dangers, before: &[Dangers]) -> bool {
    let mut said = before.iter().flat_map(|danger| &danger.words);
    !said.any(|words| danger.words.contains(words))
        && before.iter().all(|held| held.path != danger.path)
}

/// Those of every material among these things; where one is named, of the others only what burns, poisons or is not to
/// be worked.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::{belongs, dangers};
/// let things = belongs::list("magnesium alloy, gunmetal, 4 BA").unwrap();
/// let found = dangers::of(&things, None);
/// assert_eq!(found[0].material, "Magnesium alloy");
/// assert!(found[0].is_at_once && found[0].words.iter().any(|said| said.contains("never use them on it")));
/// assert_eq!((found[1].material.as_str(), found[1].words.len()), ("Gunmetal", 0));
/// assert_eq!(dangers::of(&things, Some(&things[0])).len(), 1);
/// assert_eq!(dangers::of(&things, Some(&things[1])).len(), 2);
/// assert_eq!(dangers::of(&things[2..], None), []);
/// ```
#[must_use]
pub fn of(things: &[Thing], named: Option<&Thing>) -> Vec<Dangers> {
    let mut said = Vec::new();
    let is_it = |thing: &Thing| named.is_none_or(|named| named == thing);
    let found = things.iter().filter_map(|thing| {
        let material = materials::find(thing.id.strip_prefix("materials/")?)?;
        let is_told = is_it(thing) && !material.dangers.is_empty();
        (is_told || grave(material).next().is_some()).then_some(material)
    });
    let found = found.map(|material| Dangers {
        material: print::sentence(material.name),
        path: material.path(),
        words: grave(material)
            .filter(|words| {
                let is_new = !said.contains(words);
                said.push(*words);
                is_new
            })
            .collect(),
        lasting: as_told(material, Told::InALine).map(|danger| danger.advice.text).collect(),
        marks: marks(material),
        is_at_once: harms_at_once(material),
    });
    found.collect()
}

fn marks(material: &Material) -> Vec<&'static str> {
    let refused = material.refused.map(|_| "not to be worked");
    let marks = material.dangers.iter().filter_map(|danger| mark(danger.work));
    let mut marks: Vec<&'static str> = refused.into_iter().chain(marks).collect();
    let mut seen = Vec::new();
    marks.retain(|mark| {
        !seen.contains(mark) && {
            seen.push(*mark);
            true
        }
    });
    marks
}

/// What can hurt whoever does what a note says, in a word each, for a list in which the note is a row.
#[must_use]
pub fn in_words(wording: &Wording) -> Option<String> {
    let mut words: Vec<&str> = Vec::new();
    for mark in of_note(wording).iter().flat_map(|danger| &danger.marks) {
        if !words.contains(mark) {
            words.push(mark);
        }
    }
    (!words.is_empty()).then(|| words.join(", "))
}

/// What is said in a line: the materials that it is said of, and the words.
#[must_use]
pub fn lasting(found: &[Dangers]) -> Vec<(String, &'static str)> {
    let mut said: Vec<(Vec<&str>, &'static str)> = Vec::new();
    for danger in found {
        for words in &danger.lasting {
            match said.iter_mut().find(|(_, held)| held == words) {
                Some((materials, _)) => materials.push(&danger.material),
                None => said.push((vec![&danger.material], words)),
            }
        }
    }
    let named = |materials: Vec<&str>| {
        print::sentence(&materials.into_iter().map(print::running).collect::<Vec<_>>().join(", "))
    };
    said.into_iter().map(|(materials, words)| (named(materials), words)).collect()
}

/// The materials that harm whoever cuts them there and then, by name; none where there are none.
#[must_use]
pub fn at_once(found: &[Dangers]) -> Option<String> {
    let names: Vec<String> = found
        .iter()
        .filter(|danger| danger.is_at_once)
        .map(|danger| print::running(&danger.material))
        .collect();
    (!names.is_empty()).then(|| names.join(", "))
}

/// The same as plain text, a line for each sentence; nothing where none is said in words.
#[must_use]
pub fn plain(wording: &Wording) -> Vec<String> {
    let found = of_note(wording);
    let lines = found.iter().flat_map(|dangers| {
        dangers
            .words
            .iter()
            .map(|words| format!("Danger, {}: {words}", print::running(&dangers.material)))
    });
    let lasting = lasting(&found);
    let lasting = lasting
        .iter()
        .map(|(materials, words)| format!("Danger, {}: {words}", print::running(materials)));
    lines.chain(lasting).collect()
}

fn grave(material: &'static Material) -> impl Iterator<Item = &'static str> {
    let refused = material.refused.iter().map(|why| why.text);
    let is_grave = |told: Told| matches!(told, Told::AtOnce | Told::InWords);
    let dangers = material.dangers.iter().filter(move |danger| is_grave(told(danger.work)));
    refused.chain(dangers.map(|danger| danger.advice.text))
}

#[cfg(test)]
mod tests {
    use super::{at_once, lasting, of};
    use crate::rules::notes::belongs::{Thing, at, list};

    fn thing(slug: &str) -> Thing {
        at(&format!("materials/{slug}")).unwrap_or_else(|| panic!("{slug}"))
    }

    #[test]
    fn what_burns_or_poisons_is_said_in_words_and_once() {
        for (slug, words) in [
            ("magnesium-alloy", "never use them on it"),
            ("ptfe", "fever like influenza"),
            ("beryllium-copper", "beryllium dust"),
        ] {
            let found = of(&[thing(slug)], None);
            assert_eq!(found.len(), 1, "{slug}");
            assert!(found[0].words.iter().any(|said| said.contains(words)), "{slug}: {found:?}");
            assert!(found[0].is_at_once, "{slug}");
        }
        // Of a usual metal its page says more, and nothing is told in words.
        let usual = of(&list("gunmetal").unwrap(), None);
        assert_eq!((usual.len(), usual[0].words.len(), usual[0].is_at_once), (1, 0, false));
        // Lead is told in a line, of all that hold it at once.
        let leaded = of(&list("gunmetal, free-cutting brass, copper").unwrap(), None);
        let told = lasting(&leaded);
        assert_eq!(told.len(), 1, "{told:?}");
        assert_eq!(told[0].0, "Gunmetal, free-cutting brass");
        assert!(told[0].1.starts_with("The swarf holds lead"), "{told:?}");
        assert_eq!(
            leaded.iter().map(|danger| danger.marks.join(", ")).collect::<Vec<_>>(),
            ["lead", "lead", "dust"]
        );
        // Dust is told, and does no harm there and then.
        let iron = of(&[thing("grey-cast-iron")], None);
        assert_eq!((iron[0].words.len(), at_once(&iron)), (1, None), "{iron:?}");
        // Two that burn alike are told once.
        let both = of(&[thing("ptfe"), thing("ptfe")], None);
        assert_eq!(both[1].words, Vec::<&str>::new());
    }

    #[test]
    fn beside_the_material_that_is_named_only_what_burns_or_poisons_is_told() {
        let things = [thing("free-cutting-brass"), thing("gunmetal"), thing("magnesium-alloy")];
        let names = |named: Option<&Thing>| -> Vec<String> {
            of(&things, named).into_iter().map(|danger| danger.material).collect()
        };
        assert_eq!(names(None), ["Free-cutting brass", "Gunmetal", "Magnesium alloy"]);
        assert_eq!(names(Some(&things[1])), ["Gunmetal", "Magnesium alloy"]);
        assert_eq!(names(Some(&thing("copper"))), ["Magnesium alloy"]);
        assert_eq!(at_once(&of(&things, None)).as_deref(), Some("magnesium alloy"));
    }
}
