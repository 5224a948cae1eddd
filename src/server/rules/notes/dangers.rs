//! What can hurt whoever does what a note says in a material that it belongs to: the dangers of the material's page.
//! What burns, poisons or is not to be worked at all is said in its own words; that there is more is said too.

use holewright_core::tables::materials::{self, Material, Work};
use holewright_core::units::print;

use super::belongs::Thing;

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
}

/// Those of every material among these things.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::{belongs, dangers};
/// let things = belongs::list("magnesium alloy, 4 BA").unwrap();
/// let found = dangers::of(&things);
/// assert_eq!(found[0].material, "Magnesium alloy");
/// assert!(found[0].words.iter().any(|said| said.contains("never use them on it")));
/// assert_eq!(dangers::of(&things[1..]), []);
/// ```
#[must_use]
pub fn of(things: &[Thing]) -> Vec<Dangers> {
    let mut said = Vec::new();
    let found =
        things.iter().filter_map(|thing| materials::find(thing.id.strip_prefix("materials/")?));
    let found = found.filter(|material| material.refused.is_some() || !material.dangers.is_empty());
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
    });
    found.collect()
}

/// The same as plain text, a line for each sentence; nothing where none is said in words.
#[must_use]
pub fn plain(things: &[Thing]) -> Vec<String> {
    let found = of(things);
    let lines = found.iter().flat_map(|dangers| {
        dangers
            .words
            .iter()
            .map(|words| format!("Danger, {}: {words}", print::running(&dangers.material)))
    });
    lines.collect()
}

fn grave(material: &'static Material) -> impl Iterator<Item = &'static str> {
    let refused = material.refused.iter().map(|why| why.text);
    let dangers = material.dangers.iter().filter(|danger| is_grave(danger.work));
    refused.chain(dangers.map(|danger| danger.advice.text))
}

/// What can burn, or harm whoever breathes it, wherever the material is cut.
const fn is_grave(work: Work) -> bool {
    matches!(work, Work::Fire | Work::Shuns(_) | Work::Dust | Work::Stock | Work::Drilling)
}

#[cfg(test)]
mod tests {
    use super::{of, plain};
    use crate::rules::notes::belongs::{at, list};

    #[test]
    fn what_burns_or_poisons_is_said_in_words_and_once() {
        for (slug, words) in [
            ("magnesium-alloy", "never use them on it"),
            ("ptfe", "fever like influenza"),
            ("beryllium-copper", "beryllium dust"),
        ] {
            let thing = at(&format!("materials/{slug}")).unwrap_or_else(|| panic!("{slug}"));
            let found = of(std::slice::from_ref(&thing));
            assert_eq!(found.len(), 1, "{slug}");
            assert!(found[0].words.iter().any(|said| said.contains(words)), "{slug}: {found:?}");
            assert!(plain(&[thing]).iter().all(|line| line.starts_with("Danger, ")), "{slug}");
        }
        // Of a usual metal its page says more, and nothing is told in words.
        let brass = of(&list("gunmetal").unwrap());
        assert_eq!((brass.len(), brass[0].words.len()), (1, 0), "{brass:?}");
        // Two that burn alike are told once.
        let both: Vec<_> =
            ["materials/ptfe", "materials/ptfe"].iter().filter_map(|id| at(id)).collect();
        assert_eq!(of(&both)[1].words, Vec::<&str>::new());
    }
}
