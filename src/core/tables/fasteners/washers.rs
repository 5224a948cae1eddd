//! Plain washers of the normal series. British ones are in BS 3410, which could not be read: none is held.

use super::Washer;
use crate::tables::source::Source;
use crate::tables::threads::HeadFamily;
use crate::units::Printed::{self, Inch, Mm};

const ISO: Source = Source::library("ISO 7089, plain washers, normal series");
const ASME: Source = Source::library("ASME B18.21.1, plain washers of type B, regular");

const fn iso(nominal: f64, inside: f64, outside: f64, thickness: f64) -> Washer {
    Washer {
        family: HeadFamily::Metric,
        nominal: Mm(nominal),
        inside: Mm(inside),
        outside: Mm(outside),
        thickness: Mm(thickness),
        source: ISO,
    }
}

const fn asme(nominal: Printed, inside: f64, outside: f64, thickness: f64) -> Washer {
    Washer {
        family: HeadFamily::Unified,
        nominal,
        inside: Inch(inside),
        outside: Inch(outside),
        thickness: Inch(thickness),
        source: ASME,
    }
}

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

#[rustfmt::skip]
pub(super) static ROWS: &[Washer] = &[
    iso(1.6, 1.7, 4.0, 0.3),
    iso(2.0, 2.2, 5.0, 0.3),
    iso(2.5, 2.7, 6.0, 0.5),
    iso(3.0, 3.2, 7.0, 0.5),
    iso(4.0, 4.3, 9.0, 0.8),
    iso(5.0, 5.3, 10.0, 1.0),
    iso(6.0, 6.4, 12.0, 1.6),
    iso(8.0, 8.4, 16.0, 1.6),
    iso(10.0, 10.5, 20.0, 2.0),
    iso(12.0, 13.0, 24.0, 2.5),
    iso(16.0, 17.0, 30.0, 3.0),
    iso(20.0, 21.0, 37.0, 3.0),
    iso(24.0, 25.0, 44.0, 4.0),
    iso(30.0, 31.0, 56.0, 4.0),
    iso(36.0, 37.0, 66.0, 5.0),
    iso(42.0, 45.0, 78.0, 8.0),
    iso(48.0, 52.0, 92.0, 8.0),
    iso(56.0, 62.0, 105.0, 10.0),
    iso(64.0, 70.0, 115.0, 10.0),
    asme(Inch(0.060), 0.068, 0.188, 0.025),
    asme(Inch(0.073), 0.084, 0.219, 0.025),
    asme(Inch(0.086), 0.094, 0.250, 0.032),
    asme(Inch(0.099), 0.109, 0.312, 0.032),
    asme(Inch(0.112), 0.125, 0.375, 0.040),
    asme(Inch(0.125), 0.141, 0.406, 0.040),
    asme(Inch(0.138), 0.156, 0.438, 0.040),
    asme(Inch(0.164), 0.188, 0.500, 0.040),
    asme(Inch(0.190), 0.203, 0.562, 0.040),
    asme(Inch(0.216), 0.234, 0.625, 0.063),
    asme(fraction(1, 4), 0.281, 0.734, 0.063),
    asme(fraction(5, 16), 0.344, 0.875, 0.063),
    asme(fraction(3, 8), 0.406, 1.000, 0.063),
    asme(fraction(7, 16), 0.469, 1.125, 0.063),
    asme(fraction(1, 2), 0.531, 1.250, 0.100),
];
