//! Reading the lengths, angles and spindle speeds people type, in any usual spelling.
//!
//! Leaves out names: threads and drills are read beside their tables.

mod error;
mod number;
mod plain;
mod worded;

pub use error::{FigureError, LengthError, Problem, Wanted};
pub use number::{Notation, Number, mixed, take, take_mixed};
pub(crate) use plain::with_diameter_sign;
pub use plain::{one_of, plain, shown};
pub use worded::worded;

use super::{Angle, Frequency, Length, degrees, in_mm, inch, mm, rpm};

/// The most characters one figure may have.
const LONGEST: usize = 40;
/// No length in a model engineer's shop is longer, in millimetres.
const MOST_MM: f64 = 2000.0;
/// Nothing here is measured finer, in millimetres.
const LEAST_MM: f64 = 0.0001;
/// No angle here is finer, in degrees.
const LEAST_DEGREES: f64 = 0.001;
/// No spindle is faster, in revolutions a minute.
const MOST_RPM: f64 = 200_000.0;

/// What a number without a unit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bare {
    /// Millimetres, as in the plan.
    Mm,
    /// Not known: the unit has to be written.
    Ask,
}

/// The units a length is typed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unit {
    Mm,
    Cm,
    Inch,
    Thou,
}

impl Unit {
    /// The unit of a word or mark in plain characters; a point behind it is ignored.
    pub(crate) fn named(word: &str) -> Option<Self> {
        match word.strip_suffix('.').unwrap_or(word) {
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(Self::Mm),
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(Self::Cm),
            "in" | "ins" | "inch" | "inches" | "\"" => Some(Self::Inch),
            "thou"
            | "thous"
            | "mil"
            | "mils"
            | "thousandth"
            | "thousandths"
            | "thou of an inch"
            | "thousandths of an inch" => Some(Self::Thou),
            _ => None,
        }
    }

    /// So many of this unit.
    pub(crate) const fn length(self, value: f64) -> Length {
        match self {
            Self::Mm => mm(value),
            Self::Cm => mm(value * 10.0),
            Self::Inch => inch(value),
            Self::Thou => inch(value / 1000.0),
        }
    }
}

/// Reads a length: decimals with point or comma, fractions, mixed numbers; mm, cm, inches, thou.
///
/// A vulgar fraction without a unit is inches whatever `bare` says, since nobody writes a metric
/// size as a fraction. Between a whole number and a fraction, `-` joins: `1-1/4` is 1¼ in.
///
/// # Errors
/// Says what was typed, what is wrong and what is accepted: empty or too long, no number, an
/// unknown unit, no unit under [`Bare::Ask`], a comma that could mark thousands, zero or below,
/// longer than 2 m.
///
/// # Examples
/// ```
/// use holewright_core::units::{inch, mm, read::{Bare, Problem, length}};
/// assert_eq!(length("2,05 mm", Bare::Ask), Ok(mm(2.05)));
/// assert_eq!(length("1 1/4\"", Bare::Ask), Ok(inch(1.25)));
/// assert_eq!(length("81 thou", Bare::Ask), Ok(inch(0.081)));
/// assert_eq!(length("8", Bare::Mm), Ok(mm(8.0)));
/// assert_eq!(length("7/64", Bare::Mm), Ok(inch(7.0 / 64.0)));
/// assert_eq!(length("8", Bare::Ask).map_err(|error| error.problem), Err(Problem::NoUnit));
/// ```
pub fn length(typed: &str, bare: Bare) -> Result<Length, LengthError> {
    let fail = |problem| FigureError::new(typed, Wanted::Length, problem);
    let text = figure(typed).map_err(fail)?;
    let (number, rest) = positive(&text).map_err(fail)?;
    let unit = match rest {
        "" if number.is_vulgar() => Unit::Inch,
        "" if bare == Bare::Mm => Unit::Mm,
        "" => return Err(fail(Problem::NoUnit)),
        word => Unit::named(word).ok_or_else(|| fail(Problem::UnknownUnit(shown(word))))?,
    };
    let length = unit.length(number.value);
    // "1,250 in" cannot be 1250 in, so there the comma can only mark decimals.
    let as_thousands = comma_as_thousands(number).map(|value| in_mm(unit.length(value)));
    match in_mm(length) {
        0.0 => Err(fail(Problem::Zero)),
        _ if as_thousands.is_some_and(|size| size <= MOST_MM) => Err(fail(Problem::CommaUnclear)),
        size if size < LEAST_MM => Err(fail(Problem::TooSmall)),
        size if size > MOST_MM => Err(fail(Problem::TooLarge)),
        _ => Ok(length),
    }
}

