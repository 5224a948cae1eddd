//! Drilling feed per revolution, by diameter and material, as printed.
//!
//! The figures are for a machine's own feed. Between two printed sizes both figures are given as
//! the range. Nothing is held for drills below No. 80.

use crate::tables::materials::{Family, Group, Material};
use crate::tables::source::Source;
use crate::units::{Length, in_inch, in_mm, inch, mm};

/// A range of feeds per revolution with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeedRange {
    /// The least.
    pub low: Length,
    /// The most; equal to `low` where the source prints one figure.
    pub high: Length,
    /// Where it comes from.
    pub source: Source,
}

const BY_MATERIAL: Source = Source::published(
    "'Nominal tutorial cutting speeds and feeds', table 1, high-speed steel drilling (a teaching table)",
);
const GENERAL: Source = Source::published("US Navy training course 14345 p. 93, drilling feeds");

/// The diameters of the teaching table, in millimetres.
const DIAMETERS: [f64; 4] = [6.0, 12.0, 18.0, 25.0];

/// Smallest drill of a band, largest, least feed, most; all in inches. No. 80 is 0.0135.
const BANDS: [[f64; 4]; 5] = [
    [0.0135, 0.125, 0.001, 0.002],
    [0.125, 0.25, 0.002, 0.004],
    [0.25, 0.5, 0.004, 0.007],
    [0.5, 1.0, 0.007, 0.015],
    [1.0, f64::INFINITY, 0.015, 0.025],
];

/// The feed for a drill in a material: the material's own figures from 6 to 25 mm, else those for
/// metals in general.
///
/// # Source
/// A teaching table by material; a US Navy training course for the rest. The two do not join: the
/// course is the more careful by about half.
#[must_use]
pub fn feed(diameter: Length, material: &Material) -> Option<FeedRange> {
    by_material(diameter, material).or_else(|| general(diameter))
}

/// The feed for metals in general, No. 80 and larger.
///
/// # Examples
/// Up to 1/8 in, 0.001 to 0.002 in.
/// ```
/// use holewright::{tables::feeds::general, units::{inch, mm, print}};
/// let small = general(mm(2.65)).unwrap();
/// assert_eq!(print::mm(small.low, 4), "0.0254 mm");
/// assert_eq!(print::mm(small.high, 4), "0.0508 mm");
/// assert_eq!(general(inch(0.0130)), None);
/// ```
#[must_use]
pub fn general(diameter: Length) -> Option<FeedRange> {
    let size = in_inch(diameter);
    BANDS
        .iter()
        .find(|[from, to, ..]| (*from..=*to).contains(&size))
        .map(|[_, _, low, high]| FeedRange { low: inch(*low), high: inch(*high), source: GENERAL })
}

/// The material's own figures, for drills of 6 to 25 mm.
#[must_use]
pub fn by_material(diameter: Length, material: &Material) -> Option<FeedRange> {
    let size = in_mm(diameter);
    let column = || DIAMETERS.into_iter().zip(figures(material).into_iter().flatten());
    let (_, low) = column().take_while(|(printed, _)| *printed <= size).last()?;
    let (_, high) = column().find(|(printed, _)| *printed >= size)?;
    Some(FeedRange { low: mm(low), high: mm(high), source: BY_MATERIAL })
}

/// The teaching table's row for a material, in mm per revolution.
const fn figures(material: &Material) -> Option<[f64; 4]> {
    match (material.family, material.group) {
        (Family::Aluminium, _) => Some([0.30, 0.40, 0.61, 0.81]),
        (Family::Brass, _) => Some([0.20, 0.25, 0.41, 0.51]),
        (Family::CastIron, _) => Some([0.13, 0.18, 0.25, 0.31]),
        // Silver steel and gauge plate are steels the table does not speak of.
        (Family::Steel, Group::Tough) | (Family::Bronze | Family::Copper, _) => None,
        (Family::Steel, _) => Some([0.20, 0.25, 0.41, 0.51]),
        (Family::Stainless, _) => Some([0.13, 0.18, 0.25, 0.31]),
        (Family::Plastic, _) => Some([0.10, 0.15, 0.20, 0.25]),
    }
}
