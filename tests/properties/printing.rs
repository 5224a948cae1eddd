//! Figures on their way out: rounded once, the way a person rounds, and no digit more.

use holewright_core::units::print::{
    fixed, inch, mm, percent, round, running, sentence, significant, trimmed,
};
use holewright_core::units::{in_mm, inch as inches, mm as millimetres};

#[test]
fn a_half_rounds_away_from_zero_at_every_place() {
    for (places, value, rounded) in [
        (0, 2.5, "3"),
        (1, 0.25, "0.3"),
        (2, 2.675, "2.68"),
        (3, 1.0005, "1.001"),
        (4, 0.104_35, "0.1044"),
        (5, 0.000_015, "0.00002"),
        (6, 1.000_000_5, "1.000001"),
        (7, 0.000_000_15, "0.0000002"),
        (8, 0.000_000_015, "0.00000002"),
        (9, 0.000_000_001_5, "0.000000002"),
    ] {
        assert_eq!(fixed(value, places), rounded);
        assert_eq!(fixed(-value, places), format!("-{rounded}"));
    }
    assert_eq!((fixed(2.4, 0).as_str(), fixed(2.674, 2).as_str()), ("2", "2.67"));
}

#[test]
fn what_rounds_to_nothing_has_no_sign() {
    assert!(round(-0.004, 2).is_sign_positive());
    assert_eq!((fixed(-0.004, 2).as_str(), trimmed(-0.4, 0).as_str()), ("0.00", "0"));
}

#[test]
fn sizes_are_printed_with_their_unit() {
    assert_eq!(mm(millimetres(2.650_4), 3), "2.65 mm");
    assert_eq!(inch(millimetres(2.65), 4), "0.1043 in");
    assert_eq!(inch(inches(0.25), 4), "0.2500 in");
    assert_eq!(percent(69.94), "69.9 %");
    assert_eq!(percent(70.0), "70.0 %");
    assert!((in_mm(inches(1.0)) - 25.4).abs() < 1e-12);
}

#[test]
fn a_dial_is_read_to_two_figures() {
    for (speed, read) in [
        (0.0, 0.0),
        (7.4, 7.0),
        (84.9, 85.0),
        (99.4, 99.0),
        (100.0, 100.0),
        (104.9, 100.0),
        (155.0, 160.0),
        (2971.0, 3000.0),
        (12_345.0, 12_000.0),
        (199_999.0, 200_000.0),
    ] {
        assert_eq!((significant(speed, 2), significant(-speed, 2)), (read, -read));
    }
    assert_eq!((significant(2971.0, 3), significant(2971.0, 1)), (2970.0, 3000.0));
}

#[test]
fn words_begin_as_their_place_asks() {
    assert_eq!(sentence("grey cast iron"), "Grey cast iron");
    assert_eq!(sentence("ängstrom"), "Ängstrom");
    assert_eq!((sentence(""), running("")), (String::new(), String::new()));
    assert_eq!(running("It holds lead."), "it holds lead.");
    assert_eq!(running("A drill"), "a drill");
    assert_eq!(running("PTFE creeps."), "PTFE creeps.");
    assert_eq!((running("A4"), running("A")), ("A4".to_owned(), "A".to_owned()));
}
