//! The controls that several forms have, filled as they were typed.
//!
//! What was typed but is no choice stays in its list, as typed.

use super::field::{Field, Group, Kind, items};
use super::form::sentence_case;
use holewright_core::tables::drills::{Series, owned};
use holewright_core::tables::materials::{self, Material};

/// One choice: its word in an address, the words a person reads, what it means.
pub(crate) struct Word<T> {
    pub(crate) slug: &'static str,
    pub(crate) words: &'static str,
    pub(crate) value: T,
}

/// A choice.
pub(crate) const fn word<T>(slug: &'static str, words: &'static str, value: T) -> Word<T> {
    Word { slug, words, value }
}

/// A list of all materials that may be cut, by family. A metal that is typed but not known, or not
/// to be cut, stays in the list, as typed.
pub(crate) fn metal(name: &'static str, label: &'static str, none: &str, typed: &str) -> Field {
    let known = match typed {
        "" => None,
        typed => materials::find(typed).or_else(|| materials::read::read(typed).ok()),
    };
    let known = known.filter(|material| material.refused.is_none());
    let nothing = (String::new(), none.to_owned(), typed.is_empty());
    let unknown = (known.is_none() && !typed.is_empty())
        .then(|| (typed.to_owned(), format!("{typed} (not a choice)"), true));
    let item = |material: &Material| {
        let taken = known.is_some_and(|known| known.slug == material.slug);
        (material.slug.to_owned(), sentence_case(material.name), taken)
    };
    let groups = materials::by_family().into_iter().map(|(family, materials)| {
        let cut = materials.into_iter().filter(|material| material.refused.is_none());
        Group {
            heading: sentence_case(&family.to_string()),
            // The first item of all has the field's own id; these need none.
            items: items(name, cut.map(item)),
        }
    });
    let alone = items(name, [nothing].into_iter().chain(unknown));
    Field::new(name, label, "", Kind::Grouped(alone, groups.collect()))
}

/// A few choices side by side; the first is taken where nothing was typed.
pub(crate) fn pick<T>(
    name: &'static str,
    label: &'static str,
    words: &[Word<T>],
    typed: &str,
) -> Field {
    let choices = words.iter().enumerate().map(|(place, word)| {
        let taken = is(typed, word) || (typed.is_empty() && place == 0);
        (word.slug.to_owned(), word.words.to_owned(), taken)
    });
    Field::new(name, label, "", Kind::Pick(items(name, choices.chain(unknown(typed, words)))))
}

/// A list whose first line, the usual, stands for an empty field and so keeps out of the address.
pub(crate) fn list<T>(
    name: &'static str,
    label: &'static str,
    words: &[Word<T>],
    typed: &str,
) -> Field {
    let choices = words.iter().enumerate().map(|(place, word)| {
        let value = if place == 0 { "" } else { word.slug };
        (value.to_owned(), word.words.to_owned(), is(typed, word))
    });
    Field::new(name, label, "", Kind::List(items(name, choices.chain(unknown(typed, words)))))
}

/// A list that may be left alone: its first line is an empty field.
pub(crate) fn optional_list<T>(
    name: &'static str,
    label: &'static str,
    none: &str,
    words: &[Word<T>],
    typed: &str,
) -> Field {
    let nothing = (String::new(), none.to_owned(), typed.is_empty());
    let choices =
        words.iter().map(|word| (word.slug.to_owned(), word.words.to_owned(), is(typed, word)));
    let choices = [nothing].into_iter().chain(choices).chain(unknown(typed, words));
    Field::new(name, label, "", Kind::List(items(name, choices)))
}

/// Every series, as an address writes the choice of them all.
pub(super) const EVERY_SERIES: &str = "number,letter,fraction,metric";

/// What a form calls the series of the drills a reader has.
pub(crate) const SERIES_AT_HAND: &str = "Drill series at hand";

/// The drill series, any of them ticked.
pub(crate) fn series(label: &'static str, typed: &str) -> Field {
    let ticked = owned::series(typed).unwrap_or_default();
    let choices = Series::ALL.into_iter().map(|series| {
        (series.slug().to_owned(), sentence_case(series.slug()), ticked.contains(&series))
    });
    let known = typed.is_empty() || !ticked.is_empty();
    let kept = (!known).then(|| (typed.to_owned(), not_a_choice(typed), true));
    let items = items("series", choices.chain(kept));
    Field::new("series", label, "None ticked: every series", Kind::Ticks(items))
}

/// A list of single drills at hand.
pub(crate) fn owned_drills(typed: &str) -> Field {
    Field::text(
        "owned",
        "Or just these drills",
        "A list with ranges: 1-60, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm",
        typed,
    )
}

fn is<T>(typed: &str, word: &Word<T>) -> bool {
    word.slug.eq_ignore_ascii_case(typed)
}

/// What was typed though it is no choice: it stays in the form, as typed.
fn unknown<T>(typed: &str, words: &[Word<T>]) -> Option<(String, String, bool)> {
    let known = typed.is_empty() || words.iter().any(|word| is(typed, word));
    (!known).then(|| (typed.to_owned(), not_a_choice(typed), true))
}

fn not_a_choice(typed: &str) -> String {
    format!("{typed} (not a choice)")
}
