//! How figures are rounded in JSON: finer than on a page, without the noise of the last bits.

use holewright_core::tables::source::{Grade, Source};
use holewright_core::units::{
    Angle, Area, Frequency, Length, Velocity, in_degrees, in_inch, in_metres_per_minute, in_mm,
    in_mm2, in_rpm, print,
};

/// Millimetres to a tenth of a micrometre.
pub(super) fn mm(length: Length) -> f64 {
    print::round(in_mm(length), 4)
}

/// Inches to a millionth: a 64th is exact.
pub(super) fn inch(length: Length) -> f64 {
    print::round(in_inch(length), 6)
}

/// Square millimetres: two places as standards print them, four below one.
pub(super) fn mm2(area: Area) -> f64 {
    let area = in_mm2(area);
    print::round(area, if area < 1.0 { 4 } else { 2 })
}

/// A percentage to one place.
pub(super) fn percent(value: f64) -> f64 {
    print::round(value, 1)
}

/// Any other plain number to four places.
pub(super) fn number(value: f64) -> f64 {
    print::round(value, 4)
}

/// Degrees.
pub(super) fn degrees(angle: Angle) -> f64 {
    print::round(in_degrees(angle), 4)
}

/// Revolutions a minute, to a tenth.
pub(super) fn rpm(speed: Frequency) -> f64 {
    print::round(in_rpm(speed), 1)
}

/// Metres a minute.
pub(super) fn metres_per_minute(speed: Velocity) -> f64 {
    print::round(in_metres_per_minute(speed), 2)
}

/// A source in words; its grade stands behind it unless it was read.
pub(super) fn source(source: Source) -> String {
    match source.grade {
        Grade::Published => source.cite.to_owned(),
        grade => format!("{} ({grade})", source.cite),
    }
}
