//! A number of a typed thread name, with the marks and words that stand at it.

use crate::units::read::Number;

/// The unit behind a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Mm,
    Inch,
    PerInch,
}

/// What stands between a number and the number before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Joint {
    /// Space or words.
    Apart,
    Dash,
    Times,
}

/// A number with what stands at it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Figure<'a> {
    pub(super) number: Number<'a>,
    pub(super) unit: Option<Unit>,
    /// `#` or `No` stands before it.
    pub(super) is_number: bool,
    pub(super) joint: Joint,
}

/// A size with or without a pitch: one way to read the figures.
#[derive(Clone, Copy, Debug)]
pub(super) struct SizeReading<'a> {
    pub(super) size: Figure<'a>,
    pub(super) pitch: Option<Figure<'a>>,
}