/// Reads an angle in degrees, the unit written or not: `118`, `118°`, `47 1/2 deg`.
///
/// # Errors
/// As [`length`]; the angle must lie above 0° and below 180°.
///
/// # Examples
/// ```
/// use holewright_core::units::{degrees, read::angle};
/// assert_eq!(angle("47½°"), Ok(degrees(47.5)));
/// ```
pub fn angle(typed: &str) -> Result<Angle, FigureError> {
    let fail = |problem| FigureError::new(typed, Wanted::Angle, problem);
    let text = figure(typed).map_err(fail)?;
    let (number, rest) = positive(&text).map_err(fail)?;
    match rest.strip_suffix('.').unwrap_or(rest) {
        "" | "°" | "deg" | "degs" | "degree" | "degrees" => {}
        word => return Err(fail(Problem::UnknownUnit(shown(word)))),
    }
    match number.value {
        0.0 => Err(fail(Problem::Zero)),
        value if value < LEAST_DEGREES => Err(fail(Problem::TooSmall)),
        value if value >= 180.0 => Err(fail(Problem::TooLarge)),
        value => Ok(degrees(value)),
    }
}

/// Reads a spindle speed in revolutions a minute, the unit written or not: `2000`, `2,000 rpm`.
///
/// A comma before exactly three figures marks thousands: no spindle speed has three decimals.
///
/// # Errors
/// As [`length`]; the speed must lie between 1 and 200000.
///
/// # Examples
/// ```
/// use holewright_core::units::{rpm, read::spindle_speed};
/// assert_eq!(spindle_speed("2,000 rpm"), Ok(rpm(2000.0)));
/// ```
pub fn spindle_speed(typed: &str) -> Result<Frequency, FigureError> {
    let fail = |problem| FigureError::new(typed, Wanted::SpindleSpeed, problem);
    let text = figure(typed).map_err(fail)?;
    let (number, rest) = positive(&text).map_err(fail)?;
    match rest.strip_suffix('.').unwrap_or(rest) {
        "" | "rpm" | "r.p.m" | "rev/min" | "revs/min" | "r/min" | "revs" => {}
        word => return Err(fail(Problem::UnknownUnit(shown(word)))),
    }
    match comma_as_thousands(number).unwrap_or(number.value) {
        0.0 => Err(fail(Problem::Zero)),
        value if value < 1.0 => Err(fail(Problem::TooSmall)),
        value if value > MOST_RPM => Err(fail(Problem::TooLarge)),
        value => Ok(rpm(value)),
    }
}

/// The text in plain characters, if there is some and not too much.
fn figure(typed: &str) -> Result<String, Problem> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(Problem::TooLong);
    }
    let text = plain(typed);
    if text.is_empty() { Err(Problem::Empty) } else { Ok(text) }
}

/// The number at the front, and the unit behind it.
fn positive(text: &str) -> Result<(Number<'_>, &str), Problem> {
    if let Some(below_zero) = text.strip_prefix('-') {
        let is_number = take(below_zero.trim_start()).is_some();
        return Err(if is_number { Problem::Negative } else { Problem::NotANumber });
    }
    let (number, rest) = take_mixed(text).ok_or(Problem::NotANumber)?;
    Ok((number, rest.trim_start()))
}

/// The value if the comma marks thousands: `1,250` as 1250. `None` where it cannot.
fn comma_as_thousands(number: Number<'_>) -> Option<f64> {
    match number.notation {
        Notation::Decimal { whole, decimals, comma: true }
            if decimals.len() == 3 && !whole.starts_with('0') =>
        {
            format!("{whole}{decimals}").parse().ok()
        }
        _ => None,
    }
}
