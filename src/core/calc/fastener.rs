//! What goes with a screw and its head: the room they take, the spanner, and how the screw is cut.
//!
//! The rows that sources print are in [`crate::tables::fasteners`]; tapping, clearance and countersinks
//! have their own rules here in `calc`.

use crate::calc::clearance::{Fit, hole_by_rule};
use crate::calc::thread_form::{Geometry, geometry};
use crate::tables::fasteners::{self, BA_RULE, Hexagon, HexagonPattern};
use crate::tables::source::{Grade, Source};
use crate::tables::threads::{HexagonFamily, Thread};
use crate::units::{Length, Printed, in_mm, print};

/// Where the corners of a hexagon of this width lie, sharp: 2/√3 of across flats.
///
/// # Source
/// Geometry. A made hexagon is chamfered and measures a little less.
///
/// # Examples
/// BS 1083 prints 0.51 in for 0.445 in across flats, and 0.95 for 0.820.
/// ```
/// use holewright_core::{calc::fastener::across_corners, units::{inch, print}};
/// assert_eq!(print::inch(across_corners(inch(0.445)), 2), "0.51 in");
/// assert_eq!(print::inch(across_corners(inch(0.820)), 2), "0.95 in");
/// ```
#[must_use]
pub fn across_corners(across_flats: Length) -> Length {
    across_flats * (2.0 / libm::sqrt(3.0))
}

/// Across flats of the BA hexagon: 1¾ times the major diameter.
///
/// # Source
/// An encyclopedia, British Association screw threads; a maker of spanners gives 10.5 mm for 0 BA.
///
/// # Examples
/// ```
/// use holewright_core::{calc::fastener::ba_across_flats, units::mm};
/// assert_eq!(ba_across_flats(mm(6.0)), mm(10.5));
/// ```
#[must_use]
pub fn ba_across_flats(major: Length) -> Length {
    major * 1.75
}

/// The bore or the spotface that lets a head in: the head by the rule of the free clearance hole.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::fastener::room_for, units::{mm, print}};
/// assert_eq!(print::mm(room_for(mm(5.5)), 3), "5.94 mm");
/// ```
#[must_use]
pub fn room_for(head: Length) -> Length {
    hole_by_rule(head, Fit::Free).hole
}

/// Where [`room_for`] comes from.
pub const ROOM: Source =
    Source::common_practice("8 % over what has to go in, at least 0.2 and at most 0.8 mm");

/// The least from the middle of a hole to the edge: 1½ times the screw, and no less than half of what
/// bears on the face.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::fastener::least_edge, units::mm};
/// assert_eq!(least_edge(mm(4.0), mm(8.0)), mm(6.0));
/// assert_eq!(least_edge(mm(4.0), mm(16.0)), mm(8.0));
/// ```
#[must_use]
pub fn least_edge(major: Length, bearing: Length) -> Length {
    let (by_screw, by_head) = (major * 1.5, bearing / 2.0);
    if by_screw > by_head { by_screw } else { by_head }
}

/// Where [`least_edge`] comes from.
pub const EDGE: Source = Source::common_practice(
    "1½ times the screw’s diameter from the middle of the hole, and room for what bears",
);

/// The blank for a die: the major diameter less 0.15 of the pitch, since the metal swells into the die.
///
/// # Source
/// Common practice, no source; the ranges of one table, second-hand, hold it.
///
/// # Examples
/// That table has 2.89 to 2.94 mm for M3, and 2.43 to 2.45 for M2.5.
/// ```
/// use holewright_core::{calc::fastener::die_blank, units::{mm, print}};
/// assert_eq!(print::mm(die_blank(mm(3.0), mm(0.5)), 3), "2.925 mm");
/// assert_eq!(print::mm(die_blank(mm(2.5), mm(0.45)), 3), "2.433 mm");
/// ```
#[must_use]
pub fn die_blank(major: Length, pitch: Length) -> Length {
    major - pitch * 0.15
}

/// Where [`die_blank`] comes from.
pub const BLANK: Source =
    Source::common_practice("a blank a little under the screw, 0.15 of the pitch on diameter");

/// How deep a single-point tool of the form's own shape goes in, on one side: from the major diameter to
/// the screw's minor diameter.
///
/// # Source
/// The minor diameter of the form's standard; an insert maker's depths of 0.61, 0.77 and 0.92 mm for
/// pitches of 1, 1.25 and 1.5 mm come out.
///
/// # Examples
/// ```
/// use holewright_core::calc::{fastener::single_point_depth, thread_form::geometry};
/// use holewright_core::{tables::threads::find, units::print};
/// let depth = |system, size| single_point_depth(&geometry(find(system, size).unwrap()));
/// assert_eq!(print::mm(depth("metric", "m6"), 2), "0.61 mm");
/// assert_eq!(print::mm(depth("metric", "m8"), 2), "0.77 mm");
/// assert_eq!(print::mm(depth("metric", "m10"), 2), "0.92 mm");
/// assert_eq!(print::mm(depth("ba", "5"), 3), "0.355 mm");
/// ```
#[must_use]
pub fn single_point_depth(geometry: &Geometry) -> Length {
    (geometry.major - geometry.minor) / 2.0
}

/// Which hexagon is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HexagonOf {
    /// The usual one.
    Usual,
    /// That of the next smaller screw, as on models.
    OneSmaller,
    /// The older one, where a standard changed it.
    Older,
}

