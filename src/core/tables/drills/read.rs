//! Reading the drill names people type: `#46`, `No 46`, `letter F`, `7/64"`, `.0785`, `2,05 mm`.
//!
//! A size is a drill only if a drill has that size: nothing is rounded to the nearest one in
//! silence. Leaves out lists and ranges, which are in [`super::owned`].

use super::{Drill, SAME_SIZE, Series, all, by_series, find};
use crate::units::read::{Notation, Number, Unit, one_of, plain, shown, take_mixed};
use crate::units::{Length, in_mm, inch, mm};

/// The most characters the name of one drill may have.
const LONGEST: usize = 40;
/// How many near drills an error names.
const NEAREST: usize = 4;
/// Half of the fourth place of inches, the last that the standard prints.
const HALF_PLACE: Length = inch(0.000_05);
/// Half of the third place of inches, the last of many charts.
const HALF_THOU: Length = inch(0.000_5);

/// Why a drill could not be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReadError {
    /// No drill has this name or size.
    #[error(
        "“{typed}” is no drill held here. {}Write a drill like No. 46, F, 7/64 in, .0785 in or 2.05 mm.",
        near(nearest)
    )]
    Unknown {
        /// What was typed.
        typed: String,
        /// The nearest drills, nearest first; empty where nothing like a size was typed.
        nearest: Vec<&'static Drill>,
    },
    /// More than one drill can be meant.
    #[error("“{typed}” could be {}: write which.", one_of(&labels(candidates)))]
    Ambiguous {
        /// What was typed.
        typed: String,
        /// The drills that can be meant, by size.
        candidates: Vec<&'static Drill>,
    },
    /// Nothing was typed.
    #[error("no drill is written. Write one like No. 46, F, 7/64 in, .0785 in or 2.05 mm.")]
    Empty,
    /// Too much was typed to be one drill.
    #[error(
        "that is too long for one drill. Write one like No. 46, F, 7/64 in, .0785 in or 2.05 mm."
    )]
    TooLong,
}

/// Reads one drill.
///
/// A number without a unit may be a drill's number, millimetres or inches; where drills answer to
/// more than one of these, the error asks. `2.05` can only be millimetres, `.0785` only inches,
/// and `46` only a number, since no metric drill here is above 25 mm. A fraction is the fractional
/// drill. A size in inches is matched to the four places a standard prints, or to the three places
/// of many charts where no drill is nearer and no more were typed.
///
/// # Errors
/// [`ReadError`] holds what was typed with the drills nearest to it or those that can be meant.
///
/// # Examples
/// No. 46 is 0.0810 in (Machinery's Handbook 31st ed. p. 2155).
/// ```
/// use holewright_core::tables::drills::{Series, find, read::{ReadError, read}};
/// assert_eq!(read("No 46").ok(), find(Series::Number, "46"));
/// assert_eq!(read("81 thou").ok(), find(Series::Number, "46"));
/// assert_eq!(read("2,05 mm").ok(), find(Series::Metric, "2.05"));
/// // A bare 2 is No. 2 or 2 mm: ask.
/// assert!(matches!(read("2"), Err(ReadError::Ambiguous { candidates, .. }) if candidates.len() == 2));
/// ```
pub fn read(typed: &str) -> Result<&'static Drill, ReadError> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(ReadError::TooLong);
    }
    let text = plain(typed);
    let text = without_words(&text);
    if text.is_empty() {
        return Err(ReadError::Empty);
    }
    let Meant { mut drills, near } = meant(text);
    match drills.as_slice() {
        [] => Err(ReadError::Unknown { typed: shown(typed), nearest: near.drills() }),
        [one] => Ok(one),
        _ => {
            drills.sort_by(|a, b| by_size(a, b));
            Err(ReadError::Ambiguous { typed: shown(typed), candidates: drills })
        }
    }
}

