//! Letter drills A to Z, in decimals of an inch as ASME B94.11M prints them.

use super::{Drill, Series};
use crate::tables::source::Source;
use crate::units::inch;

/// Letter and diameter in inches, smallest first.
#[rustfmt::skip]
const SIZES: [(char, f64); 26] = [
    ('A', 0.234),
    ('B', 0.238),
    ('C', 0.242),
    ('D', 0.246),
    ('E', 0.250),
    ('F', 0.257),
    ('G', 0.261),
    ('H', 0.266),
    ('I', 0.272),
    ('J', 0.277),
    ('K', 0.281),
    ('L', 0.290),
    ('M', 0.295),
    ('N', 0.302),
    ('O', 0.316),
    ('P', 0.323),
    ('Q', 0.332),
    ('R', 0.339),
    ('S', 0.348),
    ('T', 0.358),
    ('U', 0.368),
    ('V', 0.377),
    ('W', 0.386),
    ('X', 0.397),
    ('Y', 0.404),
    ('Z', 0.413),
];

/// Read letter by letter.
const READ: Source = Source::published(
    "ASME B94.11M letter drills, as printed in a tool maker's decimal equivalents (A to P) and \
     Machinery's Handbook tap drill tables (Q, R, U, W, X, Y)",
);
/// Not met in a printed table; a CAD library and the series agree.
const LIBRARY: Source = Source::library("ASME B94.11M, letter drills");

/// Where the size of one letter was read.
pub(super) fn source(size: &str) -> Source {
    match size {
        "s" | "t" | "v" | "z" => LIBRARY,
        _ => READ,
    }
}

/// The drills of the series.
pub(super) fn drills() -> impl Iterator<Item = Drill> {
    SIZES.iter().map(|(letter, inches)| Drill {
        series: Series::Letter,
        size: letter.to_ascii_lowercase().to_string(),
        label: format!("Letter {letter}"),
        diameter: inch(*inches),
    })
}
