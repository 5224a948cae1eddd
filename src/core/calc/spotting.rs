//! The spot that starts a drill: how wide, and at what angle.

use crate::tables::source::Source;
use crate::units::{Angle, Length};

/// A spot for a drill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The narrowest worth making: about the web of the drill, so that its point is led.
    pub least: Length,
    /// The widest worth making: the chamfer left at the mouth of the hole.
    pub most: Length,
    /// The least angle of the spotting drill: the drill's own point, which then touches first.
    pub least_angle: Angle,
    /// Common practice.
    pub source: Source,
}

/// The web of a drill is about this part of its diameter. Common practice, no source.
const WEB: f64 = 0.25;
/// A chamfer is this much wider than what it lets in. Common practice, no source.
const CHAMFER: f64 = 1.05;

/// About the web of a drill: a pilot or a spot as wide as this takes the load off its point.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn web(drill: Length) -> Length {
    drill * WEB
}

/// The width of a chamfer that breaks the edge of a hole or lets a tap in.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn chamfer(diameter: Length) -> Length {
    diameter * CHAMFER
}

/// The spot for a drill with this point.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// A 6 mm jobber drill: a spot from 1.5 to 6.3 mm wide, of 118° or more.
/// ```
/// use holewright_core::{calc::{depth::usual_point_angle, spotting::spot}, units::{mm, print}};
/// let found = spot(mm(6.0), usual_point_angle());
/// assert_eq!((print::mm(found.least, 2), print::mm(found.most, 2)), ("1.5 mm".into(), "6.3 mm".into()));
/// assert_eq!(found.least_angle, usual_point_angle());
/// ```
#[must_use]
pub fn spot(drill: Length, point_angle: Angle) -> Spot {
    Spot {
        least: web(drill),
        most: chamfer(drill),
        least_angle: point_angle,
        source: Source::common_practice(
            "a spotting drill at least as blunt as the drill, so that its point touches first; as wide as its web, or up to the chamfer",
        ),
    }
}