/// The order of [`all`].
pub(super) fn by_size(a: &Drill, b: &Drill) -> std::cmp::Ordering {
    in_mm(a.diameter).total_cmp(&in_mm(b.diameter)).then(a.series.cmp(&b.series))
}

/// The number behind `#`, `no` or `number`, with the rest of the text.
pub(super) fn after_number_mark(text: &str) -> Option<&str> {
    ["#", "numbers", "number", "nos", "no", "nr"].iter().find_map(|mark| {
        let rest = text.strip_prefix(mark)?;
        Some(rest.strip_prefix('.').unwrap_or(rest).trim_start())
    })
}

/// The one letter of a letter drill.
pub(super) fn letter(text: &str) -> Option<&'static Drill> {
    let is_letter = text.len() == 1 && text.starts_with(|c: char| c.is_ascii_lowercase());
    if is_letter { find(Series::Letter, text) } else { None }
}

/// The drills a text can mean, and where the nearest are if it means none.
struct Meant {
    drills: Vec<&'static Drill>,
    near: NearTo,
}

/// Where to look for the nearest drills.
enum NearTo {
    Nothing,
    Number(u16),
    Size(Length),
    /// A bare number below one: millimetres or inches.
    EitherSize(f64),
}

impl NearTo {
    fn drills(&self) -> Vec<&'static Drill> {
        match *self {
            Self::Nothing => Vec::new(),
            Self::Number(wanted) => nearest_numbers(wanted),
            Self::Size(size) => nearest(size, NEAREST),
            Self::EitherSize(value) => {
                let mut both = nearest(mm(value), NEAREST / 2);
                both.extend(nearest(inch(value), NEAREST / 2));
                both
            }
        }
    }
}

/// Words about the make of a drill, which say nothing about its size.
const NO_MATTER: &[&str] =
    &["drill", "bit", "twist", "hss", "stub", "jobber", "jobbers", "cobalt", "carbide"];

/// The text without the words about the make at its ends.
fn without_words(text: &str) -> &str {
    let is_no_matter = |word: &str| NO_MATTER.contains(&word);
    let mut text = text.trim();
    while let Some((left, _)) = text.rsplit_once(' ').filter(|(_, last)| is_no_matter(last)) {
        text = left.trim_end();
    }
    while let Some((_, left)) = text.split_once(' ').filter(|(first, _)| is_no_matter(first)) {
        text = left.trim_start();
    }
    text
}

fn meant(text: &str) -> Meant {
    let in_series = text
        .split_once(['/', ' '])
        .and_then(|(series, size)| Some((Series::from_slug(series)?, size)));
    let Some((series, size)) = in_series else { return named(text) };
    if let Some(drill) = find(series, size) {
        return Meant { drills: vec![drill], near: NearTo::Nothing };
    }
    // "metric/3.0" is the 3 mm drill.
    let mut meant = named(size);
    meant.drills.retain(|drill| drill.series == series);
    meant
}

fn named(text: &str) -> Meant {
    if let Some(letter) = letter(text.strip_prefix("letter ").unwrap_or(text)) {
        return Meant { drills: vec![letter], near: NearTo::Nothing };
    }
    if let Some(size) = after_number_mark(text) {
        let near = size.parse().map_or(NearTo::Nothing, NearTo::Number);
        return Meant { drills: find(Series::Number, size).into_iter().collect(), near };
    }
    match take_mixed(text) {
        Some((number, rest)) => sized(number, rest.trim_start()),
        None => Meant { drills: Vec::new(), near: NearTo::Nothing },
    }
}

fn sized(number: Number<'_>, unit: &str) -> Meant {
    let unit = match Unit::named(unit) {
        None if !unit.is_empty() => return Meant { drills: Vec::new(), near: NearTo::Nothing },
        // Nobody writes a metric size as a fraction.
        None if number.is_vulgar() => Unit::Inch,
        None => return unitless(number),
        Some(unit) => unit,
    };
    let size = unit.length(number.value);
    let drills = match unit {
        Unit::Mm | Unit::Cm => of_mm(size),
        Unit::Inch if number.is_vulgar() => of_fraction(size),
        Unit::Inch => of_inches(size, number.places()),
        Unit::Thou => of_inches(size, number.places() + 3),
    };
    Meant { drills, near: NearTo::Size(size) }
}

