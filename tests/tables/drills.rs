//! The drill series, their neighbours, feeds and likely sizes.

use holewright_core::calc::{neighbours, oversize};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::tables::materials::feeds;
use holewright_core::tables::source::Grade;
use holewright_core::units::{in_inch, in_mm, inch, mm, print};

#[expect(clippy::panic, reason = "a missing drill fails the test that names it")]
fn drill(series: Series, size: &str) -> &'static Drill {
    drills::find(series, size).unwrap_or_else(|| panic!("no drill {series} {size}"))
}

#[track_caller]
fn check_inches(series: Series, size: &str, printed: &str) {
    assert_eq!(print::fixed(in_inch(drill(series, size).diameter), 4), printed, "{series} {size}");
}

#[test]
fn every_series_is_whole() {
    let counts = Series::ALL.map(|series| drills::by_series(series).count());
    assert_eq!(counts, [97, 26, 64, 227]);
    assert_eq!(counts.iter().sum::<usize>(), drills::all().len());
}

#[test]
fn drills_stand_by_size_and_equal_ones_by_series() {
    for pair in drills::all().windows(2) {
        let (first, second) = (&pair[0], &pair[1]);
        let order = in_mm(first.diameter)
            .total_cmp(&in_mm(second.diameter))
            .then(first.series.cmp(&second.series));
        assert!(order.is_lt(), "{} before {}", first.label, second.label);
    }
    // Letter E is a quarter of an inch; half an inch is 12.7 mm.
    let place = |wanted: &Drill| {
        drills::all().iter().position(|found| std::ptr::eq(found, wanted)).unwrap()
    };
    let (letter, quarter) = (drill(Series::Letter, "e"), drill(Series::Fraction, "1-4"));
    assert_eq!(place(letter) + 1, place(quarter));
    let (half, metric) = (drill(Series::Fraction, "1-2"), drill(Series::Metric, "12.7"));
    assert_eq!(place(half) + 1, place(metric));
}

#[test]
fn every_drill_is_found_at_its_own_address_and_nowhere_else() {
    for drill in drills::all() {
        let found = drills::find(drill.series, &drill.size).unwrap();
        assert!(std::ptr::eq(found, drill), "{}", drill.label);
        assert_eq!(drill.path(), format!("/drills/{}/{}", drill.series.slug(), drill.size));
    }
    for (series, size) in [
        (Series::Number, "0"),
        (Series::Number, "98"),
        (Series::Number, "046"),
        (Series::Letter, "F"),
        (Series::Fraction, "2-64"),
        (Series::Fraction, "65-64"),
        (Series::Metric, "3.0"),
        (Series::Metric, "3.05"),
        (Series::Metric, "0.21"),
        (Series::Metric, "14.1"),
        (Series::Metric, "25.25"),
    ] {
        assert_eq!(drills::find(series, size), None, "{series} {size}");
    }
}

#[test]
fn names_are_those_on_the_drill_stand() {
    let label = |series, size| drill(series, size).label.as_str();
    assert_eq!(label(Series::Number, "46"), "No. 46");
    assert_eq!(label(Series::Letter, "f"), "Letter F");
    assert_eq!(label(Series::Fraction, "7-64"), "7/64 in");
    assert_eq!(label(Series::Fraction, "1"), "1 in");
    assert_eq!(label(Series::Metric, "2.05"), "2.05 mm");
    assert_eq!(label(Series::Metric, "3"), "3 mm");
    assert_eq!(label(Series::Metric, "0.2"), "0.2 mm");
}

#[test]
fn number_drills_as_printed() {
    // 'Drills, Sizes, Threads & Preferred Sizes' v2 2007.
    for (size, printed) in [
        ("97", "0.0059"),
        ("93", "0.0075"),
        ("89", "0.0091"),
        ("86", "0.0105"),
        ("82", "0.0125"),
        ("80", "0.0135"),
        ("75", "0.0210"),
        ("68", "0.0310"),
        ("60", "0.0400"),
        ("58", "0.0420"),
    ] {
        check_inches(Series::Number, size, printed);
    }
    // Machinery's Handbook 31st ed. tap drill tables.
    for (size, printed) in [
        ("53", "0.0595"),
        ("47", "0.0785"),
        ("46", "0.0810"),
        ("42", "0.0935"),
        ("37", "0.1040"),
        ("36", "0.1065"),
        ("29", "0.1360"),
        ("21", "0.1590"),
        ("16", "0.1770"),
        ("7", "0.2010"),
    ] {
        check_inches(Series::Number, size, printed);
    }
}

/// One CAD library rounds these six to three places; the series has a fourth.
#[test]
fn six_number_drills_are_not_rounded() {
    for (size, printed, rounded) in [
        ("5", "0.2055", 0.205),
        ("10", "0.1935", 0.193),
        ("18", "0.1695", 0.170),
        ("25", "0.1495", 0.150),
        ("28", "0.1405", 0.140),
        ("69", "0.0292", 0.029),
    ] {
        check_inches(Series::Number, size, printed);
        assert!((in_inch(drill(Series::Number, size).diameter) - rounded).abs() > 1e-4);
    }
    assert_eq!(drill(Series::Number, "5").source().grade, Grade::Memory);
    assert_eq!(drill(Series::Number, "18").source().grade, Grade::Published);
}

