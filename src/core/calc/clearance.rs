//! Clearance holes for the screw: close, medium and free, and the float they leave.
//!
//! A printed standard rules where there is one; elsewhere a stated rule of the trade does. The
//! rows themselves are in [`crate::tables::clearance`].

use std::fmt;

use crate::calc::thread_form::geometry;
use crate::tables::clearance::{self, Holes, Standard};
use crate::tables::drills::{self, Drill, SAME_SIZE};
use crate::tables::source::Source;
use crate::tables::threads::{ClearanceFamily, SystemId, Thread};
use crate::units::{Length, in_mm, inch, mm};

/// How freely the screw passes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Fit {
    /// The parts must register by the screw.
    Close,
    /// The usual.
    #[default]
    Medium,
    /// The parts are to be lined up by something else.
    Free,
}

impl Fit {
    /// Every fit, closest first.
    pub const ALL: [Self; 3] = [Self::Close, Self::Medium, Self::Free];

    /// The word used in addresses and JSON: `close`.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Close => "close",
            Self::Medium => "medium",
            Self::Free => "free",
        }
    }

    /// The fit of an address word.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|fit| fit.slug() == slug)
    }
}

impl fmt::Display for Fit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.slug())
    }
}

/// What a clearance hole goes by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// A printed row, and which of its columns.
    Standard(&'static Holes, Fit),
    /// The stated rule, for threads no standard speaks of.
    Rule(Fit),
    /// The rule's medium hole on a small metric screw, where the standard's looks too large.
    Model,
}

/// The rule and the model hole have no published source.
const RULE: Source =
    Source::common_practice("clearance as a part of the major diameter, within limits");

impl Basis {
    /// Where the figure comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Standard(row, _) => row.source,
            Self::Rule(_) | Self::Model => RULE,
        }
    }
}

impl fmt::Display for Basis {
    /// The words a page puts beside the hole.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Standard(row, fit) => {
                let [close, medium, free] = row.standard.fit_words();
                let word = match fit {
                    Fit::Close => close,
                    Fit::Medium => medium,
                    Fit::Free => free,
                };
                write!(out, "{} {word}", row.standard)
            }
            Self::Rule(fit) => out.write_str(match fit {
                Fit::Close => "major diameter + 2 %, at least 0.05 and at most 0.2 mm",
                Fit::Medium => "major diameter + 4 %, at least 0.1 and at most 0.4 mm",
                Fit::Free => "major diameter + 8 %, at least 0.2 and at most 0.8 mm",
            }),
            Self::Model => out.write_str("for model work, major diameter + 4 %, at least 0.1 mm"),
        }
    }
}

/// The size of a clearance hole, before a drill is chosen for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceHole {
    /// The hole.
    pub hole: Length,
    /// What it goes by.
    pub basis: Basis,
}

/// Largest metric screw that gets a model hole beside the standard's.
const MODEL_LIMIT: Length = mm(5.0);

/// The clearance hole for a screw.
///
/// # Units
/// `major` is the thread's major diameter, from its geometry.
///
/// # Source
/// ISO 273 for metric coarse and fine, ASME B18.2.8 for Unified; elsewhere the stated rule
/// (common practice, no source).
///
/// # Examples
/// 5 BA has no standard: 3.264 close, 3.328 medium.
/// ```
/// use holewright_core::{calc::clearance::{hole, Fit}, tables::threads::find, units::{mm, print}};
/// let five = find("ba", "5").unwrap();
/// assert_eq!(print::mm(hole(five, mm(3.2), Fit::Close).hole, 3), "3.264 mm");
/// assert_eq!(print::mm(hole(five, mm(3.2), Fit::Medium).hole, 3), "3.328 mm");
/// ```
#[must_use]
pub fn hole(thread: &Thread, major: Length, fit: Fit) -> ClearanceHole {
    match ruling(thread) {
        Some(row) => {
            let size = match fit {
                Fit::Close => row.close,
                Fit::Medium => row.medium,
                Fit::Free => row.free,
            };
            ClearanceHole { hole: size.length(), basis: Basis::Standard(row, fit) }
        }
        None => hole_by_rule(major, fit),
    }
}

