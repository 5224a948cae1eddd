//! How to tell a material, as its page prints it.

use super::properties::{PropertyRow, rows};
use crate::cited::{Cited, source};
use crate::sentence::set;
use holewright_core::tables::materials::{Material, Measure, Span, scrap};
use holewright_core::units::{in_grams_per_cm3, print};

/// The density of steel that a hand knows, in grams per cubic centimetre.
const STEEL: f64 = 7.85;

/// How to tell it.
pub(super) struct Telling {
    pub(super) tests: Vec<Shows>,
    /// The source of those whose row names none.
    pub(super) source: String,
    pub(super) apart: Vec<Cited>,
    pub(super) cautions: Vec<Cited>,
    /// Parts from scrap that are usually of it.
    pub(super) scrap: Vec<Cited>,
}

/// One test and what it shows.
pub(super) struct Shows {
    pub(super) name: &'static str,
    pub(super) text: String,
    /// Empty where it is the source of the others.
    pub(super) source: String,
}

/// How to tell a material.
pub(super) fn telling(material: &'static Material) -> Telling {
    let telling = material.telling();
    let shared = source(telling.file.source);
    let own = |text: String| if text == shared { String::new() } else { text };
    let tests = telling.tests().into_iter().map(|test| Shows {
        name: test.name,
        text: set(test.shows.text),
        source: own(source(test.shows.source)),
    });
    let parts = scrap::of(material).map(|part| Cited {
        text: set(&format!("{}: {}", part.name(), part.tell.text)),
        source: own(source(part.tell.source)),
    });
    let cited = |advice: &[_]| {
        let cited = advice.iter().map(Cited::advice);
        cited.map(|cited| Cited { source: own(cited.source), ..cited }).collect()
    };
    Telling {
        tests: tests.chain(weight(material)).collect(),
        apart: cited(telling.apart),
        cautions: cited(telling.cautions),
        scrap: parts.collect(),
        source: shared,
    }
}

/// What it weighs, as printed, beside steel.
fn weight(material: &Material) -> Option<Shows> {
    let property =
        material.properties.iter().find(|it| matches!(it.measure, Measure::Density(_)))?;
    let Measure::Density(span) = property.measure else { return None };
    let (Span::Exactly(least)
    | Span::Between(least, _)
    | Span::AtLeast(least)
    | Span::AtMost(least)) = span;
    let times = in_grams_per_cm3(least) / STEEL;
    let PropertyRow { figure, source, .. } = rows(std::slice::from_ref(property)).pop()?;
    let text = format!("{figure}, {} times as heavy as steel.", print::trimmed(times, 2));
    Some(Shows { name: "Weight", text: set(&text), source })
}
