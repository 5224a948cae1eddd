//! Lengths, angles and spindle speeds.

use super::typed;
use holewright_core::units::read::{Bare, Problem, angle, length, spindle_speed};
use holewright_core::units::{degrees, in_inch, in_mm, inch, mm, print, rpm};
use proptest::prelude::*;

#[track_caller]
fn check(typed: &str, expected_mm: f64) {
    let got = length(typed, Bare::Mm).map(in_mm);
    let got = got.unwrap_or_else(|error| panic!("{typed:?} is {expected_mm} mm: {error}"));
    assert!((got - expected_mm).abs() < 1e-9, "{typed:?}: {got} mm, not {expected_mm}");
}

#[track_caller]
fn check_not(typed: &str, bare: Bare, problem: Problem) {
    let error = length(typed, bare).expect_err(typed);
    assert_eq!(error.problem, problem, "{typed:?}");
    assert!(error.to_string().contains("2,05 mm"), "{error}: no example");
    assert!(error.typed.chars().count() <= 41, "{error}: all of a long text");
}

#[test]
fn every_usual_spelling_is_read() {
    for (typed, expected_mm) in [
        ("8", 8.0),
        ("2.", 2.0),
        ("2,5", 2.5),
        ("2.05mm", 2.05),
        ("2,05 MM", 2.05),
        ("2.05 m\u{200b}m.", 2.05),
        ("６ｍｍ", 6.0),
        ("8㎜", 8.0),
        ("Ø 3 mm", 3.0),
        ("1.5 cm", 15.0),
        ("10 millimetres", 10.0),
        (".0785 in", 0.0785 * 25.4),
        (".25\"", 6.35),
        (".25 ″", 6.35),
        (".25”", 6.35),
        (".25''", 6.35),
        (".25’’", 6.35),
        ("1/4in", 6.35),
        ("1/4", 6.35),
        ("1 / 4 in.", 6.35),
        ("7/64", 7.0 / 64.0 * 25.4),
        ("7⁄64 inch", 7.0 / 64.0 * 25.4),
        ("⁷⁄₆₄", 7.0 / 64.0 * 25.4),
        ("¹⁰⁄₃₂", 10.0 / 32.0 * 25.4),
        ("²³⁄₆₄", 23.0 / 64.0 * 25.4),
        ("1 1/4 inches", 31.75),
        ("1-1/4\"", 31.75),
        ("1 – 1/4 in", 31.75),
        ("1¼ in", 31.75),
        ("1¹⁄₄ in", 31.75),
        ("⅜″", 9.525),
        ("2½\u{a0}in", 63.5),
        ("1/2 mm", 0.5),
        ("81 thou", 81.0 * 0.0254),
        ("5 mil", 0.127),
        ("2 thousandths of an inch", 0.0508),
        ("0,081 in", 0.081 * 25.4),
        ("1,250 in", 31.75),
        ("2,500 mm", 2.5),
        ("2000", 2000.0),
    ] {
        check(typed, expected_mm);
    }
}

#[test]
fn what_cannot_be_meant_says_why() {
    for (typed, problem) in [
        ("", Problem::Empty),
        (" \u{a0}\t", Problem::Empty),
        ("1/4 in and then a very long tale about it", Problem::TooLong),
        ("eight", Problem::NotANumber),
        ("NaN", Problem::NotANumber),
        ("inf mm", Problem::NotANumber),
        ("-", Problem::NotANumber),
        ("1/0 in", Problem::NotANumber),
        ("12345678901234567890", Problem::NotANumber),
        ("123456789012.5 mm", Problem::NotANumber),
        ("-2 mm", Problem::Negative),
        ("−1/4 in", Problem::Negative),
        ("0", Problem::Zero),
        ("0/4 in", Problem::Zero),
        ("0.00001", Problem::TooSmall),
        ("2000.1 mm", Problem::TooLarge),
        ("80 in", Problem::TooLarge),
        ("1e3", Problem::UnknownUnit("e3".into())),
        ("6 m", Problem::UnknownUnit("m".into())),
        ("6'", Problem::UnknownUnit("'".into())),
        ("1-1-4", Problem::UnknownUnit("-1-4".into())),
        ("1.5/4 in", Problem::UnknownUnit("/4 in".into())),
        ("1 0/4 in", Problem::UnknownUnit("0/4 in".into())),
        ("1 4/4 in", Problem::UnknownUnit("4/4 in".into())),
        ("1 5/4 in", Problem::UnknownUnit("5/4 in".into())),
        ("1,250 mm", Problem::CommaUnclear),
        ("1,250 thou", Problem::CommaUnclear),
    ] {
        check_not(typed, Bare::Mm, problem);
    }
    for (typed, size) in [("0.0001 mm", 0.0001), ("2000 mm", 2000.0), ("0012.3456 mm", 12.3456)] {
        assert_eq!(length(typed, Bare::Ask), Ok(mm(size)), "{typed:?}");
    }
    check_not("6", Bare::Ask, Problem::NoUnit);
    check_not(".25", Bare::Ask, Problem::NoUnit);
    assert_eq!(length("1/4", Bare::Ask), Ok(inch(0.25)), "a fraction is inches");
}

