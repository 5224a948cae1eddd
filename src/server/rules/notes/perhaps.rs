//! Which materials that burn, poison or are not to be worked a field may mean that names none outright: one of two
//! ("copper or beryllium copper"), one misspelt. Whoever reads it is told of the danger all the same.

use std::sync::LazyLock;

use holewright_core::finder::letters_apart;
use holewright_core::tables::materials::{self, Material};

use super::belongs::{self, Thing};
use super::fields::LONGEST_FIELD;
use super::folded::folded;
use super::pressure::split;
use super::told::harms_at_once;

/// In a word of so many letters one may be wrong, in one of so many two.
const LETTERS: (usize, usize) = (6, 8);

/// Words in their names that are said of any material.
const OF_ANY: [&str; 3] = ["commercially", "pure", "rigid"];

/// The words by which such a material is known, and no other: "beryllium", not "copper".
static WORDS: LazyLock<Vec<(String, &'static str)>> = LazyLock::new(|| {
    let (harm, others): (Vec<_>, Vec<_>) =
        materials::all().iter().partition(|held| harms_at_once(held));
    let others: Vec<String> = others.into_iter().flat_map(words).collect();
    let own =
        harm.into_iter().flat_map(|held| words(held).into_iter().map(|word| (word, held.slug)));
    let of_any = OF_ANY.map(folded);
    own.filter(|(word, _)| !others.contains(word) && !of_any.contains(word)).collect()
});

fn words(material: &Material) -> Vec<String> {
    let names = [material.name].into_iter().chain(material.known_as.iter().copied());
    let names = names.map(folded);
    let is_name = |word: &&str| word.len() > 2 && word.chars().all(char::is_alphabetic);
    names
        .flat_map(|name| split(&name).filter(is_name).map(str::to_owned).collect::<Vec<_>>())
        .collect()
}

/// Those that it may mean, each once.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::perhaps::meant;
/// assert_eq!(meant("copper or beryllium copper")[0].title, "Beryllium copper");
/// assert_eq!(meant("magnesum casting")[0].title, "Magnesium alloy");
/// assert!(meant("copper or bronze").is_empty());
/// ```
#[must_use]
pub fn meant(typed: &str) -> Vec<Thing> {
    if typed.chars().nth(LONGEST_FIELD).is_some() {
        return Vec::new();
    }
    let mut things: Vec<Thing> = Vec::new();
    for word in split(&folded(typed)) {
        let slug = WORDS.iter().find(|(held, _)| is_meant(word, held)).map(|(_, slug)| slug);
        let thing = slug.and_then(|slug| belongs::at(&format!("materials/{slug}")));
        things.extend(thing.filter(|thing| !things.contains(thing)));
    }
    things
}

fn is_meant(typed: &str, held: &str) -> bool {
    let most = match held.chars().count() {
        letters if letters >= LETTERS.1 => 2,
        letters if letters >= LETTERS.0 => 1,
        _ => 0,
    };
    typed == held || most > 0 && letters_apart(typed, held, most).is_some()
}

#[cfg(test)]
mod tests {
    use super::meant;

    #[test]
    fn what_burns_or_poisons_is_heard_misspelt_and_beside_another() {
        for (typed, expected) in [
            ("copper or beryllium copper", "Beryllium copper"),
            ("berylium copper, perhaps", "Beryllium copper"),
            ("Berrylium", "Beryllium copper"),
            ("magnesuim", "Magnesium alloy"),
            ("aluminium / magnesium, old casting", "Magnesium alloy"),
            ("acetl or nylon 66", "Acetal"),
            ("PTFE, filled", "PTFE"),
            ("titanum bar end", "Titanium grade 2"),
        ] {
            let found = meant(typed);
            assert_eq!(found.first().map(|thing| thing.title.as_str()), Some(expected), "{typed}");
        }
        let words: Vec<&str> = super::WORDS.iter().map(|(word, _)| word.as_str()).collect();
        assert!(
            ["acetal", "nylon", "ptfe", "pvc"].iter().all(|word| words.contains(word)),
            "{words:?}"
        );
        for typed in [
            "",
            "copper",
            "aluminium alloy",
            "manganese bronze",
            "metal",
            "chromium plate",
            "cast iron sheet",
            "bar of brass",
            "rigid, commercially pure copper",
            "spring copper",
            "the blue bar, half hard",
        ] {
            assert_eq!(meant(typed), [], "{typed}");
        }
    }
}
