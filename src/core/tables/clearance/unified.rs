//! ASME B18.2.8 rows: the drills the standard names, in inches, and its metric drills.
//!
//! No. 12 and 9/16 in have no row in the standard.

use super::{Holes, Standard};
use crate::tables::source::Source;
use crate::units::Printed::{self, Inch, Mm};

/// Normal drills and loose limits agree with Machinery's Handbook 31st ed. p. 1741 wherever read.
const DRILLS: Source = Source::library(
    "ASME B18.2.8-1999 (R2017) drills; Machinery's Handbook 31st ed. p. 1741, table 1a, agrees where it was read",
);
const METRIC_DRILLS: Source = Source::published(
    "ASME B18.2.8-1999 (R2017) metric drills, Machinery's Handbook 31st ed. p. 1743 table 3a",
);
const UNOFFICIAL: Source =
    Source::library("a table of clearance holes; the size is not in ASME B18.2.8");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const fn mixed(whole: u8, numerator: u8, denominator: u8) -> Printed {
    Printed::mixed(whole, numerator, denominator)
}

const fn inch_drills(nominal: Printed, close: Printed, medium: Printed, free: Printed) -> Holes {
    Holes { standard: Standard::AsmeB1828, nominal, close, medium, free, source: DRILLS }
}

const fn metric_drills(nominal: Printed, close: f64, medium: f64, free: f64) -> Holes {
    Holes {
        standard: Standard::AsmeB1828Metric,
        nominal,
        close: Mm(close),
        medium: Mm(medium),
        free: Mm(free),
        source: METRIC_DRILLS,
    }
}

const fn unofficial(nominal: Printed, close: f64, medium: f64, free: f64) -> Holes {
    Holes {
        standard: Standard::Unofficial,
        nominal,
        close: Inch(close),
        medium: Inch(medium),
        free: Inch(free),
        source: UNOFFICIAL,
    }
}

/// Nominal diameter, then close, medium and free.
#[rustfmt::skip]
pub(super) static ROWS: &[Holes] = &[
    inch_drills(Inch(0.060), Inch(0.0670), Inch(0.0760), fraction(3, 32)), // #0: #51, #48, 3/32
    inch_drills(Inch(0.073), Inch(0.0810), Inch(0.0890), Inch(0.1040)), // #1: #46, #43, #37
    inch_drills(Inch(0.086), fraction(3, 32), Inch(0.1015), Inch(0.1160)), // #2: 3/32, #38, #32
    inch_drills(Inch(0.099), Inch(0.1065), Inch(0.1160), Inch(0.1285)), // #3: #36, #32, #30
    inch_drills(Inch(0.112), Inch(0.1200), Inch(0.1285), Inch(0.1440)), // #4: #31, #30, #27
    inch_drills(Inch(0.125), fraction(9, 64), fraction(5, 32), fraction(11, 64)), // #5: 9/64, 5/32, 11/64
    inch_drills(Inch(0.138), Inch(0.1540), Inch(0.1695), Inch(0.1850)), // #6: #23, #18, #13
    inch_drills(Inch(0.164), Inch(0.1800), Inch(0.1960), Inch(0.2130)), // #8: #15, #9, #3
    inch_drills(Inch(0.190), Inch(0.2055), Inch(0.2210), Inch(0.238)), // #10: #5, #2, B
    inch_drills(fraction(1, 4), fraction(17, 64), fraction(9, 32), fraction(19, 64)),
    inch_drills(fraction(5, 16), fraction(21, 64), fraction(11, 32), fraction(23, 64)),
    inch_drills(fraction(3, 8), fraction(25, 64), fraction(13, 32), fraction(27, 64)),
    inch_drills(fraction(7, 16), fraction(29, 64), fraction(15, 32), fraction(31, 64)),
    inch_drills(fraction(1, 2), fraction(17, 32), fraction(9, 16), fraction(39, 64)),
    inch_drills(fraction(5, 8), fraction(21, 32), fraction(11, 16), fraction(47, 64)),
    inch_drills(fraction(3, 4), fraction(25, 32), fraction(13, 16), fraction(29, 32)),
    inch_drills(fraction(7, 8), fraction(29, 32), fraction(15, 16), mixed(1, 1, 32)),
    inch_drills(mixed(1, 0, 1), mixed(1, 1, 32), mixed(1, 3, 32), mixed(1, 5, 32)),
    inch_drills(mixed(1, 1, 8), mixed(1, 5, 32), mixed(1, 7, 32), mixed(1, 5, 16)),
    inch_drills(mixed(1, 1, 4), mixed(1, 9, 32), mixed(1, 11, 32), mixed(1, 7, 16)),
    inch_drills(mixed(1, 3, 8), mixed(1, 7, 16), mixed(1, 1, 2), mixed(1, 39, 64)),
    inch_drills(mixed(1, 1, 2), mixed(1, 9, 16), mixed(1, 5, 8), mixed(1, 47, 64)),
    metric_drills(Inch(0.060), 1.7, 1.9, 2.4),
    metric_drills(Inch(0.099), 2.7, 2.9, 3.3),
    metric_drills(Inch(0.125), 3.6, 4.0, 4.4),
    metric_drills(Inch(0.138), 3.9, 4.3, 4.7),
    metric_drills(Inch(0.164), 4.6, 5.0, 5.4),
    metric_drills(Inch(0.190), 5.2, 5.6, 6.0),
    metric_drills(fraction(1, 4), 6.7, 7.1, 7.5),
    metric_drills(fraction(5, 16), 8.3, 8.7, 9.1),
    metric_drills(fraction(1, 2), 13.5, 14.25, 15.5),
    metric_drills(fraction(5, 8), 16.75, 17.5, 19.0),
    metric_drills(fraction(3, 4), 20.0, 20.5, 23.0),
    metric_drills(fraction(7, 8), 23.0, 24.0, 26.0),
    unofficial(Inch(0.216), 0.221, 0.228, 0.246),
    unofficial(fraction(9, 16), 0.5781, 0.5937, 0.6094),
];