/// The clearance hole by the stated rule, for a screw no standard speaks of.
///
/// # Units
/// `major` is the screw's diameter over its thread.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::clearance::{hole_by_rule, Fit}, units::{mm, print}};
/// assert_eq!(print::mm(hole_by_rule(mm(3.2), Fit::Medium).hole, 3), "3.328 mm");
/// ```
#[must_use]
pub fn hole_by_rule(major: Length, fit: Fit) -> ClearanceHole {
    ClearanceHole { hole: major + rule(major, fit), basis: Basis::Rule(fit) }
}

/// The row in print that rules for this thread; none where the stated rule does.
#[must_use]
pub fn ruling(thread: &Thread) -> Option<&'static Holes> {
    clearance::printed_for(thread).find(|row| rules(row))
}

/// The other rows in print for this thread, to be shown beside the one that rules.
#[must_use = "the rows are only looked up when the iterator is used"]
pub fn also_printed(thread: &Thread) -> impl Iterator<Item = &'static Holes> {
    clearance::printed_for(thread).filter(|row| !rules(row))
}

/// A smaller hole for metric screws up to 5 mm, which suits small heads better.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ISO 273 gives M2.5 2.9 mm; model engineers drill 2.6.
/// ```
/// use holewright_core::calc::clearance::model_hole;
/// use holewright_core::{tables::threads::SystemId, units::{mm, print}};
/// let small = model_hole(SystemId::Metric, mm(2.5)).unwrap();
/// assert_eq!(print::mm(small.hole, 2), "2.6 mm");
/// assert_eq!(model_hole(SystemId::Metric, mm(8.0)), None);
/// assert_eq!(model_hole(SystemId::Ba, mm(3.2)), None);
/// ```
#[must_use]
pub fn model_hole(system: SystemId, major: Length) -> Option<ClearanceHole> {
    let metric = system.system().clearance == ClearanceFamily::Metric;
    (metric && major < MODEL_LIMIT + SAME_SIZE)
        .then(|| ClearanceHole { hole: major + rule(major, Fit::Medium), basis: Basis::Model })
}

/// Which drill [`drill_for`] takes.
pub const DRILL_TAKEN: Source = Source::common_practice(
    "the drill is the smallest at hand that is not smaller than the hole, within 1/64 in of it or a tenth of it",
);

/// Most that a clearance drill may pass its hole by: the step of the drills in sixty-fourths of an inch, or
/// a tenth of the hole where that is more. Beyond it the head has too little to bear on.
fn most_over(hole: Length) -> Length {
    let step = inch(1.0 / 64.0) + SAME_SIZE;
    if hole / 10.0 > step { hole / 10.0 } else { step }
}

/// The smallest drill at hand that is not smaller than the hole, if one comes near enough: within 1/64 in,
/// or a tenth of the hole where that is more.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// 5 BA medium, number and metric drills: 3.4 mm. No. 44, which one list has for 8 BA, is below
/// that screw's own 2.20 mm and is never taken.
/// ```
/// use holewright_core::calc::clearance::{drill_for, hole, Fit};
/// use holewright_core::{tables::{drills::{by_series, find, Series}, threads}, units::mm};
/// let five = threads::find("ba", "5").unwrap();
/// let at_hand = by_series(Series::Number).chain(by_series(Series::Metric));
/// let medium = hole(five, mm(3.2), Fit::Medium).hole;
/// assert_eq!(drill_for(medium, at_hand).unwrap().label, "3.4 mm");
/// assert_eq!(drill_for(mm(2.2), find(Series::Number, "44").into_iter()), None);
/// // An M6 screw of medium fit (6.6 mm) would fall about in 27/64 in, and its head with it.
/// assert_eq!(drill_for(mm(6.6), find(Series::Fraction, "27-64").into_iter()), None);
/// ```
#[must_use]
pub fn drill_for(
    hole: Length,
    at_hand: impl Iterator<Item = &'static Drill>,
) -> Option<&'static Drill> {
    at_hand
        .filter(|drill| drill.diameter > hole - SAME_SIZE)
        .filter(|drill| drill.diameter <= hole + most_over(hole))
        .min_by(|a, b| in_mm(a.diameter).total_cmp(&in_mm(b.diameter)))
}

