//! The standard's largest hole: the nut's minor diameter at its upper limit.
//!
//! Leaves out the limits of effective and major diameters, and every thread for which no rule is held:
//! Löwenherz, S, the BA sizes beyond BS 93, the American sizes below No. 0, and taper threads.

use crate::calc::thread_form::Geometry;
use crate::tables::source::Grade;
use crate::tables::threads::{Form, FormLimit, SizeLimit, Thread};
use crate::tables::tolerances::{self, MinorTolerance};
use crate::units::{Length, exceeds, falls_short, in_inch, in_mm, inch, mm, print};

/// The largest minor diameter the standard allows the nut, and whose limit it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LargestHole {
    /// The limit.
    pub diameter: Length,
    /// The standard as pages name it: "BS 93", "6H", "2B".
    pub standard: &'static str,
    /// How far the rule can be trusted.
    pub grade: Grade,
}

impl LargestHole {
    /// The standard's name, with how far its figure can be trusted where it was not read there.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::{calc::limits::largest_hole, calc::thread_form::geometry, tables::threads::find};
    /// let named = |system, size| {
    ///     let thread = find(system, size).unwrap();
    ///     largest_hole(thread, &geometry(thread)).unwrap().named()
    /// };
    /// assert_eq!(named("ba", "5"), "BS 93");
    /// assert_eq!(named("bsw", "1-4"), "BS 84, second-hand");
    /// ```
    #[must_use]
    pub fn named(&self) -> String {
        match self.grade {
            Grade::SecondHand | Grade::Memory => format!("{}, {}", self.standard, self.grade),
            _ => self.standard.to_owned(),
        }
    }

    /// Whether a hole keeps to it.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::{calc::limits::LargestHole, tables::source::Grade, units::mm};
    /// let six_h = LargestHole { diameter: mm(2.599), standard: "6H", grade: Grade::Published };
    /// assert!(six_h.admits(mm(2.599)) && !six_h.admits(mm(2.6)));
    /// ```
    #[must_use]
    pub fn admits(&self, hole: Length) -> bool {
        !exceeds(hole, self.diameter)
    }
}

/// The last BA size of BS 93.
const BS_93_LAST: u8 = 16;
/// BS 93 allows the nut's minor diameter 0.375 p more.
const BS_93_TOLERANCE: f64 = 0.375;

/// The largest hole of a thread, where we hold its standard's figure.
///
/// # Source
/// BA: minor + 0.375 p (BS 93). Metric: minor + TD1 of ISO 965-1, class 6H, or 5H and 4H where no 6H
/// is printed. G: ISO 228-1. UNM: ASME B1.10M. Unified: class 2B, see [`unified_2b`]. Metric and BA
/// limits are rounded to 0.001 mm. BSW, BSF, and by its rule brass, Model Engineer and cycle: BS 84, see
/// [`bs_84`].
///
/// # Examples
/// 5 BA 2.711 mm; M3 2.599 mm (Yamawa's 6H chart); 4-40 UNC 0.0939 in (Machinery's Handbook 31st ed.
/// p. 2155).
/// ```
/// use holewright_core::calc::{limits::largest_hole, thread_form::geometry};
/// use holewright_core::tables::threads::find;
/// use holewright_core::units::print;
/// let limit = |system, size| {
///     let thread = find(system, size).unwrap();
///     largest_hole(thread, &geometry(thread)).map(|limit| (limit.diameter, limit.standard))
/// };
/// let (hole, standard) = limit("ba", "5").unwrap();
/// assert_eq!((print::mm(hole, 3).as_str(), standard), ("2.711 mm", "BS 93"));
/// let (hole, standard) = limit("metric", "m3").unwrap();
/// assert_eq!((print::mm(hole, 3).as_str(), standard), ("2.599 mm", "6H"));
/// let (hole, standard) = limit("unc", "4-40").unwrap();
/// assert_eq!((print::inch(hole, 4).as_str(), standard), ("0.0939 in", "2B"));
/// let (hole, standard) = limit("bsw", "1-4").unwrap();
/// assert_eq!((print::inch(hole, 4).as_str(), standard), ("0.2030 in", "BS 84"));
/// assert_eq!(limit("ba", "17"), None);
/// ```
#[must_use]
pub fn largest_hole(thread: &Thread, geometry: &Geometry) -> Option<LargestHole> {
    match thread.system.system().largest_hole {
        SizeLimit::Bs93 => bs_93(thread, geometry),
        SizeLimit::Bs84 => Some(bs_84(geometry, "BS 84")),
        SizeLimit::LikeBs84 => Some(bs_84(geometry, LIKE_BS_84)),
        SizeLimit::Iso228 => tolerances::iso_228(geometry.pitch).map(|row| printed(geometry, row)),
        SizeLimit::OfForm => largest_hole_of(thread.form(), geometry),
    }
}