/// A whole number or a decimal that may be a drill's number, millimetres or inches.
fn unitless(number: Number<'_>) -> Meant {
    let mut drills = of_mm(mm(number.value));
    drills.extend(of_inches(inch(number.value), number.places()));
    if let Notation::Whole(digits) = number.notation {
        drills.extend(find(Series::Number, digits));
    }
    // No drill here is above an inch: from 1 up, a bare size is near in millimetres.
    let near = if number.value < 1.0 {
        NearTo::EitherSize(number.value)
    } else {
        NearTo::Size(mm(number.value))
    };
    Meant { drills, near }
}

/// The drills of a size typed in millimetres: a metric drill if there is one.
fn of_mm(size: Length) -> Vec<&'static Drill> {
    let metric = within(size, SAME_SIZE, |drill| drill.series == Series::Metric);
    // Half of the third place of millimetres.
    if metric.is_empty() { within(size, mm(0.0005), |_| true) } else { metric }
}

/// The drills of a size typed in decimals of an inch: an inch drill if there is one.
fn of_inches(size: Length, places: usize) -> Vec<&'static Drill> {
    let is_inch = |drill: &Drill| drill.series != Series::Metric;
    let drills = within(size, HALF_PLACE, is_inch);
    if !drills.is_empty() {
        return drills;
    }
    let metric = within(size, HALF_PLACE, |drill| !is_inch(drill));
    if metric.is_empty() && places == 3 { within(size, HALF_THOU, |_| true) } else { metric }
}

fn of_fraction(size: Length) -> Vec<&'static Drill> {
    within(size, SAME_SIZE, |drill| drill.series == Series::Fraction)
}

fn within(
    size: Length,
    tolerance: Length,
    is_wanted: impl Fn(&Drill) -> bool,
) -> Vec<&'static Drill> {
    // A size exactly half a place off is still in, whatever binary noise says.
    let most = in_mm(tolerance) + 1e-9;
    let least_mm = in_mm(size) - most;
    let start = all().partition_point(|drill| in_mm(drill.diameter) < least_mm);
    all()
        .iter()
        .skip(start)
        .take_while(|drill| in_mm(drill.diameter) - in_mm(size) <= most)
        .filter(|drill| is_wanted(drill))
        .collect()
}

/// So many drills nearest to a size, nearest first.
fn nearest(size: Length, count: usize) -> Vec<&'static Drill> {
    let off = |drill: &Drill| (in_mm(drill.diameter) - in_mm(size)).abs();
    let place = all().partition_point(|drill| in_mm(drill.diameter) < in_mm(size));
    let start = place.saturating_sub(count);
    let mut drills: Vec<&'static Drill> = all().iter().skip(start).take(2 * count).collect();
    drills.sort_by(|a, b| off(a).total_cmp(&off(b)));
    drills.truncate(count);
    drills
}

fn nearest_numbers(wanted: u16) -> Vec<&'static Drill> {
    let mut drills: Vec<_> = by_series(Series::Number).collect();
    drills.sort_by_cached_key(|drill| drill.size.parse().unwrap_or(u16::MAX).abs_diff(wanted));
    drills.truncate(NEAREST);
    drills
}

fn labels(drills: &[&'static Drill]) -> Vec<&'static str> {
    drills.iter().map(|drill| drill.label.as_str()).collect()
}

fn near(nearest: &[&'static Drill]) -> String {
    if nearest.is_empty() {
        String::new()
    } else {
        format!("The nearest are {}. ", labels(nearest).join(", "))
    }
}