/// A hexagon: its size, whose it is, and the spanner.
#[derive(Clone, Debug, PartialEq)]
pub struct ScrewHexagon {
    /// Across flats.
    pub across_flats: Length,
    /// Height of the bolt's head, where it is held.
    pub head: Option<Length>,
    /// Thickness of the nut, where it is held.
    pub nut: Option<Length>,
    /// Whose it is, in words.
    pub named: String,
    /// Where across flats comes from.
    pub source: Source,
    /// The BA screw whose it is; none of other hexagons.
    pub screw: Option<&'static Thread>,
    /// The row it is read in; none of a BA hexagon.
    pub row: Option<&'static Hexagon>,
}

/// Where the hexagon one size smaller comes from.
pub const ONE_SMALLER: Source =
    Source::common_practice("on models a hexagon one size smaller looks right");

/// The hexagon of a screw; none where none is held.
///
/// # Source
/// BA by rule, BS 1083:1965, ISO 4014 and 4032, ASME B18.2.1; one size smaller is common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::calc::fastener::{hexagon, HexagonOf};
/// use holewright_core::{tables::threads::find, units::{mm, print}};
/// let flats = |system, size, of| hexagon(find(system, size).unwrap(), of).map(|it| print::mm(it.across_flats, 3));
/// assert_eq!(flats("ba", "4", HexagonOf::Usual).unwrap(), "6.3 mm");
/// assert_eq!(flats("ba", "4", HexagonOf::OneSmaller).unwrap(), "5.6 mm");
/// assert_eq!(flats("metric", "m10", HexagonOf::Older).unwrap(), "17 mm");
/// assert_eq!(flats("me-40", "1-8", HexagonOf::Usual), None);
/// assert_eq!(flats("unc", "1-4-20", HexagonOf::Older), None);
/// assert_eq!(flats("metric", "m36", HexagonOf::OneSmaller), None);
/// ```
#[must_use]
pub fn hexagon(thread: &'static Thread, of: HexagonOf) -> Option<ScrewHexagon> {
    match of {
        HexagonOf::Usual => usual(thread),
        HexagonOf::OneSmaller => {
            let smaller = match usual(thread)?.row {
                Some(row) => one_smaller(row)?,
                None => usual(next_smaller(thread)?)?,
            };
            let grade = smaller.source.grade.max(Grade::CommonPractice);
            Some(ScrewHexagon { source: Source { grade, ..ONE_SMALLER }, ..smaller })
        }
        HexagonOf::Older => {
            let older = match thread.system.system().hexagons {
                HexagonFamily::Bs1083 => HexagonPattern::OldWhitworth,
                HexagonFamily::Iso => HexagonPattern::OldMetric,
                // No standard changed these.
                HexagonFamily::BritishAssociation
                | HexagonFamily::Unified
                | HexagonFamily::NotHeld => return None,
            };
            usual(thread)?;
            fasteners::hexagon(older, thread).map(of_row)
        }
    }
}

fn usual(thread: &'static Thread) -> Option<ScrewHexagon> {
    let row = |pattern| fasteners::hexagon(pattern, thread).map(of_row);
    match thread.system.system().hexagons {
        HexagonFamily::BritishAssociation => Some(ScrewHexagon {
            across_flats: ba_across_flats(geometry(thread).major),
            head: None,
            nut: None,
            named: format!("{}, 1¾ times the major diameter", thread.designation),
            source: BA_RULE,
            screw: Some(thread),
            row: None,
        }),
        HexagonFamily::Bs1083 => row(HexagonPattern::Bs1083),
        HexagonFamily::Iso => row(HexagonPattern::Iso),
        HexagonFamily::Unified => {
            row(HexagonPattern::UnifiedBolt).or_else(|| row(HexagonPattern::UnifiedSmall))
        }
        HexagonFamily::NotHeld => None,
    }
}

fn of_row(row: &'static Hexagon) -> ScrewHexagon {
    ScrewHexagon {
        across_flats: row.across_flats.length(),
        head: row.head.map(|size| size.length()),
        nut: row.nut.map(|size| size.length()),
        named: format!("{}, {}", nominal_name(row.nominal), row.pattern),
        source: row.source,
        screw: None,
        row: Some(row),
    }
}

/// A nominal size as it is named: `M6`, `1/4 in`; a numbered Unified screw by its number.
///
/// # Examples
/// ```
/// use holewright_core::{calc::fastener::nominal_name, units::Printed};
/// assert_eq!(nominal_name(Printed::Inch(0.112)), "No. 4");
/// assert_eq!(nominal_name(Printed::fraction(1, 4)), "1/4 in");
/// ```
#[must_use]
pub fn nominal_name(size: Printed) -> String {
    match size {
        Printed::Mm(value) => format!("M{value}"),
        // Screw number n is 0.060 in and 0.013 in for each n.
        Printed::Inch(value) => format!("No. {}", print::trimmed((value - 0.060) / 0.013, 0)),
        Printed::Fraction(fraction) => format!("{fraction} in"),
    }
}

/// The hexagon of the next smaller screw in a row's own table.
fn one_smaller(row: &Hexagon) -> Option<ScrewHexagon> {
    let size = |row: &Hexagon| in_mm(row.nominal.length());
    let smaller =
        fasteners::hexagons().filter(|one| one.pattern == row.pattern && size(one) < size(row));
    smaller.max_by(|a, b| size(a).total_cmp(&size(b))).map(of_row)
}

/// The next smaller screw of the same system.
fn next_smaller(thread: &'static Thread) -> Option<&'static Thread> {
    let size = |one: &Thread| in_mm(geometry(one).major);
    let smaller = thread.system.system().threads.iter().filter(|one| size(one) < size(thread));
    smaller.max_by(|a, b| size(a).total_cmp(&size(b)))
}
