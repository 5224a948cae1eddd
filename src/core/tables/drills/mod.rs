//! The four drill series: number, letter, fraction and metric, in one order of size.
//!
//! A row of a series holds the size as its standard prints it. Which drill suits a hole is worked
//! out in [`crate::calc`].

mod cut;
mod fraction;
mod letter;
mod metric;
mod number;
pub mod owned;
pub mod read;

use std::fmt;
use std::sync::LazyLock;

use crate::tables::source::Source;
use crate::units::{Length, in_mm, mm};

pub use cut::Cut;

/// Two sizes closer than this are one size: far below any tolerance, far above binary noise.
pub const SAME_SIZE: Length = mm(1e-6);

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
    /// The size as addresses write it: `46`, `f`, `7-64`, `2.05`.
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

    /// Whether the name on the drill stand is the diameter in millimetres, so that it need not be
    /// written behind it.
    #[must_use]
    pub fn is_named_in_mm(&self) -> bool {
        self.series == Series::Metric
    }

    /// Where the size was read.
    #[must_use]
    pub fn source(&self) -> Source {
        match self.series {
            Series::Number => number::source(&self.size),
            Series::Letter => letter::source(&self.size),
            Series::Fraction => fraction::SOURCE,
            Series::Metric => metric::SOURCE,
        }
    }
}

static DRILLS: LazyLock<Vec<Drill>> = LazyLock::new(|| {
    let mut drills: Vec<Drill> = number::drills()
        .chain(letter::drills())
        .chain(fraction::drills())
        .chain(metric::drills())
        .collect();
    drills.sort_by(|a, b| {
        in_mm(a.diameter).total_cmp(&in_mm(b.diameter)).then(a.series.cmp(&b.series))
    });
    drills
});

/// The drills of each series by size, in the order of [`Series::ALL`].
static IN_SERIES: LazyLock<[Vec<&'static Drill>; 4]> = LazyLock::new(|| {
    Series::ALL.map(|series| all().iter().filter(|drill| drill.series == series).collect())
});

/// Every drill by address, for a search by halves.
static BY_ADDRESS: LazyLock<Vec<&'static Drill>> = LazyLock::new(|| {
    let mut drills: Vec<&'static Drill> = all().iter().collect();
    drills.sort_by(|a, b| (a.series, &a.size).cmp(&(b.series, &b.size)));
    drills
});

/// Every drill, by size; equal sizes in the order of [`Series`].
///
/// # Examples
/// BS 328 gives 227 metric sizes; with 97 numbers, 26 letters and 64 fractions that is 414 drills.
/// ```
/// use holewright_core::tables::drills;
/// assert_eq!(drills::all().len(), 414);
/// ```
#[must_use]
pub fn all() -> &'static [Drill] {
    &DRILLS
}

/// The drills of one series, by size.
#[must_use]
pub fn in_series(series: Series) -> &'static [&'static Drill] {
    let [number, letter, fraction, metric] = &*IN_SERIES;
    match series {
        Series::Number => number,
        Series::Letter => letter,
        Series::Fraction => fraction,
        Series::Metric => metric,
    }
}

/// The drills of one series, by size, one after the other.
pub fn by_series(series: Series) -> impl DoubleEndedIterator<Item = &'static Drill> + Clone {
    in_series(series).iter().copied()
}

/// The drill at this address: `find(Series::Number, "46")`.
///
/// # Examples
/// No. 46 is 0.0810 in (Machinery's Handbook 31st ed. p. 2155).
/// ```
/// use holewright_core::{tables::drills::{find, Series}, units::print};
/// let drill = find(Series::Number, "46").unwrap();
/// assert_eq!(print::inch(drill.diameter, 4), "0.0810 in");
/// assert_eq!(find(Series::Number, "98"), None);
/// ```
#[must_use]
pub fn find(series: Series, size: &str) -> Option<&'static Drill> {
    let place = BY_ADDRESS
        .binary_search_by(|drill| (drill.series, drill.size.as_str()).cmp(&(series, size)))
        .ok()?;
    BY_ADDRESS.get(place).copied()
}
