//! Why a figure that was typed could not be taken, in words for the person who typed it.

use super::plain::shown;

/// What was being read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A length.
    Length,
    /// An angle.
    Angle,
    /// A spindle speed.
    SpindleSpeed,
}

impl Wanted {
    /// What is accepted, with examples.
    #[must_use]
    pub const fn accepted(self) -> &'static str {
        match self {
            Self::Length => {
                "Write a length with its unit, above 0 and up to 2 m: 6 mm, 2,05 mm, 1/4 in, 1 1/4 in, .25\", 81 thou."
            }
            Self::Angle => {
                "Write an angle in degrees, above 0 and below 180: 118, 118°, 47 1/2 deg."
            }
            Self::SpindleSpeed => {
                "Write a spindle speed in revolutions a minute, 1 to 200000: 2000, 2,000 rpm."
            }
        }
    }
}

/// What is wrong with it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Problem {
    /// Nothing was typed.
    #[error("nothing is written")]
    Empty,
    /// Too much was typed to be one figure.
    #[error("that is too long for one figure")]
    TooLong,
    /// It does not begin with a number.
    #[error("that is not a number")]
    NotANumber,
    /// What stands behind the number is no unit known here.
    #[error("the unit “{0}” is not known here")]
    UnknownUnit(String),
    /// A bare number where it could be millimetres or inches.
    #[error("the unit is missing")]
    NoUnit,
    /// A comma that could mark decimals or thousands: `1,250 mm`.
    #[error("the comma could mark decimals or thousands: write a point, or leave it out")]
    CommaUnclear,
    /// Below zero.
    #[error("a figure below zero is no use here")]
    Negative,
    /// Zero. A caller for whom zero is sense may look for this.
    #[error("zero is no use here")]
    Zero,
    /// Above zero, but too small to be meant.
    #[error("that is too small")]
    TooSmall,
    /// Too large to be meant.
    #[error("that is too large")]
    TooLarge,
}

/// A figure that could not be taken: what was typed, what is wrong, what would be taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{typed}”: {problem}. {}", wanted.accepted())]
pub struct FigureError {
    /// What was typed, cut short where it runs on.
    pub typed: String,
    /// What was being read.
    pub wanted: Wanted,
    /// What is wrong.
    pub problem: Problem,
}

impl FigureError {
    pub(super) fn new(typed: &str, wanted: Wanted, problem: Problem) -> Self {
        Self { typed: shown(typed), wanted, problem }
    }
}

/// A length that could not be taken.
pub type LengthError = FigureError;
