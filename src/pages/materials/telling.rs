//! How to tell a material, as its page prints it.

use super::properties::{PropertyRow, rows};
use crate::key::{Key, Sign, Signed};
use crate::sentence::set;
use holewright_core::tables::materials::{Material, Measure, Span, scrap};
use holewright_core::units::{in_grams_per_cm3, print};

/// The density of steel that a hand knows, in grams per cubic centimetre.
const STEEL: f64 = 7.85;

/// How to tell it.
pub(super) struct Telling {
    pub(super) tests: Vec<Shows>,
    pub(super) apart: Vec<Signed>,
    pub(super) cautions: Vec<Signed>,
    /// Parts from scrap that are usually of it.
    pub(super) scrap: Vec<Signed>,
}

/// One test and what it shows.
pub(super) struct Shows {
    pub(super) name: &'static str,
    pub(super) text: String,
    pub(super) sign: Sign,
}

/// How to tell a material.
pub(super) fn telling(material: &'static Material, key: &mut Key) -> Telling {
    let telling = material.telling();
    let mut tests: Vec<Shows> = telling
        .tests()
        .into_iter()
        .map(|test| Shows {
            name: test.name,
            text: set(test.shows.text),
            sign: key.sign(test.shows.source),
        })
        .collect();
    tests.extend(weight(material, key));
    let apart = key.all(telling.apart);
    let parts = scrap::of(material).map(|part| Signed {
        text: set(&format!("{}: {}", part.name(), part.tell.text)),
        sign: key.sign(part.tell.source),
    });
    Telling { tests, apart, scrap: parts.collect(), cautions: key.all(telling.cautions) }
}

/// What it weighs, as printed, beside steel.
fn weight(material: &Material, key: &mut Key) -> Option<Shows> {
    let property =
        material.properties.iter().find(|it| matches!(it.measure, Measure::Density(_)))?;
    let Measure::Density(span) = property.measure else { return None };
    let (Span::Exactly(least)
    | Span::Between(least, _)
    | Span::AtLeast(least)
    | Span::AtMost(least)) = span;
    let times = in_grams_per_cm3(least) / STEEL;
    let PropertyRow { figure, sign, .. } = rows(std::slice::from_ref(property), key).pop()?;
    let text = format!("{figure}, {} times as heavy as steel.", print::trimmed(times, 2));
    Some(Shows { name: "Weight", text: set(&text), sign })
}
