//! The four drill series: number, letter, fraction and metric, in one order of size.

pub mod read;

use std::fmt;
use std::sync::LazyLock;

use crate::units::{Length, mm};

/// How a drill is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Series {
    /// Number drills 97 to 1 (ASME B94.11M).
    Number,
    /// Letter drills A to Z (ASME B94.11M).
    Letter,
    /// Fractions of an inch by 64ths.
    Fraction,
    /// Metric, to the series of BS 328.
    Metric,
}

impl Series {
    /// Every series, in the order of the addresses.
    pub const ALL: [Self; 4] = [Self::Number, Self::Letter, Self::Fraction, Self::Metric];

    /// The address part: `number`.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Number => "number",
            Self::Letter => "letter",
            Self::Fraction => "fraction",
            Self::Metric => "metric",
        }
    }

    /// The series of an address part.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|series| series.slug() == slug)
    }
}

impl fmt::Display for Series {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.slug())
    }
}

/// One drill of one series.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    /// Its series.
    pub series: Series,
    /// The size in address dress: `46`, `f`, `7-64`, `2.05`.
    pub size: String,
    /// The name on the drill stand: `No. 46`, `Letter F`, `7/64 in`, `2.05 mm`.
    pub label: String,
    /// Nominal diameter.
    pub diameter: Length,
}

impl Drill {
    /// The page's address.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/drills/{}/{}", self.series, self.size)
    }
}

static DRILLS: LazyLock<Vec<Drill>> = LazyLock::new(|| {
    vec![Drill {
        series: Series::Metric,
        size: "2.65".into(),
        label: "2.65 mm".into(),
        diameter: mm(2.65),
    }]
});

/// Every drill, by size; equal sizes in the order of [`Series`].
#[must_use]
pub fn all() -> &'static [Drill] {
    &DRILLS
}

/// The drill at this address: `find(Series::Number, "46")`.
#[must_use]
pub fn find(series: Series, size: &str) -> Option<&'static Drill> {
    DRILLS.iter().find(|drill| drill.series == series && drill.size == size)
}
