//! Reading lists of drills at hand: single drills, ranges, and whole series.
//!
//! `1-60, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm`: in these lists `-` is a range. Leaves out what the
//! single names mean, which is in [`super::read`].

mod bare;
mod range;
mod split;

use super::read::{ReadError, by_size, read};
use super::{Drill, Series, by_series};
use crate::units::read::{plain, shown};

pub use bare::in_millimetres;
pub use range::RangeError;

/// The most characters a list may have.
pub const LONGEST: usize = 500;

/// What is wrong with one item of a list.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Fault {
    /// It was taken for one drill.
    #[error(transparent)]
    Drill(#[from] ReadError),
    /// It was taken for a range.
    #[error("{0}")]
    Range(#[from] RangeError),
    /// Its commas can mark decimals or part drills.
    #[error(
        "the commas could mark decimals or separate two drills: write a space after a comma between drills"
    )]
    CommaUnclear,
}

/// One item of a list that was not understood.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", in_words(item, fault))]
pub struct BadItem {
    /// The item as typed, cut short where it runs on.
    pub item: String,
    /// What is wrong with it.
    pub fault: Fault,
}

/// Why a list could not be taken whole.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum OwnedError {
    /// Nothing was typed.
    #[error(
        "no drill is in the list. Write one like 1-60, A-Z, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm."
    )]
    Empty,
    /// The list is longer than [`LONGEST`].
    #[error(
        "the list is too long: {LONGEST} characters are the most. Ranges like 1-60 or 1-6x0.1mm make it shorter."
    )]
    TooLong,
    /// Some items were not understood.
    #[error("{}", items.iter().map(ToString::to_string).collect::<Vec<_>>().join(" "))]
    NotUnderstood {
        /// The items that were not understood, in the order typed.
        items: Vec<BadItem>,
        /// The drills of the items that were, by size.
        rest: Vec<&'static Drill>,
    },
}

/// Reads a list of drills at hand: by size, each once.
///
/// Items stand between commas, semicolons or line ends. An item is one drill in any spelling of
/// [`read`], the name of a series, or a range: number drills `1-60` or `No 1-60`, letters `A-Z`,
/// fractions `1/16-1/2` or `1/16-1/2x64ths`, metric `1-6mm` or `1-6x0.1mm`. A range holds only the
/// drills that exist. A comma with a figure hard on either side may mark decimals; where the list
/// makes sense both ways, the error asks. Of bare sizes alone, see [`in_millimetres`].
///
/// # Errors
/// [`OwnedError::NotUnderstood`] names each item that was not understood and keeps the rest.
///
/// # Examples
/// ```
/// use holewright_core::tables::drills::owned::owned;
/// let drills = owned("1-60, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm").unwrap();
/// assert_eq!(drills.len(), 60 + 29 + 51 + 1);
/// assert_eq!(owned("2,05mm,2,1mm").unwrap().len(), 2);
/// ```
pub fn owned(typed: &str) -> Result<Vec<&'static Drill>, OwnedError> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(OwnedError::TooLong);
    }
    let by_unit = in_millimetres(typed);
    let typed = by_unit.as_deref().unwrap_or(typed);
    let mut rest: Vec<&'static Drill> = Vec::new();
    let mut items = Vec::new();
    let mut empty = true;
    for segment in split::segments(typed) {
        empty = false;
        for read in split::items(segment, item) {
            match read {
                Ok(drills) => rest.extend(drills),
                Err((text, fault)) => items.push(BadItem { item: shown(text), fault }),
            }
        }
    }
    if empty {
        return Err(OwnedError::Empty);
    }
    rest.sort_by(|a, b| by_size(a, b));
    rest.dedup_by(|a, b| a.series == b.series && a.size == b.size);
    if items.is_empty() { Ok(rest) } else { Err(OwnedError::NotUnderstood { items, rest }) }
}

/// A fault with the item it is in, named once.
fn in_words(item: &str, fault: &Fault) -> String {
    match fault {
        Fault::Drill(ReadError::Unknown { .. } | ReadError::Ambiguous { .. }) => fault.to_string(),
        _ => format!("“{item}”: {fault}"),
    }
}

/// The drills of one item.
fn item(typed: &str) -> Result<Vec<&'static Drill>, Fault> {
    if let Some(series) = series_named(&plain(typed)) {
        return Ok(series.iter().flat_map(|series| by_series(*series)).collect());
    }
    if let Some(range) = range::range(typed) {
        return range.map_err(Fault::from);
    }
    Ok(vec![read(typed)?])
}

/// Why a list of series could not be taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SeriesError {
    /// Nothing was typed.
    #[error("no series is written. Write one or more of number, letter, fraction, metric.")]
    Empty,
    /// The list is longer than [`LONGEST`].
    #[error(
        "that is too long for a list of series. Write one or more of number, letter, fraction, metric."
    )]
    TooLong,
    /// An item is no series.
    #[error(
        "“{item}” is no series of drills. Write one or more of number, letter, fraction, metric."
    )]
    Unknown {
        /// The first item that is no series.
        item: String,
    },
}

/// Reads a list of drill series, `number,metric`: each once, in the order of [`Series::ALL`].
///
/// # Errors
/// [`SeriesError`] names the first item that is no series.
///
/// # Examples
/// ```
/// use holewright_core::tables::drills::{Series, owned::series};
/// assert_eq!(series("metric, number"), Ok(vec![Series::Number, Series::Metric]));
/// ```
pub fn series(typed: &str) -> Result<Vec<Series>, SeriesError> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(SeriesError::TooLong);
    }
    let mut found = Vec::new();
    let text = plain(typed);
    for item in text.split([',', ';', ' ']).filter(|item| !item.is_empty()) {
        let named = series_named(item).ok_or_else(|| SeriesError::Unknown { item: shown(item) })?;
        found.extend(named);
    }
    if found.is_empty() {
        return Err(SeriesError::Empty);
    }
    Ok(Series::ALL.into_iter().filter(|series| found.contains(series)).collect())
}

/// The series of a word.
fn series_named(word: &str) -> Option<&'static [Series]> {
    match word {
        "number" | "numbers" => Some(&[Series::Number]),
        "letter" | "letters" => Some(&[Series::Letter]),
        "fraction" | "fractions" | "fractional" => Some(&[Series::Fraction]),
        "metric" => Some(&[Series::Metric]),
        "all" => Some(&Series::ALL),
        _ => None,
    }
}
