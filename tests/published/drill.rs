//! Reading the drill a source names, and finding it in our series.

use holewright_core::tables::drills::{Drill, Series, all, find};
use holewright_core::units::{Fraction, in_inch};

use crate::replay::{Kind, Printed, Row, decimal};
use crate::size::{dash, fraction};

/// A drill as a source names it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Name {
    /// A size of one series as addresses write it.
    Size(Series, String),
    /// A decimal of an inch, whatever the series.
    Inches(Printed),
}

/// Reads `No. 26`, `#26`, `Letter O`, `O`, `27/64 in`, `1 3/32`, `2.05 mm`, `0.228`.
pub(crate) fn name(label: &str) -> Name {
    let label = label.trim();
    let number = label.strip_prefix("No. ").or_else(|| label.strip_prefix('#'));
    if let Some(number) = number {
        return Name::Size(Series::Number, number.to_owned());
    }
    let letter = label.strip_prefix("Letter ").unwrap_or(label);
    if letter.len() == 1 && letter.chars().all(char::is_alphabetic) {
        return Name::Size(Series::Letter, letter.to_lowercase());
    }
    if let Some(millimetres) = label.strip_suffix(" mm") {
        return metric(millimetres);
    }
    let inches = label.strip_suffix(" in").unwrap_or(label);
    if let Some(inches) = fraction(inches) {
        return Name::Size(Series::Fraction, dash(lowest(inches)));
    }
    Name::Inches(decimal(inches).unwrap_or_else(|| panic!("{label:?} names no drill")))
}

/// A metric drill by its printed millimetres: `2.50` is the drill `2.5`.
pub(crate) fn metric(millimetres: &str) -> Name {
    let size = decimal(millimetres).unwrap_or_else(|| panic!("{millimetres:?} is no diameter"));
    Name::Size(Series::Metric, size.value.to_string())
}

/// The drill, or a note in the row that we do not hold it.
pub(crate) fn held(row: &mut Row, name: &Name) -> Option<&'static Drill> {
    let found = match name {
        Name::Size(series, size) => find(*series, size),
        Name::Inches(inches) => by_decimal(*inches),
    };
    if found.is_none() {
        match name {
            Name::Size(series, size) => row.miss(format!("drills/{series}"), size),
            Name::Inches(inches) => row.miss("drills/inch", inches.value.to_string()),
        }
    }
    found
}

/// The drill of a printed name, with the claim that we name it the same.
#[track_caller]
pub(crate) fn named(row: &mut Row, column: &str, printed: &str) -> Option<&'static Drill> {
    let name = name(printed);
    let found = held(row, &name)?;
    match &name {
        Name::Inches(_) => {
            row.check_printed(column, printed, Kind::Table, in_inch(found.diameter));
        }
        Name::Size(series, size) => {
            let label = label(*series, size);
            row.claim(column, Kind::Table, &label, &found.label, label == found.label);
        }
    }
    Some(found)
}

/// What a drill stand says: `No. 46`, `Letter F`, `1 3/64 in`, `2.05 mm`.
fn label(series: Series, size: &str) -> String {
    match (series, size.split('-').collect::<Vec<_>>().as_slice()) {
        (Series::Number, _) => format!("No. {size}"),
        (Series::Letter, _) => format!("Letter {}", size.to_uppercase()),
        (Series::Metric, _) => format!("{size} mm"),
        (Series::Fraction, [over, under]) => format!("{over}/{under} in"),
        (Series::Fraction, _) => format!("{size} in"),
    }
}

/// The inch drill whose size rounds to a printed decimal.
pub(crate) fn by_decimal(inches: Printed) -> Option<&'static Drill> {
    all()
        .iter()
        .find(|drill| drill.series != Series::Metric && inches.agrees(in_inch(drill.diameter)))
}

fn lowest(fraction: Fraction) -> Fraction {
    let mut lowest = fraction;
    let even = |number: u8| number.is_multiple_of(2);
    while lowest.numerator > 0 && even(lowest.numerator) && even(lowest.denominator) {
        lowest.numerator /= 2;
        lowest.denominator /= 2;
    }
    lowest
}

#[test]
fn the_labels_of_the_sources_are_read() {
    let size = |series, size: &str| Name::Size(series, size.into());
    assert_eq!(name("No. 26"), size(Series::Number, "26"));
    assert_eq!(name("#10"), size(Series::Number, "10"));
    assert_eq!(name("Letter O"), size(Series::Letter, "o"));
    assert_eq!(name("I"), size(Series::Letter, "i"));
    assert_eq!(name("27/64 in"), size(Series::Fraction, "27-64"));
    assert_eq!(name("1 9/64"), size(Series::Fraction, "1-9-64"));
    assert_eq!(name("1-9/64"), size(Series::Fraction, "1-9-64"));
    assert_eq!(name("1.30 mm"), size(Series::Metric, "1.3"));
    assert!(matches!(name("0.228"), Name::Inches(_)));
}