#[test]
fn angles_and_speeds_are_read() {
    for typed in ["118", "118°", "118 º", "118 deg", "118,0 Degrees"] {
        assert_eq!(angle(typed), Ok(degrees(118.0)), "{typed:?}");
    }
    for (typed, value) in [("0.001", 0.001), ("179.9", 179.9)] {
        assert_eq!(angle(typed), Ok(degrees(value)), "{typed:?}");
    }
    for (typed, problem) in [
        ("0", Problem::Zero),
        ("0.0009", Problem::TooSmall),
        ("180", Problem::TooLarge),
        ("-90", Problem::Negative),
        ("90 rad", Problem::UnknownUnit("rad".into())),
        ("", Problem::Empty),
    ] {
        assert_eq!(angle(typed).expect_err(typed).problem, problem, "{typed:?}");
    }
    for typed in ["2000", "2000 rpm", "2,000 RPM", "2000 rev/min", "2000 r.p.m."] {
        assert_eq!(spindle_speed(typed), Ok(rpm(2000.0)), "{typed:?}");
    }
    for (typed, value) in [("1", 1.0), ("200000", 200_000.0)] {
        assert_eq!(spindle_speed(typed), Ok(rpm(value)), "{typed:?}");
    }
    for (typed, problem) in [
        ("0 rpm", Problem::Zero),
        (".5", Problem::TooSmall),
        ("200001", Problem::TooLarge),
        ("2000 mm", Problem::UnknownUnit("mm".into())),
    ] {
        assert_eq!(spindle_speed(typed).expect_err(typed).problem, problem, "{typed:?}");
    }
}

/// What a length reads as in millimetres, to the last bit.
fn read_mm(typed: &str) -> f64 {
    in_mm(length(typed, Bare::Ask).unwrap_or_else(|error| panic!("{error}")))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn reading_a_figure_never_panics(typed in typed(50)) {
        for bare in [Bare::Mm, Bare::Ask] {
            if let Ok(length) = length(&typed, bare) {
                prop_assert!(in_mm(length) > 0.0 && in_mm(length) <= 2000.0);
            }
        }
        let _ = angle(&typed).map_err(|error| error.to_string());
        let _ = spindle_speed(&typed).map_err(|error| error.to_string());
    }

    #[test]
    fn a_printed_length_reads_as_itself(microns in 1_u32..=2_000_000, tenths in 1_u32..=780_000) {
        let metric = mm(f64::from(microns) / 1000.0);
        prop_assert_eq!(read_mm(&print::mm(metric, 3)), in_mm(metric));
        let imperial = inch(f64::from(tenths) / 10_000.0);
        let read = length(&print::inch(imperial, 4), Bare::Ask).unwrap();
        prop_assert_eq!(print::inch(read, 4), print::inch(imperial, 4));
        prop_assert!((in_inch(read) - in_inch(imperial)).abs() < 1e-12);
    }

    #[test]
    fn space_case_and_comma_change_nothing(hundredths in 1_u32..=200_000, space in "[ \t\u{a0}\u{2009}]{0,3}") {
        let metric = mm(f64::from(hundredths) / 100.0);
        let printed = print::trimmed(in_mm(metric), 2);
        for number in [printed.clone(), printed.replace('.', ",")] {
            for unit in ["mm", "MM", "Millimetres"] {
                let typed = format!("{space}{number}{space}{unit}{space}");
                prop_assert_eq!(read_mm(&typed), in_mm(metric), "{:?}", typed);
            }
        }
    }

    #[test]
    fn a_fraction_reads_the_same_however_it_is_written(whole in 1_u8..=70, part in 1_u8..64) {
        let expected = inch(f64::from(whole) + f64::from(part) / 64.0);
        for typed in [
            format!("{whole} {part}/64"),
            format!("{whole}-{part}/64 in"),
            format!("{whole} {part}⁄64″"),
            format!("{whole}  {part} / 64 INCH"),
        ] {
            prop_assert_eq!(read_mm(&typed), in_mm(expected), "{:?}", typed);
        }
    }
}
