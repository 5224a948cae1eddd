//! Every unit goes in and comes out again, and each is worth what its definition says.

use holewright_core::units::{
    Fraction, Pitch, Printed, degrees, grams_per_cm3, in_degrees, in_grams_per_cm3, in_inch,
    in_metres_per_minute, in_mm, in_mm2, in_newtons_per_mm2, in_rpm, in_seconds, inch, ksi,
    metres_per_minute, mm, newtons_per_mm2, rpm,
};

#[track_caller]
fn check(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-12 * expected.abs().max(1.0), "{found}, not {expected}");
}

#[test]
fn what_goes_in_comes_out() {
    for value in [0.0, 1.0, 2.65, 118.0] {
        check(in_mm(mm(value)), value);
        check(in_inch(inch(value)), value);
        check(in_rpm(rpm(value)), value);
        check(in_metres_per_minute(metres_per_minute(value)), value);
        check(in_degrees(degrees(value)), value);
        check(in_grams_per_cm3(grams_per_cm3(value)), value);
        check(in_newtons_per_mm2(newtons_per_mm2(value)), value);
    }
}

#[test]
fn the_units_hang_together() {
    check(in_mm(inch(1.0)), 25.4);
    check(in_mm2(mm(2.0) * mm(3.0)), 6.0);
    // 12 m/min over 100 mm takes half a second, and 100 rev/min is 0.6 s a turn.
    check(in_seconds(mm(100.0) / metres_per_minute(12.0)), 0.5);
    check(in_metres_per_minute(mm(50.0) * rpm(100.0)), 5.0);
    // The radian: half a turn is π of them.
    check(degrees(180.0).value, std::f64::consts::PI);
    // A thousand kilograms in a cubic metre is a gram in a cubic centimetre: 10⁻⁶ kg in a cubic millimetre.
    check(grams_per_cm3(1.0).value, 1e-6);
}

#[test]
fn a_thousand_pounds_a_square_inch_is_6_894757_newtons() {
    // 4.448 221 615 260 5 N is a pound-force; 25.4 mm an inch.
    check(in_newtons_per_mm2(ksi(1.0)), 6.894_757_293_168_361);
    check(in_newtons_per_mm2(ksi(36.0)), 36.0 * 6.894_757_293_168_361);
}

#[test]
fn sizes_are_worth_what_they_are_printed_as() {
    check(in_mm(Printed::Mm(2.65).length()), 2.65);
    check(in_mm(Printed::Inch(0.1065).length()), 2.7051);
    check(in_inch(Printed::fraction(7, 64).length()), 0.109_375);
    check(in_inch(Printed::mixed(1, 1, 4).length()), 1.25);
    check(in_mm(Pitch::Mm(0.59).length()), 0.59);
    check(Pitch::Mm(0.635).threads_per_inch(), 40.0);
    check(in_mm(Pitch::PerInch(40.0).length()), 0.635);
    check(Pitch::PerInch(11.5).threads_per_inch(), 11.5);
}

#[test]
fn a_fraction_is_written_as_on_a_drawing() {
    let written =
        |whole, numerator, denominator| Fraction { whole, numerator, denominator }.to_string();
    assert_eq!(written(0, 1, 4), "1/4");
    assert_eq!(written(1, 1, 4), "1 1/4");
    assert_eq!(written(2, 0, 1), "2");
    assert_eq!(written(0, 0, 1), "0");
}
