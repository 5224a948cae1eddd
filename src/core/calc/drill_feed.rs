//! How far a drill is fed each turn: the general list, held to the drill's size where it is small.

use crate::tables::materials::feeds::for_drill;
use crate::tables::source::Source;
use crate::units::{Length, mm};

/// A drill below this is fed by its diameter: the list's one row from No. 80 to 1/8 in would break it.
pub const SMALL: Length = mm(3.0);
/// Below this no feed is given: it is by feel.
pub const BY_FEEL: Length = mm(1.0);
/// The parts of a small drill's diameter it is fed a turn, finest and coarsest.
pub const OF_DIAMETER: [f64; 2] = [0.01, 0.02];

/// Where [`OF_DIAMETER`] comes from.
pub const OF_DIAMETER_SOURCE: Source = Source::common_practice(
    "below 3 mm a drill is fed 1 to 2 % of its diameter a turn at most, below 1 mm by feel",
);

/// How far a drill goes in, each turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrillFeed {
    /// Finest.
    pub low: Length,
    /// Coarsest.
    pub high: Length,
    /// Where it comes from: the list, or the rule for small drills that holds it.
    pub source: Source,
}

/// The feed of a drill; none below [`BY_FEEL`].
///
/// # Source
/// The general list of [`crate::tables::materials::feeds`]; below 3 mm at most 2 % of the diameter, common
/// practice, no source. The list prints 0.001 to 0.002 in from No. 80 to 1/8 in, 15 % of the smallest.
///
/// # Examples
/// ```
/// use holewright_core::{calc::drill_feed::drill_feed, units::{in_mm, mm}};
/// let two = drill_feed(mm(2.0)).unwrap();
/// assert!(in_mm(two.high) <= 0.04 && in_mm(two.low) <= 0.02);
/// assert_eq!(drill_feed(mm(0.9)), None);
/// ```
#[must_use]
pub fn drill_feed(diameter: Length) -> Option<DrillFeed> {
    if diameter < BY_FEEL {
        return None;
    }
    let row = for_drill(diameter)?;
    let listed = DrillFeed { low: row.low, high: row.high, source: row.source };
    if diameter >= SMALL {
        return Some(listed);
    }
    let [least, most] = OF_DIAMETER.map(|part| diameter * part);
    let lesser = |a: Length, b: Length| if a < b { a } else { b };
    Some(DrillFeed {
        low: lesser(row.low, least),
        high: lesser(row.high, most),
        source: if row.high > most { OF_DIAMETER_SOURCE } else { row.source },
    })
}
