//! Hexagons, heads and washers as their sources print them, each row by the nominal diameter of its screw.
//!
//! Leaves out what is worked out of them: [`crate::calc::fastener`]. BA hexagons go by a rule and have no
//! rows.

mod heads;
mod hexagons;
mod washers;

use std::fmt;

use crate::tables::drills::SAME_SIZE;
use crate::tables::source::Source;
use crate::tables::threads::{Basic, HeadFamily, Thread};
use crate::units::{Length, Printed, in_mm};

pub use hexagons::BA_RULE;

/// Whose hexagon a row holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HexagonPattern {
    /// BS 1083, the same for BSW and BSF.
    Bs1083,
    /// The larger Whitworth hexagons that BS 1083 did away with.
    OldWhitworth,
    /// ISO 4014, ISO 4017 and ISO 4032.
    Iso,
    /// The older metric hexagons, where ISO has another.
    OldMetric,
    /// ASME B18.2.1 bolts with B18.2.2 nuts.
    UnifiedBolt,
    /// ASME B18.6.3 nuts for numbered screws.
    UnifiedSmall,
}

impl fmt::Display for HexagonPattern {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Bs1083 => "BS 1083:1965",
            Self::OldWhitworth => "the older, larger Whitworth hexagon",
            Self::Iso => "ISO 4014 and ISO 4032",
            Self::OldMetric => "the older metric hexagon, DIN 931",
            Self::UnifiedBolt => "ASME B18.2.1",
            Self::UnifiedSmall => "ASME B18.2.2, machine screw nuts",
        })
    }
}

/// The hexagon of one nominal diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hexagon {
    /// Whose.
    pub pattern: HexagonPattern,
    /// The screw's nominal diameter.
    pub nominal: Printed,
    /// Across flats, the largest; what the spanner is called by.
    pub across_flats: Printed,
    /// Across corners: the largest in BS 1083, the least in ISO 4014.
    pub across_corners: Option<Printed>,
    /// Height of the bolt's head: the largest in BS 1083, the basic one elsewhere.
    pub head: Option<Printed>,
    /// Thickness of the plain nut: the largest, the middle one of ASME.
    pub nut: Option<Printed>,
    /// Across flats of the nut, where it is not the bolt's.
    pub nut_across_flats: Option<Printed>,
    /// Where across flats was read.
    pub source: Source,
}

/// A head that is no hexagon.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HeadKind {
    /// ISO 1207.
    Cheese,
    /// ISO 2009 and ISO 7046, ASME B18.6.3.
    Countersunk,
    /// Hexagon socket: ISO 4762, ASME B18.3.
    Cap,
}

/// A head of one nominal diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head {
    /// Which.
    pub kind: HeadKind,
    /// Whose screws.
    pub family: HeadFamily,
    /// The screw's nominal diameter.
    pub nominal: Printed,
    /// Its largest diameter; of a metric countersunk head where its cone would end in a sharp edge.
    pub diameter: Printed,
    /// Its height, of a cap head the largest.
    pub height: Printed,
    /// The key of its socket.
    pub key: Option<Printed>,
    /// Where it was read.
    pub source: Source,
}

/// A plain washer of one nominal diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Whose screws.
    pub family: HeadFamily,
    /// The screw's nominal diameter.
    pub nominal: Printed,
    /// Its hole, the least.
    pub inside: Printed,
    /// Its outside diameter.
    pub outside: Printed,
    /// Its thickness.
    pub thickness: Printed,
    /// Where it was read.
    pub source: Source,
}

/// Every hexagon held, by pattern and then by size.
pub fn hexagons() -> impl Iterator<Item = &'static Hexagon> {
    hexagons::ROWS.iter()
}

/// Every other head held, by kind and then by size.
pub fn heads() -> impl Iterator<Item = &'static Head> {
    heads::ROWS.iter()
}

/// Every washer held, by family and then by size.
pub fn washers() -> impl Iterator<Item = &'static Washer> {
    washers::ROWS.iter()
}

/// The hexagon of a pattern for a thread's diameter.
///
/// # Examples
/// BS 1083 gave 1/4 in the hexagon that 3/16 in had before.
/// ```
/// use holewright_core::tables::fasteners::{hexagon, HexagonPattern};
/// use holewright_core::{tables::threads::find, units::Printed};
/// let quarter = find("bsw", "1-4").unwrap();
/// let flats = |pattern| hexagon(pattern, quarter).unwrap().across_flats;
/// assert_eq!(flats(HexagonPattern::Bs1083), Printed::Inch(0.445));
/// assert_eq!(flats(HexagonPattern::OldWhitworth), Printed::Inch(0.525));
/// ```
#[must_use]
pub fn hexagon(pattern: HexagonPattern, thread: &Thread) -> Option<&'static Hexagon> {
    hexagons().find(|row| row.pattern == pattern && is_of(row.nominal, thread))
}

/// The head of a kind for a thread's diameter, among the heads of its system.
#[must_use]
pub fn head(kind: HeadKind, thread: &Thread) -> Option<&'static Head> {
    let family = thread.system.system().heads;
    heads().find(|row| row.kind == kind && row.family == family && is_of(row.nominal, thread))
}

/// The washer for a thread's diameter, among the washers of its system.
#[must_use]
pub fn washer(thread: &Thread) -> Option<&'static Washer> {
    let family = thread.system.system().heads;
    washers().find(|row| row.family == family && is_of(row.nominal, thread))
}

fn is_of(nominal: Printed, thread: &Thread) -> bool {
    match thread.basic {
        Basic::Major(major) => {
            let off: Length = nominal.length() - major.length();
            in_mm(off).abs() < in_mm(SAME_SIZE)
        }
        Basic::EffectiveAtGauge(_) => false,
    }
}
