//! The clearance hole: the stated rule at its limits, the small holes of model work, the drill taken.

use holewright_core::calc::clearance::{Fit, drill_for, hole_by_rule, model_hole};
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::threads::SystemId;
use holewright_core::units::{Length, in_mm, mm, print};

#[test]
fn the_stated_rule_is_a_part_of_the_screw_between_a_least_and_a_most() {
    for (screw, holes) in [
        // The least of each: 0.05, 0.1 and 0.2 mm.
        (1.0, ["1.05 mm", "1.1 mm", "1.2 mm"]),
        // 2, 4 and 8 %.
        (5.0, ["5.1 mm", "5.2 mm", "5.4 mm"]),
        (8.0, ["8.16 mm", "8.32 mm", "8.64 mm"]),
        // The most of each: 0.2, 0.4 and 0.8 mm.
        (20.0, ["20.2 mm", "20.4 mm", "20.8 mm"]),
    ] {
        let found = Fit::ALL.map(|fit| print::mm(hole_by_rule(mm(screw), fit).hole, 3));
        assert_eq!(found, holes, "{screw} mm");
    }
}

#[test]
fn metric_screws_up_to_5_mm_have_a_model_hole() {
    let model = |size| model_hole(SystemId::Metric, mm(size)).map(|found| print::mm(found.hole, 2));
    assert_eq!(model(2.5).as_deref(), Some("2.6 mm"));
    assert_eq!(model(5.0).as_deref(), Some("5.2 mm"));
    assert_eq!(model(5.5), None);
    assert_eq!(model_hole(SystemId::Ba, mm(3.2)), None);
}

fn taken(hole: Length, metric: &str) -> bool {
    drill_for(hole, drills::find(Series::Metric, metric).into_iter()).is_some()
}

#[test]
fn a_drill_of_just_the_hole_is_taken_and_one_a_sixty_fourth_or_a_tenth_over_it() {
    assert!(taken(mm(3.4), "3.4") && !taken(mm(3.41), "3.4"));
    // 1/64 in is 0.397 mm, more than a tenth of 2.1 mm.
    assert!(taken(mm(2.11), "2.5") && !taken(mm(2.1), "2.5"));
    assert!(taken(mm(2.8), "3") && !taken(mm(2.6), "3"));
    // A tenth of 10 mm is more than that.
    assert!(taken(mm(10.0), "11") && !taken(mm(9.9), "11"));
    let both = ["3.5", "3.6"].map(|size| drills::find(Series::Metric, size).expect("a drill"));
    let smaller = drill_for(mm(3.41), both.into_iter()).expect("one of them");
    assert!((in_mm(smaller.diameter) - 3.5).abs() < 1e-12);
}