/// The drill for the medium fit out of every drill; none for a taper thread, which passes through
/// nothing.
///
/// # Examples
/// ```
/// use holewright_core::{calc::clearance::medium_drill, tables::threads::find};
/// let drill = |system, size| medium_drill(find(system, size).unwrap());
/// assert_eq!(drill("metric", "m3").unwrap().label, "3.4 mm");
/// assert_eq!(drill("npt", "1-8"), None);
/// ```
#[must_use]
pub fn medium_drill(thread: &'static Thread) -> Option<&'static Drill> {
    let major = geometry(thread).major;
    let clears = thread.taper.is_none().then(|| hole(thread, major, Fit::Medium))?;
    drill_for(clears.hole, drills::all().iter())
}

/// How far a screw can shift in its hole, on diameter. Negative: it does not go in.
///
/// # Source
/// ASME Y14.5 appendix B, floating fastener: H = F + T.
///
/// # Examples
/// Two coaxial features, 20 on 19.95 and 10 on 9.95 mm, leave 0.1 mm in all
/// (ANSI Y14.5M appendix B).
/// ```
/// use holewright_core::{calc::clearance::float, units::{mm, print}};
/// let total = float(mm(20.0), mm(19.95)) + float(mm(10.0), mm(9.95));
/// assert_eq!(print::mm(total, 4), "0.1 mm");
/// ```
/// A 3.5 mm screw in 3.94 mm floats 0.44 (the same appendix, from memory: unconfirmed).
/// ```
/// # use holewright_core::{calc::clearance::float, units::{mm, print}};
/// assert_eq!(print::mm(float(mm(3.94), mm(3.5)), 4), "0.44 mm");
/// ```
#[must_use]
pub fn float(hole: Length, screw: Length) -> Length {
    hole - screw
}

/// The hole that lets a screw into a tapped lower part when both centres may be off.
///
/// # Units
/// The errors are radial: how far each centre may lie from where it should. A positional tolerance
/// on diameter is twice that.
///
/// # Source
/// ASME Y14.5 appendix B, fixed fastener: H = F + T1 + T2.
///
/// # Examples
/// With no error allowed the hole is the screw (tip 110 on ASME Y14.5M-1994).
/// ```
/// use holewright_core::{calc::clearance::hole_for_errors, units::{mm, print}};
/// let none = mm(0.0);
/// assert_eq!(print::mm(hole_for_errors(mm(10.1), none, none), 4), "10.1 mm");
/// ```
/// A 3.5 mm screw and 0.22 mm on diameter in each part want 3.94 (from memory: unconfirmed).
/// ```
/// # use holewright_core::{calc::clearance::hole_for_errors, units::{mm, print}};
/// assert_eq!(print::mm(hole_for_errors(mm(3.5), mm(0.11), mm(0.11)), 4), "3.94 mm");
/// ```
#[must_use]
pub fn hole_for_errors(screw: Length, upper: Length, lower: Length) -> Length {
    screw + (upper + lower) * 2.0
}

/// Whether a row is the one to go by.
const fn rules(row: &Holes) -> bool {
    matches!(row.standard, Standard::Iso273 | Standard::AsmeB1828)
}

/// The stated rule: a part of the major diameter, held within limits.
fn rule(major: Length, fit: Fit) -> Length {
    let (part, least, most) = match fit {
        Fit::Close => (0.02, 0.05, 0.2),
        Fit::Medium => (0.04, 0.1, 0.4),
        Fit::Free => (0.08, 0.2, 0.8),
    };
    mm((in_mm(major) * part).clamp(least, most))
}