#[test]
fn letters_and_fractions_as_printed() {
    for (size, printed) in [
        ("a", "0.2340"),
        ("h", "0.2660"),
        ("i", "0.2720"),
        ("o", "0.3160"),
        ("q", "0.3320"),
        ("w", "0.3860"),
        ("x", "0.3970"),
        ("z", "0.4130"),
    ] {
        check_inches(Series::Letter, size, printed);
    }
    for (size, printed) in [("1-64", "0.0156"), ("15-32", "0.4688"), ("7-8", "0.8750")] {
        check_inches(Series::Fraction, size, printed);
    }
}

#[test]
fn the_metric_rule_changes_step_where_bs_328_does() {
    let sizes: Vec<&str> =
        drills::by_series(Series::Metric).map(|drill| drill.size.as_str()).collect();
    let run = |from: &str, count: usize| {
        let start = sizes.iter().position(|size| *size == from).unwrap();
        sizes[start..start + count].to_vec()
    };
    assert_eq!(run("0.2", 5), ["0.2", "0.22", "0.25", "0.28", "0.3"]);
    assert_eq!(run("0.98", 3), ["0.98", "1", "1.05"]);
    assert_eq!(run("2.95", 3), ["2.95", "3", "3.1"]);
    assert_eq!(run("13.9", 3), ["13.9", "14", "14.25"]);
    assert_eq!(sizes.last(), Some(&"25"));
    // As printed, not gathered from steps: 2.65 mm is the nearest number to 2.65.
    assert!(in_mm(drill(Series::Metric, "2.65").diameter).to_bits() == 2.65_f64.to_bits());
}

#[test]
fn a_size_lies_between_its_neighbours() {
    for step in 0..2600 {
        let wanted = mm(0.05 + f64::from(step) * 0.01);
        for near in neighbours::nearest(wanted) {
            let errors = (near.below.map(|n| in_mm(n.error)), near.above.map(|n| in_mm(n.error)));
            assert!(errors.0.is_none_or(|error| error <= 1e-6), "{wanted:?} {near:?}");
            assert!(errors.1.is_none_or(|error| error > 0.0), "{wanted:?} {near:?}");
            let low = near.below.map_or(0.0, |n| in_mm(n.drill.diameter));
            let high = near.above.map_or(f64::INFINITY, |n| in_mm(n.drill.diameter));
            let between = drills::by_series(near.series)
                .filter(|drill| low < in_mm(drill.diameter) && in_mm(drill.diameter) < high)
                .count();
            assert_eq!(between, 0, "{wanted:?} {near:?}");
        }
    }
}

#[test]
fn the_ends_of_a_series_have_one_neighbour() {
    let smallest = neighbours::around(drill(Series::Number, "97"));
    assert_eq!(smallest[0].below, None);
    assert_eq!(smallest[0].above.unwrap().drill.label, "No. 96");
    let largest = neighbours::around(drill(Series::Metric, "25"));
    assert_eq!(largest[3].above, None);
    assert_eq!(largest[3].below.unwrap().drill.label, "24.75 mm");
    assert!((in_mm(largest[3].below.unwrap().error) + 0.25).abs() < 1e-9);
}

#[test]
fn a_drilled_hole_is_never_likely_below_its_drill() {
    let mut last = 0.0;
    for drill in drills::all() {
        let likely = oversize::likely(drill.diameter);
        assert!(drill.diameter < likely.least, "{}", drill.label);
        assert!(likely.least < likely.mean && likely.mean < likely.largest, "{}", drill.label);
        assert!(in_mm(likely.mean) >= last, "{}", drill.label);
        assert_eq!(likely.source.grade, Grade::Memory);
        last = in_mm(likely.mean);
    }
}

#[test]
fn oversize_reaches_beyond_its_table_only_by_saying_so() {
    use oversize::Coverage::{Below, Beyond, Within};
    let coverage = |size: f64| oversize::likely(inch(size)).coverage;
    assert_eq!(
        [0.03, 0.0625, 0.6, 1.0, 1.1].map(coverage),
        [Below, Within, Within, Within, Beyond]
    );
    // Between 1/4 and 1/2 in, half way: mean 0.0045, most 0.00725.
    let three_eighths = oversize::likely(inch(0.375));
    assert_eq!(print::inch(three_eighths.mean, 5), "0.37950 in");
    assert_eq!(print::inch(three_eighths.largest, 5), "0.38225 in");
}

#[test]
fn feeds_follow_the_printed_bands() {
    let feed = |millimetres: f64| {
        feeds::for_drill(mm(millimetres))
            .map(|range| [in_mm(range.low), in_mm(range.high)].map(|value| print::round(value, 4)))
    };
    // US Navy course 14345 p. 93: 0.001–0.002 up to 1/8 in, 0.004–0.007 to 1/2, 0.007–0.015 to 1.
    assert_eq!(feed(2.65), Some([0.0254, 0.0508]));
    assert_eq!(feed(8.0), Some([0.1016, 0.1778]));
    assert_eq!(feed(25.4), Some([0.1778, 0.381]));
    assert_eq!(feed(0.3), None);
    assert_eq!(feed(f64::NAN), None);
}
