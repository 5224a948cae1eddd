//! A diameter by any name: a drill, or a length with its unit.

use super::error::{quoted, sentence};
use super::{Choice, FieldError, Taken, Typed};
use crate::tables::drills::{self, Drill, Series, find, read::ReadError};
use crate::units::read::{Bare, Notation, Number, length, plain, take};
use crate::units::{Length, mm};

/// A diameter, and the drill it was named by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diameter {
    /// The diameter.
    pub size: Length,
    /// The drill, where a drill was named.
    pub drill: Option<&'static Drill>,
}

/// A diameter by the name of a drill, or a length. A bare whole number that could be a drill's or
/// millimetres is millimetres, and [`diameter_taken`] says so; a bare decimal below one that could be
/// millimetres or inches is asked.
///
/// # Errors
/// It is neither, or its unit is not plain.
pub fn diameter(typed: Typed<'_>) -> Result<Diameter, FieldError> {
    let text = without_word(&plain(typed.text));
    match drills::read::read(&text) {
        Ok(drill) => return Ok(Diameter { size: drill.diameter, drill: Some(drill) }),
        Err(error) => {
            if let Some(number) = bare(&text).filter(|number| is_either(*number, &error)) {
                return Err(ask(typed, number));
            }
        }
    }
    length(&text, Bare::Mm).map(|size| Diameter { size, drill: None }).map_err(|_| {
        let error = length(typed.text, Bare::Mm).err();
        let error = error.map_or_else(String::new, |error| sentence(&error.to_string()));
        typed.error(format!("{error} Or name a drill: No. 46, F, 7/64 in.").trim().to_owned())
    })
}

/// What a bare whole number was taken for: `25` is 25 mm, `30` the drill of that number.
#[must_use]
pub fn diameter_taken(typed: Typed<'_>) -> Option<Taken> {
    let text = without_word(&plain(typed.text));
    let Notation::Whole(digits) = bare(&text)?.notation else { return None };
    let numbered = find(Series::Number, digits)?;
    let millimetres = Choice { value: format!("{digits} mm"), words: format!("{digits} mm") };
    let number = Choice { value: numbered.label.clone(), words: numbered.label.clone() };
    let is_number = drills::read::read(&text).is_ok();
    let (taken, other) = if is_number { (number, millimetres) } else { (millimetres, number) };
    let why = if is_number { "no metric drill held here is so large" } else { "" };
    Some(Taken {
        field: typed.field,
        typed: quoted(typed.text),
        taken_as: taken.words,
        why,
        others: vec![other],
    })
}

/// The number, where nothing stands beside it.
fn bare(text: &str) -> Option<Number<'_>> {
    take(text).filter(|(_, rest)| rest.trim().is_empty()).map(|(number, _)| number)
}

/// Whether a bare number could as well be inches as millimetres.
fn is_either(number: Number<'_>, error: &ReadError) -> bool {
    let is_decimal = matches!(number.notation, Notation::Decimal { .. }) && number.value < 1.0;
    match error {
        ReadError::Ambiguous { .. } => is_decimal,
        // Below the smallest drill it can only be inches or a slip, and the reader says so.
        ReadError::Unknown { .. } => is_decimal && mm(number.value) >= mm(0.1),
        ReadError::Empty | ReadError::TooLong => false,
    }
}

fn ask(typed: Typed<'_>, number: Number<'_>) -> FieldError {
    FieldError {
        choices: either(number),
        ..typed.error(format!(
            "{} could be millimetres or inches: write the unit.",
            quoted(typed.text)
        ))
    }
}

/// A number in each unit it could have.
pub(super) fn either(number: Number<'_>) -> Vec<Choice> {
    let figure = match number.notation {
        Notation::Whole(digits) => digits.to_owned(),
        Notation::Decimal { whole: "", decimals, .. } => format!("0.{decimals}"),
        Notation::Decimal { whole, decimals, .. } => format!("{whole}.{decimals}"),
        Notation::Fraction | Notation::Mixed => return Vec::new(),
    };
    ["mm", "in"]
        .map(|unit| format!("{figure} {unit}"))
        .map(|text| Choice { value: text.clone(), words: text })
        .into()
}

/// The text without the word for a diameter, in front or behind: `dia 6`, `3/16 dia`.
fn without_word(text: &str) -> String {
    const WORDS: [&str; 5] = ["diameter", "diam", "dia.", "dia", "d."];
    let front = WORDS.iter().find_map(|word| text.strip_prefix(word)).unwrap_or(text);
    let back = WORDS.iter().find_map(|word| front.strip_suffix(word)).unwrap_or(front);
    back.trim().to_owned()
}
