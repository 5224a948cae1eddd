//! Drilling feeds a revolution as the sources print them.
//!
//! The general list is the finest of the published ones and the only one complete by diameter. It
//! starts at a No. 80 drill: below that the feed is by feel.

use super::sources::{NAVY, NOMINAL};
use crate::tables::source::Source;
use crate::units::{Length, inch, mm};

/// A range of drilling feeds a revolution, for drills of one band of diameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeedRange {
    /// Smallest drill it is printed for.
    pub from: Length,
    /// Largest drill it is printed for, itself included; none where the source says "and over".
    pub to: Option<Length>,
    /// Finest feed a revolution.
    pub low: Length,
    /// Coarsest; equal to `low` where the source prints one figure.
    pub high: Length,
    /// The metal in the source's own words.
    pub printed_as: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// The general list, smallest drill first: the one the plan uses, whatever the metal.
#[must_use]
pub fn general() -> &'static [FeedRange] {
    &GENERAL
}

/// The general list's row for this drill; none below No. 80. A drill on the border of two rows
/// takes the finer.
#[must_use]
pub fn for_drill(diameter: Length) -> Option<&'static FeedRange> {
    general().iter().find(|row| diameter >= row.from && row.to.is_none_or(|to| diameter <= to))
}

/// A row of the general list, printed in inches.
const fn general_row(from: f64, to: Option<Length>, low: f64, high: f64) -> FeedRange {
    FeedRange {
        from: inch(from),
        to,
        low: inch(low),
        high: inch(high),
        printed_as: "general",
        source: NAVY,
    }
}

/// A row of the teaching table: one diameter, one feed.
const fn nominal(diameter: f64, feed: f64, printed_as: &'static str) -> FeedRange {
    FeedRange {
        from: mm(diameter),
        to: Some(mm(diameter)),
        low: mm(feed),
        high: mm(feed),
        printed_as,
        source: NOMINAL,
    }
}

// The list says "No. 80 to 1/8 in"; No. 80 is 0.0135 in.
static GENERAL: [FeedRange; 5] = [
    general_row(0.0135, Some(inch(0.125)), 0.001, 0.002),
    general_row(0.125, Some(inch(0.25)), 0.002, 0.004),
    general_row(0.25, Some(inch(0.5)), 0.004, 0.007),
    general_row(0.5, Some(inch(1.0)), 0.007, 0.015),
    general_row(1.0, None, 0.015, 0.025),
];

pub(super) static ALUMINIUM: [FeedRange; 4] = [
    nominal(6.0, 0.3, "aluminium"),
    nominal(12.0, 0.4, "aluminium"),
    nominal(18.0, 0.61, "aluminium"),
    nominal(25.0, 0.81, "aluminium"),
];

pub(super) static BRASS: [FeedRange; 4] = [
    nominal(6.0, 0.2, "brass"),
    nominal(12.0, 0.25, "brass"),
    nominal(18.0, 0.41, "brass"),
    nominal(25.0, 0.51, "brass"),
];

pub(super) static CAST_IRON: [FeedRange; 2] =
    [nominal(12.0, 0.18, "cast iron"), nominal(18.0, 0.25, "cast iron")];

pub(super) static MILD_STEEL: [FeedRange; 3] = [
    nominal(6.0, 0.2, "mild steel"),
    nominal(12.0, 0.25, "mild steel"),
    nominal(25.0, 0.51, "mild steel"),
];

pub(super) static STAINLESS: [FeedRange; 1] = [nominal(6.0, 0.13, "stainless steel")];

pub(super) static PLASTICS: [FeedRange; 3] = [
    nominal(6.0, 0.1, "plastics"),
    nominal(18.0, 0.2, "plastics"),
    nominal(25.0, 0.25, "plastics"),
];
