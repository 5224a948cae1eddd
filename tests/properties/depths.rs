//! Depths at their limits: deep holes, male centres, pecks, the most thread a part holds.

use holewright_core::calc::depth::{
    BlindHole, Deep, LastTap, blind, how_deep, most_full_thread, peck, usual_point_angle,
};
use holewright_core::tables::materials::Group;
use holewright_core::units::{Length, in_mm, inch, mm};

fn hole(major: Length) -> BlindHole {
    BlindHole {
        major,
        pitch: mm(1.0),
        drill: major - mm(1.0),
        point_angle: usual_point_angle(),
        last_tap: LastTap::Plug,
    }
}

#[test]
fn a_hole_is_deep_beyond_five_diameters_and_very_deep_beyond_ten() {
    let found = [4.9, 5.0, 5.01, 10.0, 10.01].map(how_deep);
    let (deep, very) = (Some(Deep::Deep), Some(Deep::VeryDeep));
    assert_eq!(found, [None, None, deep, deep, very]);
}

#[test]
fn taps_up_to_three_eighths_have_a_male_centre() {
    let centre = |major| blind(&hole(major), mm(8.0)).male_centre;
    assert_eq!(centre(inch(0.375)), Some(inch(0.375) / 2.0));
    assert_eq!(centre(mm(6.0)), Some(mm(3.0)));
    assert_eq!(centre(mm(9.6)), None);
}

#[test]
fn the_first_peck_is_the_longest_and_tough_metal_has_shorter_ones() {
    for (group, first, then) in [
        (Group::EasyCutting, 12.0, 4.0),
        (Group::IronAndGunmetal, 12.0, 4.0),
        (Group::Tough, 8.0, 2.0),
    ] {
        let found = peck(mm(4.0), group);
        assert!((in_mm(found.first) - first).abs() < 1e-12, "{group}");
        assert!((in_mm(found.then) - then).abs() < 1e-12, "{group}");
    }
}

#[test]
fn a_part_that_the_point_and_the_wall_use_up_holds_no_thread() {
    let blind_hole = hole(mm(6.0));
    let used = blind(&blind_hole, mm(0.0)).drill_to_point + mm(1.0);
    assert_eq!(most_full_thread(&blind_hole, used, mm(1.0)), None);
    let left = most_full_thread(&blind_hole, used + mm(0.5), mm(1.0)).map(in_mm);
    assert!(left.is_some_and(|left| (left - 0.5).abs() < 1e-9), "{left:?}");
}
