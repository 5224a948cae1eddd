//! The drills on each side of a size, and of a drill.

use holewright_core::calc::neighbours::{around, nearest};
use holewright_core::tables::drills::{self, Series};
use holewright_core::units::{in_mm, mm};

#[test]
fn a_drill_stands_between_the_next_two_of_its_series() {
    for (place, series) in Series::ALL.into_iter().enumerate() {
        let held: Vec<_> = drills::by_series(series).collect();
        for (number, drill) in held.iter().enumerate() {
            let found = around(drill)[place];
            assert_eq!(found.series, series);
            let below = number.checked_sub(1).map(|number| held[number]);
            assert_eq!(found.below.map(|near| near.drill), below, "{}", drill.label);
            let above = held.get(number + 1).copied();
            assert_eq!(found.above.map(|near| near.drill), above, "{}", drill.label);
            for near in [found.below, found.above].into_iter().flatten() {
                let off = in_mm(near.drill.diameter) - in_mm(drill.diameter);
                assert!((in_mm(near.error) - off).abs() < 1e-12, "{}", drill.label);
            }
        }
    }
}

#[test]
fn in_another_series_a_drill_of_the_same_size_counts_as_below() {
    // Letter E is 1/4 in.
    let letter = drills::find(Series::Letter, "e").expect("letter E");
    let fraction = around(letter)[2];
    assert_eq!(fraction.series, Series::Fraction);
    assert_eq!(fraction.below.map(|near| near.drill.label.as_str()), Some("1/4 in"));
    assert_eq!(fraction.above.map(|near| near.drill.label.as_str()), Some("17/64 in"));
}

#[test]
fn a_size_lies_between_two_drills_and_one_of_them_may_have_it() {
    let metric = |size| nearest(mm(size))[3];
    let labels = |size| {
        let found = metric(size);
        [found.below, found.above].map(|near| near.map(|near| near.drill.label.as_str()))
    };
    assert_eq!(labels(2.05), [Some("2.05 mm"), Some("2.1 mm")]);
    assert_eq!(labels(2.06), [Some("2.05 mm"), Some("2.1 mm")]);
    assert_eq!(labels(0.1), [None, Some("0.2 mm")]);
    assert_eq!(labels(1000.0)[1], None);
}
