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

/// Where the bench's own rule comes from: the slowest speed that cuts clean.
pub const SLOWEST_SOURCE: Source = Source::common_practice(
    "a countersink is run at the slowest speed that cuts clean: it chatters less",
);

/// A rule in print for the speed of a countersink or a counterbore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedRule {
    /// The parts of the drilling speed, least and most.
    pub factor: [f64; 2],
    /// It is taken midway between hole and head, not at the head.
    pub midway: bool,
    /// The rule in words.
    pub words: &'static str,
    /// Where it was read.
    pub source: Source,
}

/// The drilling speed at the mean diameter, as a tool maker prints it.
pub const MIDWAY: SpeedRule = SpeedRule {
    factor: [1.0, 1.0],
    midway: true,
    words: "a countersink: the drilling speed, at the diameter midway between largest and smallest",
    source: Source::published("a drill maker's user guide, p. 34, countersinks"),
};

/// The rules in print, which differ fourfold and more.
pub const RULES: [SpeedRule; 3] = [
    MIDWAY,
    SpeedRule {
        factor: [0.80, 0.85],
        midway: false,
        words: "a counterbore: 80 to 85 % of the drilling speed, at its own diameter",
        source: Source::published("a drill maker's user guide, p. 33, counterbores"),
    },
    SpeedRule {
        factor: [0.25, 0.25],
        midway: false,
        words: "a countersink: a quarter of the drilling speed, at the largest diameter",
        source: Source::published("Introduction to Machining, 8.13, Countersinking"),
    },
];

impl SpeedRule {
    /// The diameter the rule is taken at.
    #[must_use]
    pub fn diameter(&self, head: Length, hole: Length) -> Length {
        if self.midway { (head + hole) / 2.0 } else { head }
    }

    /// The surface speeds it allows, of a range of drilling speeds.
    #[must_use]
    pub fn surface(&self, drilling: [Velocity; 2]) -> [Velocity; 2] {
        let ([slow, fast], [least, most]) = (drilling, self.factor);
        [slow * least, fast * most]
    }
}
