//! The angles that drills and countersinks are ground to.

use super::{About, Field, Limits, Need};
use crate::units::Angle;

/// What drills and countersinks are ground to.
pub const GROUND: Limits = Limits::Between {
    least: 60.0,
    most: 179.0,
    unit: " degrees",
    below: "is sharper than any is ground",
    above: "is flatter than any is ground",
};

/// The included angle of a drill's point.
pub static POINT_ANGLE: Field<Angle> = Field::angle(About {
    name: "point_angle",
    label: "Point angle of the drill",
    hint: "Degrees",
    description: "Point angle of the drill, in degrees",
    example: "118",
    need: Need::Usually("118"),
    limits: GROUND,
});

#[cfg(test)]
mod tests {
    use super::POINT_ANGLE;
    use crate::asking::{AnyField, Need};
    use crate::calc::depth::usual_point_angle;
    use crate::units::{degrees, in_degrees, print};

    #[test]
    fn the_usual_point_is_that_of_the_plan() {
        let usual = print::trimmed(in_degrees(usual_point_angle()), 3);
        assert!(matches!(POINT_ANGLE.about().need, Need::Usually(text) if text == usual));
        assert_eq!(usual_point_angle(), degrees(118.0));
    }
}
