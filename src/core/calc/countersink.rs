//! How deep to sink a countersink, and how fast to turn it.

use crate::tables::source::Source;
use crate::units::{Angle, Length, Velocity};

use super::depth::point_length;

/// How deep a countersink goes into a hole to open its mouth to a diameter: (D − d)/2/tan(A/2).
///
/// # Units
/// From the face to the point where the cone meets the hole's side; a hole as wide as the mouth, or
/// wider, wants nothing. An angle outside 60° to 180° counts as the nearer of the two.
///
/// # Source
/// Trigonometry; the form is Carter Tools', Countersinking.
///
/// # Examples
/// To a sharp point, for each unit of diameter: 60° 0.866025, 90° 0.5, 120° 0.288675.
/// ```
/// use holewright_core::{calc::countersink::sink_depth, units::{degrees, in_mm, mm, print}};
/// let to_a_point = |angle| in_mm(sink_depth(mm(1.0), mm(0.0), degrees(angle)));
/// assert!((to_a_point(60.0) - 0.866025).abs() < 1e-6);
/// assert!((to_a_point(90.0) - 0.5).abs() < 1e-6 && (to_a_point(120.0) - 0.288675).abs() < 1e-6);
/// // A 6 mm head at 90° in a 3.4 mm hole: 1.3 mm.
/// assert_eq!(print::mm(sink_depth(mm(6.0), mm(3.4), degrees(90.0)), 3), "1.3 mm");
/// ```
#[must_use]
pub fn sink_depth(head: Length, hole: Length, angle: Angle) -> Length {
    if hole >= head { Length::default() } else { point_length(head - hole, angle) }
}

/// The head of a countersunk screw that was not measured, as parts of its major diameter.
///
/// # Source
/// Common practice, no source: measure the head.
///
/// # Examples
/// ```
/// use holewright_core::{calc::countersink::usual_head, units::mm};
/// assert_eq!(usual_head(mm(3.0)), [mm(5.25), mm(6.0)]);
/// ```
#[must_use]
pub fn usual_head(major: Length) -> [Length; 2] {
    [major * 1.75, major * 2.0]
}

/// Where [`usual_head`] comes from.
pub const USUAL_HEAD: Source =
    Source::common_practice("a countersunk head is 1¾ to 2 times its screw; measure it");

/// The part of the drilling speed at the largest diameter: a third of the slow end to a half of the
/// fast end.
pub const SPEED: [f64; 2] = [1.0 / 3.0, 1.0 / 2.0];

/// Where [`SPEED`] comes from.
pub const SPEED_SOURCE: Source = Source::common_practice(
    "a countersink at a third to a half of the drilling speed for its largest diameter",
);

/// A rule in print for the speed of a countersink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedRule {
    /// The part of the drilling speed.
    pub factor: f64,
    /// It is taken midway between hole and head, not at the head.
    pub midway: bool,
    /// The rule in words.
    pub words: &'static str,
    /// Where it was read.
    pub source: Source,
}

/// The rules in print, which differ fourfold and more.
pub const RULES: [SpeedRule; 2] = [
    SpeedRule {
        factor: 0.25,
        midway: false,
        words: "a quarter of the drilling speed, at the largest diameter",
        source: Source::published("Introduction to Machining, 8.13, Countersinking"),
    },
    SpeedRule {
        factor: 1.0,
        midway: true,
        words: "the drilling speed, at the diameter midway between largest and smallest",
        source: Source::published("a drill maker's user guide, p. 34"),
    },
];

impl SpeedRule {
    /// The diameter the rule is taken at.
    #[must_use]
    pub fn diameter(&self, head: Length, hole: Length) -> Length {
        if self.midway { (head + hole) / 2.0 } else { head }
    }

    /// The surface speed it allows, of a drilling speed.
    #[must_use]
    pub fn surface(&self, drilling: Velocity) -> Velocity {
        drilling * self.factor
    }
}
