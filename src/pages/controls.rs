//! The controls that several forms have, filled as they were typed.
//!
//! What was typed but is no choice stays in its list, as typed.

use super::field::{Field, Group, Kind, items};
use holewright_core::asking::{About, AnyField, Control, Word};
use holewright_core::tables::drills::{Series, owned};
use holewright_core::tables::materials::{self, Material};
use holewright_core::units::print::sentence as sentence_case;

/// The words of a choice: in an address, and as a person reads them.
pub(crate) type Choice = (&'static str, &'static str);

/// The words of a choice without what they mean.
pub(crate) fn choices<T>(words: &[Word<T>]) -> Vec<Choice> {
    words.iter().map(|word| (word.slug, word.words)).collect()
}

/// The control of a declared field, filled as it was typed.
pub(crate) fn declared(field: &dyn AnyField, typed: &str) -> Field {
    let About { name, label, .. } = *field.about();
    let words = field.choices();
    let control = match field.control() {
        Control::Text => Field::text(name, label, "", typed),
        Control::Pick => pick(name, label, &words, typed),
        Control::List => list(name, label, &words, typed),
        Control::OpenList(none) => optional_list(name, label, none, &words, typed),
        Control::Metal(none) => metal(name, label, none, typed),
        Control::Series => series(label, typed),
    };
    Field { hint: field.about().hint(), ..control }
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
        (material.slug, sentence_case(material.name), taken)
    };
    let groups = materials::by_family().into_iter().map(|(family, materials)| {
        let cut = materials.into_iter().filter(|material| material.refused.is_none());
        Group { heading: sentence_case(&family.to_string()), items: items(cut.map(item)) }
    });
    let alone = items([nothing].into_iter().chain(unknown));
    Field::new(name, label, "", Kind::Grouped(alone, groups.collect()))
}

/// A few choices side by side; the first is taken where nothing was typed.
pub(crate) fn pick(
    name: &'static str,
    label: &'static str,
    words: &[Choice],
    typed: &str,
) -> Field {
    let choices = words.iter().enumerate().map(|(place, word)| {
        let taken = is(typed, *word) || (typed.is_empty() && place == 0);
        (word.0.to_owned(), word.1.to_owned(), taken)
    });
    Field::new(name, label, "", Kind::Pick(items(choices.chain(unknown(typed, words)))))
}

/// A list whose first line, the usual, stands for an empty field and so keeps out of the address.
pub(crate) fn list(
    name: &'static str,
    label: &'static str,
    words: &[Choice],
    typed: &str,
) -> Field {
    let choices = words.iter().enumerate().map(|(place, word)| {
        let value = if place == 0 { "" } else { word.0 };
        (value.to_owned(), word.1.to_owned(), is(typed, *word))
    });
    Field::new(name, label, "", Kind::List(items(choices.chain(unknown(typed, words)))))
}

/// A list that may be left alone: its first line is an empty field.
pub(crate) fn optional_list(
    name: &'static str,
    label: &'static str,
    none: &str,
    words: &[Choice],
    typed: &str,
) -> Field {
    let nothing = (String::new(), none.to_owned(), typed.is_empty());
    let choices = words.iter().map(|word| (word.0.to_owned(), word.1.to_owned(), is(typed, *word)));
    let choices = [nothing].into_iter().chain(choices).chain(unknown(typed, words));
    Field::new(name, label, "", Kind::List(items(choices)))
}

/// Every series, as an address writes the choice of them all.
pub(super) const EVERY_SERIES: &str = "number,letter,fraction,metric";

/// The drill series, any of them ticked.
pub(crate) fn series(label: &'static str, typed: &str) -> Field {
    let ticked = owned::series(typed).unwrap_or_default();
    let choices = Series::ALL.into_iter().map(|series| {
        (series.slug().to_owned(), sentence_case(series.slug()), ticked.contains(&series))
    });
    let known = typed.is_empty() || !ticked.is_empty();
    let kept = (!known).then(|| (typed.to_owned(), not_a_choice(typed), true));
    let items = items(choices.chain(kept));
    Field::new("series", label, "None ticked: every series", Kind::Ticks(items))
}

fn is(typed: &str, (slug, _): Choice) -> bool {
    slug.eq_ignore_ascii_case(typed)
}

fn unknown(typed: &str, words: &[Choice]) -> Option<(String, String, bool)> {
    let known = typed.is_empty() || words.iter().any(|word| is(typed, *word));
    (!known).then(|| (typed.to_owned(), not_a_choice(typed), true))
}

fn not_a_choice(typed: &str) -> String {
    format!("{typed} (not a choice)")
}
