//! The hole to leave for a reamer, worked out from the printed rows by hand.

#![expect(clippy::unwrap_used, reason = "a hole that is not found ends its test")]

use holewright_core::calc::drill_feed::drill_feed;
use holewright_core::calc::reaming::{Leave, feed, reaming};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::units::{Length, in_mm, inch, mm};

fn metric() -> Vec<&'static Drill> {
    drills::by_series(Series::Metric).collect()
}

#[track_caller]
fn check(leave: Option<&Leave>, expected: [Length; 3]) {
    let leave = leave.unwrap();
    for (found, expected) in [leave.least, leave.aim, leave.most].into_iter().zip(expected) {
        assert!((in_mm(found) - in_mm(expected)).abs() < 1e-9, "{leave:?}");
    }
}

fn labels(leave: Option<&Leave>) -> Vec<&'static str> {
    leave.unwrap().drills.iter().map(|drill| drill.label.as_str()).collect()
}

#[test]
fn the_range_runs_over_every_source_and_the_aim_is_the_middle_of_those_with_sizes() {
    // 4 mm: by hand 0.1 to 0.2 mm (to 5 mm) and 0.005 in; no rule without sizes below 5 mm.
    let four = reaming(mm(4.0), &metric());
    check(four.by_hand.as_ref(), [mm(0.1), mm(0.15), mm(0.2)]);
    // In a machine 0.005 to 0.010 in (0.09 to 0.17 in), and 0.1 to 0.2 mm below 5 mm.
    check(four.by_machine.as_ref(), [mm(0.1), (mm(0.1) + inch(0.01)) / 2.0, inch(0.01)]);
    // 6 mm: by hand 0.005 in, and 1/100 to 1/64 in whatever way it is turned.
    let six = reaming(mm(6.0), &metric());
    check(six.by_hand.as_ref(), [inch(0.005), inch(0.005), inch(1.0 / 64.0)]);
    // In a machine 0.008 to 0.012 in (0.171 to 0.28 in), 0.2 to 0.3 mm, 0.005 to 0.010 in in the lathe.
    check(six.by_machine.as_ref(), [inch(0.005), (mm(0.2) + inch(0.012)) / 2.0, inch(1.0 / 64.0)]);
}

#[test]
fn a_rule_without_sizes_counts_from_five_millimetres() {
    let counted = |size| {
        let found = reaming(mm(size), &metric());
        let unsized_rows = found.printed.iter().filter(|printed| !printed.row.is_sized());
        unsized_rows.map(|printed| printed.counted).collect::<Vec<_>>()
    };
    assert_eq!((counted(4.99), counted(5.0)), (vec![false; 2], vec![true; 2]));
    let sized = reaming(mm(4.0), &metric());
    assert!(sized.printed.iter().all(|printed| printed.counted == printed.row.is_sized()));
}

#[test]
fn the_spread_is_the_most_over_the_least() {
    let spread = reaming(mm(6.0), &metric()).spread.unwrap();
    assert!((spread - (1.0 / 64.0) / 0.005).abs() < 1e-9, "{spread}");
    // By hand 0.1 mm at least, in a machine 0.010 in at most.
    let spread = reaming(mm(4.0), &metric()).spread.unwrap();
    assert!((spread - 2.54).abs() < 1e-9, "{spread}");
}

#[test]
fn a_drill_at_either_end_of_the_range_will_do() {
    let four = reaming(mm(4.0), &metric());
    assert_eq!(labels(four.by_hand.as_ref()), ["3.8 mm", "3.9 mm"]);
    let six = reaming(mm(6.0), &metric());
    assert_eq!(labels(six.by_machine.as_ref()), ["5.7 mm", "5.8 mm"]);
}

#[test]
fn the_drill_nearest_the_aim_is_taken_and_of_two_the_smaller() {
    let taken = |leave: Option<&Leave>| leave.unwrap().take.map(|drill| drill.label.as_str());
    // Both 0.05 mm off the aim of 0.15.
    let four = reaming(mm(4.0), &metric());
    assert_eq!(taken(four.by_hand.as_ref()), Some("3.8 mm"));
    // 0.048 and 0.052 mm off 0.252.
    let six = reaming(mm(6.0), &metric());
    assert_eq!(taken(six.by_machine.as_ref()), Some("5.7 mm"));
    // 0.127 mm is left by hand: 0.1 mm is nearer than 0.2 and 0.3.
    let [near, far] = ["5.9", "5.7"].map(|size| drills::find(Series::Metric, size).unwrap());
    assert_eq!(taken(reaming(mm(6.0), &[near, far]).by_hand.as_ref()), Some("5.7 mm"));
    let eight = drills::find(Series::Metric, "5.8").unwrap();
    assert_eq!(taken(reaming(mm(6.0), &[far, eight]).by_hand.as_ref()), Some("5.8 mm"));
    assert_eq!(taken(reaming(mm(6.0), &[]).by_hand.as_ref()), None);
}

#[test]
fn the_holes_are_what_the_reamer_less_the_allowance_leaves() {
    let found = reaming(mm(4.0), &[]).by_hand.unwrap();
    assert!((in_mm(found.smallest_hole(mm(4.0))) - 3.8).abs() < 1e-9);
    assert!((in_mm(found.largest_hole(mm(4.0))) - 3.9).abs() < 1e-9);
}

#[test]
fn a_reamer_is_fed_two_to_three_times_as_far_as_a_drill() {
    for size in [1.0, 2.0, 3.0, 6.0, 12.0, 25.0] {
        let drill = drill_feed(mm(size)).unwrap();
        let [low, high] = feed(mm(size)).unwrap();
        assert!((in_mm(low) / in_mm(drill.low) - 2.0).abs() < 1e-9, "{size}");
        assert!((in_mm(high) / in_mm(drill.high) - 3.0).abs() < 1e-9, "{size}");
    }
    assert!(feed(mm(0.9)).is_none());
}
