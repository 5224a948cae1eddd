//! Sizes exactly as their source prints them: what a table row holds.

use std::fmt;

use super::{INCH_MM, Length, inch, mm};

/// A whole number and a vulgar fraction of an inch, as on a British or American drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fraction {
    /// Whole inches.
    pub whole: u8,
    /// Numerator, zero for whole inches.
    pub numerator: u8,
    /// Denominator, never zero.
    pub denominator: u8,
}

impl Fraction {
    /// The value in inches; exact for the halves to 64ths a workshop uses.
    #[must_use]
    pub const fn inches(self) -> f64 {
        self.whole as f64 + self.numerator as f64 / self.denominator as f64
    }
}

impl fmt::Display for Fraction {
    /// `1/4`, `1 1/4` or `2`.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.whole, self.numerator) {
            (whole, 0) => write!(out, "{whole}"),
            (0, numerator) => write!(out, "{numerator}/{}", self.denominator),
            (whole, numerator) => write!(out, "{whole} {numerator}/{}", self.denominator),
        }
    }
}

/// A size as its source prints it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Printed {
    /// Decimal millimetres.
    Mm(f64),
    /// Decimal inches.
    Inch(f64),
    /// A fraction of an inch.
    Fraction(Fraction),
}

impl Printed {
    /// A proper fraction of an inch, `1/4`.
    #[must_use]
    pub const fn fraction(numerator: u8, denominator: u8) -> Self {
        Self::mixed(0, numerator, denominator)
    }

    /// A mixed number of inches, `1 1/4`.
    #[must_use]
    pub const fn mixed(whole: u8, numerator: u8, denominator: u8) -> Self {
        Self::Fraction(Fraction { whole, numerator, denominator })
    }

    /// The size as a length.
    #[must_use]
    pub const fn length(self) -> Length {
        match self {
            Self::Mm(value) => mm(value),
            Self::Inch(value) => inch(value),
            Self::Fraction(fraction) => inch(fraction.inches()),
        }
    }
}

/// A pitch as its source prints it: a length, or threads per inch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pitch {
    /// Decimal millimetres.
    Mm(f64),
    /// Threads per inch; a half (4½, 11½) is exact.
    PerInch(f64),
}

impl Pitch {
    /// The pitch as a length.
    #[must_use]
    pub const fn length(self) -> Length {
        match self {
            Self::Mm(value) => mm(value),
            Self::PerInch(threads) => mm(INCH_MM / threads),
        }
    }

    /// The number of threads in one inch.
    #[must_use]
    pub const fn threads_per_inch(self) -> f64 {
        match self {
            Self::Mm(value) => INCH_MM / value,
            Self::PerInch(threads) => threads,
        }
    }
}
