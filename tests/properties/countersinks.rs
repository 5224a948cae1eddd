//! Countersinks and spots: the rules in print for their speed, the common one, the sizes of a spot.

use holewright_core::calc::countersink::RULES;
use holewright_core::calc::relations::Likeness;
use holewright_core::calc::spotting::{chamfer, web};
use holewright_core::units::{in_metres_per_minute, in_mm, metres_per_minute, mm, print};

#[test]
fn the_rules_in_print_are_taken_at_their_own_diameter() {
    let [midway, counterbore, quarter] = RULES;
    let (head, hole) = (mm(8.0), mm(4.0));
    assert_eq!(print::mm(quarter.diameter(head, hole), 3), "8 mm");
    assert_eq!(print::mm(midway.diameter(head, hole), 3), "6 mm");
    assert_eq!(print::mm(counterbore.diameter(head, hole), 3), "8 mm");
    let drilling = metres_per_minute(24.0);
    let surface = |rule: &holewright_core::calc::countersink::SpeedRule| {
        rule.surface([drilling, drilling]).map(|end| print::round(in_metres_per_minute(end), 6))
    };
    assert_eq!(surface(&quarter), [6.0, 6.0]);
    assert_eq!(surface(&midway), [24.0, 24.0]);
    // 80 to 85 %.
    assert_eq!(surface(&counterbore), [19.2, 20.4]);
}

#[test]
fn a_spot_is_between_the_web_and_the_chamfer() {
    assert!((in_mm(web(mm(6.0))) - 1.5).abs() < 1e-12);
    assert!((in_mm(chamfer(mm(6.0))) - 6.3).abs() < 1e-12);
}

#[test]
fn how_far_threads_are_alike_is_said() {
    for (likeness, words) in [
        (Likeness::DiameterAndPitch, "same diameter and pitch, not the same thread"),
        (Likeness::Pitch, "same pitch, not the same thread"),
        (Likeness::Neither, "looks alike, not the same thread"),
    ] {
        assert_eq!(likeness.to_string(), words);
    }
}
