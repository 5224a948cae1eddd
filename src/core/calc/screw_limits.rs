//! The smallest screw and the slackest nut that the standard of a thread allows: what strength is reckoned
//! at.
//!
//! Where no limits are held, the basic sizes stand for them, and that is said.

use crate::calc::thread_form::Geometry;
use crate::tables::screw_limits::{effective_limit, major_limit};
use crate::tables::source::Source;
use crate::tables::threads::{Form, SizeLimit, SystemId, Thread};
use crate::units::{Length, in_inch, in_mm, inch, mm, print};

/// The sizes of a pair that has the least of both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastPair {
    /// Least major diameter of the screw.
    pub screw_major: Length,
    /// Least effective diameter of the screw.
    pub screw_effective: Length,
    /// Largest effective diameter of the nut.
    pub nut_effective: Length,
    /// The class or standard in words: `a 6g screw in a 6H nut`.
    pub words: &'static str,
    /// The sizes are the basic ones, since no limits are held.
    pub is_basic: bool,
    /// Where they come from.
    pub source: Source,
}

const BS_93: Source = Source::published(
    "BS 93:1951, normal class, as printed in Machinery's Handbook 31st ed. p. 2115",
);
const ASME_B1_1: Source = Source::library("ASME B1.1, tolerance formulas of classes 2A and 2B");
const BASIC: Source = Source::common_practice(
    "no limits of the screw are held for this thread, so its basic sizes are taken: a worn or a loose one bears less",
);

/// The least pair of a thread.
///
/// # Source
/// Metric: 6g and 6H of ISO 965-1. Unified: 2A and 2B of ASME B1.1. BA: the normal class of BS 93, 0 to
/// 16. Others: basic sizes.
///
/// # Examples
/// M10: 9.732, 8.862 and 9.206 mm, the figures of a published strip area.
/// ```
/// use holewright_core::calc::{screw_limits::least_pair, thread_form::geometry};
/// use holewright_core::{tables::threads::find, units::print};
/// let ten = find("metric", "m10").unwrap();
/// let pair = least_pair(ten, &geometry(ten));
/// let sizes = [pair.screw_major, pair.screw_effective, pair.nut_effective];
/// assert_eq!(sizes.map(|size| print::mm(size, 3)), ["9.732 mm", "8.862 mm", "9.206 mm"]);
/// ```
#[must_use]
pub fn least_pair(thread: &Thread, geometry: &Geometry) -> LeastPair {
    let held = match (thread.form(), thread.system.system().largest_hole) {
        (Form::IsoMetric, _) => metric(geometry),
        (Form::Unified, _) => Some(unified(thread, geometry)),
        (_, SizeLimit::Bs93) => bs_93(thread, geometry),
        _ => None,
    };
    held.unwrap_or_else(|| basic(geometry))
}

fn basic(geometry: &Geometry) -> LeastPair {
    LeastPair {
        screw_major: geometry.major,
        screw_effective: geometry.effective,
        nut_effective: geometry.effective,
        words: "a screw and a nut of basic size",
        is_basic: true,
        source: BASIC,
    }
}

fn metric(geometry: &Geometry) -> Option<LeastPair> {
    let major = major_limit(geometry.pitch)?;
    let effective = effective_limit(geometry.major, geometry.pitch)?;
    let surer =
        if major.source.grade > effective.source.grade { major.source } else { effective.source };
    Some(LeastPair {
        screw_major: to_micrometre(geometry.major - major.allowance - major.tolerance),
        screw_effective: to_micrometre(geometry.effective - major.allowance - effective.screw),
        nut_effective: to_micrometre(geometry.effective + effective.nut),
        words: "a 6g screw in a 6H nut",
        is_basic: false,
        source: surer,
    })
}

/// The last BA size whose screw has the closer tolerance of its major diameter.
const BA_LARGER: u8 = 10;
/// The last BA size of BS 93.
const BA_LAST: u8 = 16;

fn bs_93(thread: &Thread, geometry: &Geometry) -> Option<LeastPair> {
    const ALLOWANCE: f64 = 0.025;
    let number: u8 = thread.size.parse().ok().filter(|number| *number <= BA_LAST)?;
    // The allowance is printed for 0 to 10 BA alone.
    let (major, allowance) = if number <= BA_LARGER { (0.20, ALLOWANCE) } else { (0.25, 0.0) };
    let pitch = in_mm(geometry.pitch);
    Some(LeastPair {
        screw_major: to_micrometre(geometry.major - mm(major * pitch + allowance)),
        screw_effective: to_micrometre(geometry.effective - mm(0.10 * pitch + 0.025 + allowance)),
        nut_effective: to_micrometre(geometry.effective + mm(0.12 * pitch + 0.03)),
        words: "a screw and a nut of BS 93, normal class",
        is_basic: false,
        source: BS_93,
    })
}

/// Classes 2A and 2B, for a length of one diameter, or of nine pitches in the special series.
///
/// The screw's effective tolerance is 0.0015 (∛D + √L + 10 ∛P²), its allowance three tenths of that, its
/// major tolerance 0.060 ∛P²; the nut's effective tolerance is 1.3 times the screw's. Inches; the
/// tolerance is rounded to six places, each limit to four.
fn unified(thread: &Thread, geometry: &Geometry) -> LeastPair {
    let (major, pitch) = (in_inch(geometry.major), 1.0 / geometry.threads_per_inch);
    let length = if thread.system == SystemId::Uns { 9.0 * pitch } else { major };
    let fine = libm::cbrt(pitch * pitch);
    let screw = print::round(0.0015 * (libm::cbrt(major) + length.sqrt() + 10.0 * fine), 6);
    let places = |value: f64| print::round(value, 4);
    let effective = in_inch(geometry.effective);
    let largest_major = places(major - places(0.3 * screw));
    let largest_effective = places(effective - places(0.3 * screw));
    LeastPair {
        screw_major: inch(places(largest_major - 0.060 * fine)),
        screw_effective: inch(places(largest_effective - screw)),
        nut_effective: inch(places(effective + 1.3 * screw)),
        words: "a 2A screw in a 2B nut",
        is_basic: false,
        source: ASME_B1_1,
    }
}

fn to_micrometre(length: Length) -> Length {
    mm(print::round(in_mm(length), 3))
}