/// The largest hole of a thread no table holds, where its form's standard gives a rule for any
/// diameter.
///
/// # Source
/// ISO metric: TD1 of ISO 965-1, which goes by the pitch alone. Unified: class 2B, see [`unified_2b`].
/// Whitworth: [`bs_84`]. BS 93 gives its limit for the sizes it names and no others.
///
/// # Examples
/// 19/64 in, 36 threads an inch: 0.273 in (the worked example of Machinery's Handbook 31st ed.
/// p. 2022, table 6).
/// ```
/// use holewright_core::calc::{limits::largest_hole_of, thread_form::geometry_of};
/// use holewright_core::{tables::threads::Form, units::{Pitch, inch, mm, print}};
/// let special = geometry_of(Form::Unified, inch(0.2969), Pitch::PerInch(36.0));
/// let limit = largest_hole_of(Form::Unified, &special).unwrap();
/// assert_eq!((print::inch(limit.diameter, 3).as_str(), limit.standard), ("0.273 in", "2B"));
/// let ba = geometry_of(Form::BritishAssociation, mm(3.2), Pitch::Mm(0.59));
/// assert_eq!(largest_hole_of(Form::BritishAssociation, &ba), None);
/// ```
#[must_use]
pub fn largest_hole_of(form: Form, geometry: &Geometry) -> Option<LargestHole> {
    match form.shape().largest_hole {
        FormLimit::Iso965 => tolerances::iso_965(geometry.pitch).map(|row| printed(geometry, row)),
        FormLimit::LikeBs84 => Some(bs_84(geometry, LIKE_BS_84)),
        FormLimit::AsmeB11 => Some(LargestHole {
            diameter: unified_2b(geometry),
            standard: "2B",
            grade: Grade::Published,
        }),
        FormLimit::AsmeB110 => {
            tolerances::unified_miniature(geometry.pitch).map(|row| printed(geometry, row))
        }
        FormLimit::NotHeld => None,
    }
}

/// The smallest hole that leaves the nut its full thread: the basic minor diameter of the nut.
///
/// Every standard held here lets the nut's minor diameter be larger, never smaller.
#[must_use]
pub const fn smallest_hole(geometry: &Geometry) -> Length {
    geometry.minor_internal
}

/// Whether a hole is below [`smallest_hole`]: the tap then cuts with the root of its thread.
#[must_use]
pub fn is_below_smallest(geometry: &Geometry, hole: Length) -> bool {
    falls_short(hole, smallest_hole(geometry))
}

/// The nut's largest minor diameter for class 2B.
///
/// The tolerance is 0.25 P − 0.4 P² from 1/4 in up. Below it is 0.05 ∛P² + 0.03 P/D − 0.002 (inches),
/// but never less than 0.25 P − 0.4 P² nor more than 0.394 P. Tolerance and least minor diameter are
/// rounded to four places and added; from No. 6 (0.138 in) up the sum is rounded to three places,
/// a half to the even figure. That reproduces every catalogue and handbook row held but three: one
/// catalogue's 0.0752 in for 2-64 (the others print 0.0753), the footnoted limits of 4-36, and
/// 10-36, whose published 0.166 follows from the tolerance of the larger sizes. One library has
/// 0.155 for 10-24, where every catalogue has 0.156.
///
/// # Source
/// ASME B1.1 formulas; the steps of the worked example in Machinery's Handbook 31st ed. p. 2022,
/// table 6.
#[must_use]
pub fn unified_2b(geometry: &Geometry) -> Length {
    let major = in_inch(geometry.major);
    let pitch = 1.0 / geometry.threads_per_inch;
    let large = 0.25 * pitch - 0.4 * pitch * pitch;
    let tolerance = if major < QUARTER_INCH - HAIR {
        let small = 0.05 * libm::cbrt(pitch * pitch) + 0.03 * pitch / major - 0.002;
        small.min(0.394 * pitch).max(large)
    } else {
        large
    };
    let least = in_inch(geometry.minor_internal);
    // Whole ten-thousandths, so that a half is a half and not binary noise.
    let sum = print::round(least * 1e4, 0) + print::round(tolerance * 1e4, 0);
    if major < NUMBER_SIX - HAIR {
        inch(sum / 1e4)
    } else {
        inch((sum / 10.0).round_ties_even() / 1e3)
    }
}

/// Where the tolerance formula changes, in inches.
const QUARTER_INCH: f64 = 0.25;
/// Where the rounding changes, in inches.
const NUMBER_SIX: f64 = 0.138;
/// Less than any difference between two sizes, more than binary noise, in inches.
const HAIR: f64 = 1e-6;

fn bs_93(thread: &Thread, geometry: &Geometry) -> Option<LargestHole> {
    let number: u8 = thread.size.parse().ok()?;
    (number <= BS_93_LAST).then(|| LargestHole {
        diameter: to_micrometre(geometry.minor_internal + geometry.pitch * BS_93_TOLERANCE),
        standard: "BS 93",
        grade: Grade::Published,
    })
}

/// How pages name the rule of BS 84 where the standard does not name the thread.
const LIKE_BS_84: &str = "the rule of BS 84";

/// The nut's largest minor diameter by the rule of BS 84.
///
/// The least is 0.2 p larger, and 0.004 in more from 26 threads an inch up, 0.005 in from 22, and
/// 0.007 in for coarser threads; the sum is rounded to four places of an inch. Every one of the twenty
/// drills of BS 1157 held keeps to it, which a constant 0.004 in does not.
///
/// # Source
/// A public restatement of BS 84:2007 and of Machinery's Handbook, tolerance formulas for BSW and BSF
/// threads: second-hand. That brass, Model Engineer and cycle threads go by it is common practice.
#[must_use]
pub fn bs_84(geometry: &Geometry, standard: &'static str) -> LargestHole {
    let tpi = geometry.threads_per_inch;
    let constant = if tpi > 26.0 - HAIR {
        0.004
    } else if tpi > 22.0 - HAIR {
        0.005
    } else {
        0.007
    };
    let largest = in_inch(geometry.minor_internal) + 0.2 / tpi + constant;
    LargestHole { diameter: inch(print::round(largest, 4)), standard, grade: Grade::SecondHand }
}

fn printed(geometry: &Geometry, row: &MinorTolerance) -> LargestHole {
    LargestHole {
        diameter: to_micrometre(geometry.minor_internal + row.tolerance),
        standard: row.class,
        grade: row.source.grade,
    }
}

fn to_micrometre(length: Length) -> Length {
    mm(print::round(in_mm(length), 3))
}
