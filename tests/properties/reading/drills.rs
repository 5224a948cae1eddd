//! Names of single drills.

use super::typed;
use holewright_core::tables::drills::read::{ReadError, read};
use holewright_core::tables::drills::{Drill, Series, all};
use holewright_core::units::print;
use proptest::prelude::*;

fn address(drill: &Drill) -> String {
    format!("{}/{}", drill.series, drill.size)
}

#[track_caller]
fn check(typed: &str, expected: &str) {
    match read(typed) {
        Ok(drill) => assert_eq!(address(drill), expected, "{typed:?}"),
        Err(error) => panic!("{typed:?} is {expected}: {error}"),
    }
}

#[test]
fn every_usual_spelling_is_read() {
    for (typed, expected) in [
        ("#46", "number/46"),
        ("# 46", "number/46"),
        ("No 46", "number/46"),
        ("No. 46", "number/46"),
        ("NO.46", "number/46"),
        ("№46", "number/46"),
        ("number 46", "number/46"),
        ("No. 46 drill", "number/46"),
        ("46", "number/46"),
        (".081", "number/46"),
        ("0.0810", "number/46"),
        ("0.081in", "number/46"),
        ("0,081 in", "number/46"),
        ("81 thou", "number/46"),
        (".0785", "number/47"),
        ("78.5 thou", "number/47"),
        ("#80", "number/80"),
        ("#1", "number/1"),
        ("F", "letter/f"),
        ("f", "letter/f"),
        ("letter F", "letter/f"),
        ("Letter  q", "letter/q"),
        (".257", "letter/f"),
        ("7/64", "fraction/7-64"),
        ("7/64\"", "fraction/7-64"),
        ("7/64″", "fraction/7-64"),
        ("⁷⁄₆₄ in", "fraction/7-64"),
        (".1094", "fraction/7-64"),
        (".109375", "fraction/7-64"),
        (".109", "fraction/7-64"),
        ("¼", "fraction/1-4"),
        ("1 in", "fraction/1"),
        ("2/8", "fraction/1-4"),
        ("fraction/7-64", "fraction/7-64"),
        ("2.05", "metric/2.05"),
        ("2.05mm", "metric/2.05"),
        ("2,05 mm", "metric/2.05"),
        ("2,05", "metric/2.05"),
        ("2.050 mm", "metric/2.05"),
        ("3.0 mm", "metric/3"),
        ("0.35", "metric/0.35"),
        (".0807", "metric/2.05"),
        ("Ø2.05 mm", "metric/2.05"),
        ("3.175 mm", "fraction/1-8"),
        ("metric/2.05", "metric/2.05"),
        ("metric/3.0", "metric/3"),
        ("metric 2", "metric/2"),
    ] {
        check(typed, expected);
    }
}

#[test]
fn what_can_be_two_drills_asks() {
    for (typed, expected) in [
        ("2", ["metric/2", "number/2"].as_slice()),
        ("1", &["metric/1", "number/1", "fraction/1"]),
        ("0.25", &["metric/0.25", "letter/e", "fraction/1-4"]),
        (".25 in", &["letter/e", "fraction/1-4"]),
        ("0.5", &["metric/0.5", "fraction/1-2"]),
    ] {
        let Err(ReadError::Ambiguous { candidates, .. }) = read(typed) else {
            panic!("{typed:?} does not ask: {:?}", read(typed));
        };
        let got: Vec<String> = candidates.iter().map(|drill| address(drill)).collect();
        assert_eq!(got, expected, "{typed:?}");
    }
}

#[test]
fn a_size_no_drill_has_names_the_nearest() {
    for (typed, expected) in [
        ("5.25 mm", "metric/5.2"),
        ("5.25", "metric/5.3"),
        ("2.06 mm", "number/46"),
        ("#98", "number/97"),
        ("13/62", "number/4"),
        ("30 mm", "fraction/1"),
        (".1", "number/39"),
    ] {
        let Err(ReadError::Unknown { nearest, .. }) = read(typed) else {
            panic!("{typed:?} is known: {:?}", read(typed));
        };
        assert!(nearest.len() >= 2, "{typed:?}");
        let got: Vec<String> = nearest.iter().map(|drill| address(drill)).collect();
        assert!(got.iter().any(|drill| drill == expected), "{typed:?}: {got:?}");
    }
    for typed in ["nonsense", "46x", "letter ff", "-2 mm", "#F", "2 mm 3"] {
        let error = read(typed).expect_err(typed);
        assert!(
            matches!(&error, ReadError::Unknown { nearest, .. } if nearest.is_empty()),
            "{error}"
        );
    }
    assert_eq!(read(" "), Err(ReadError::Empty));
    assert_eq!(read(&"1".repeat(41)), Err(ReadError::TooLong));
}

#[test]
fn every_drill_reads_as_itself() {
    for drill in all() {
        for typed in [drill.label.clone(), address(drill), drill.label.to_uppercase()] {
            check(&typed, &address(drill));
        }
        check(&drill.label.replace('.', ",").replace("No,", "No."), &address(drill));
        check(&format!("\u{2003}{}  ", drill.label.replace(' ', "  ")), &address(drill));
    }
}

#[test]
fn every_inch_drill_reads_from_its_printed_decimals() {
    for drill in all().iter().filter(|drill| drill.series != Series::Metric) {
        let typed = print::inch(drill.diameter, 4);
        match read(&typed) {
            Ok(got) => assert_eq!(address(got), address(drill), "{typed}"),
            Err(ReadError::Ambiguous { candidates, .. }) => {
                let is_there = candidates.iter().any(|other| address(other) == address(drill));
                assert!(is_there, "{typed}: {candidates:?}");
            }
            Err(error) => panic!("{typed}: {error}"),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn reading_a_drill_never_panics(typed in typed(50)) {
        let _ = read(&typed).map_err(|error| error.to_string());
    }
}
