//! The angles countersinks are made to, and which screws want which, as the sources print them.

use crate::tables::source::Source;
use crate::tables::threads::{HeadFamily, Thread};
use crate::units::{Angle, degrees};

/// An angle countersinks are made to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Countersink {
    /// The included angle, in whole degrees.
    pub angle_degrees: u8,
    /// What it is for.
    pub used_for: &'static str,
    /// Where it was read.
    pub source: Source,
}

/// Which screws of a thread want which angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadAngle {
    /// The included angle.
    pub angle: Angle,
    /// Where it comes from.
    pub source: Source,
}

const SOMTA: Source = Source::published("a drill maker's user guide, p. 34");
const METALWORKING: Source = Source::published("a metalworking textbook, Countersinks");
const MEMORY: Source = Source::memory("recalled, no source read");
const BRITISH: Source = Source::common_practice("90° heads on BA and British screws");

#[rustfmt::skip]
static COUNTERSINKS: [Countersink; 5] = [
    Countersink { angle_degrees: 60, used_for: "centre holes", source: SOMTA },
    Countersink { angle_degrees: 82, used_for: "unified inch countersunk screws", source: METALWORKING },
    Countersink { angle_degrees: 90, used_for: "ISO metric countersunk screws; general", source: SOMTA },
    Countersink { angle_degrees: 100, used_for: "aircraft", source: METALWORKING },
    Countersink { angle_degrees: 120, used_for: "soft metals, a protecting rim", source: MEMORY },
];

/// Every angle held, sharpest first.
#[must_use]
pub fn all() -> &'static [Countersink] {
    &COUNTERSINKS
}

/// The angle of a countersunk head on a screw of this thread; 90° for a head whose screw is not known.
///
/// # Examples
/// ```
/// use holewright_core::{tables::{countersinks::head_angle, threads::find}, units::degrees};
/// assert_eq!(head_angle(find("unc", "4-40")).angle, degrees(82.0));
/// assert_eq!(head_angle(find("metric", "m3")).angle, degrees(90.0));
/// assert_eq!(head_angle(find("ba", "4")).angle, degrees(90.0));
/// ```
#[must_use]
pub fn head_angle(thread: Option<&Thread>) -> HeadAngle {
    let of = |angle, source| HeadAngle { angle: degrees(angle), source };
    match thread.map(|thread| thread.system.system().heads) {
        Some(HeadFamily::Unified) => of(82.0, METALWORKING),
        Some(HeadFamily::Metric) | None => of(90.0, SOMTA),
        Some(HeadFamily::British) => of(90.0, BRITISH),
    }
}
