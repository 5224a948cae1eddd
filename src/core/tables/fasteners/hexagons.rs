//! Hexagons of bolts and nuts.

use super::{Hexagon, HexagonPattern};
use crate::tables::source::Source;
use crate::units::Printed::{self, Inch, Mm};

/// Where the rule of the BA hexagon comes from: across flats is 1¾ times the major diameter.
pub const BA_RULE: Source =
    Source::published("an encyclopedia, British Association screw threads, across flats");

const BS_1083: Source =
    Source::published("BS 1083:1965, Machinery's Handbook 31st ed., British Fasteners, table 1");
const BS_1083_TABLES: Source = Source::published("BS 1083, tables 1 and 2, as transcribed");
const BSF_NUT: Source = Source::published("an encyclopedia, British Standard Fine, nut sizes");
const OLD_SPANNERS: Source = Source::published("an encyclopedia, equivalent sizes of spanners");
const ISO: Source = Source::published("ISO 4014 and ISO 4017, a fastener supplier's table");
const ISO_LIBRARY: Source = Source::library("ISO 4014, ISO 4017 and ISO 4032");
const DIN_UNIVERSITY: Source =
    Source::published("DIN 931, 933 and 934, a university's table of metric bolts");
const DIN_LIBRARY: Source = Source::library("DIN 931");
const ASME: Source = Source::library("ASME B18.2.1 bolts and ASME B18.2.2 nuts");
const MEMORY: Source = Source::memory("recalled, no source read");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const fn mixed(whole: u8, numerator: u8, denominator: u8) -> Printed {
    Printed::mixed(whole, numerator, denominator)
}

/// Across flats, across corners, head and nut, all of them the largest, in inches.
const fn bs_1083(nominal: Printed, sizes: [f64; 4], source: Source) -> Hexagon {
    let [flats, corners, head, nut] = sizes;
    Hexagon {
        pattern: HexagonPattern::Bs1083,
        nominal,
        across_flats: Inch(flats),
        across_corners: Some(Inch(corners)),
        head: Some(Inch(head)),
        nut: Some(Inch(nut)),
        nut_across_flats: None,
        source,
    }
}

const fn flats_only(
    pattern: HexagonPattern,
    nominal: Printed,
    across_flats: Printed,
    source: Source,
) -> Hexagon {
    Hexagon {
        pattern,
        nominal,
        across_flats,
        across_corners: None,
        head: None,
        nut: None,
        nut_across_flats: None,
        source,
    }
}

const fn old(nominal: Printed, flats: f64, source: Source) -> Hexagon {
    flats_only(HexagonPattern::OldWhitworth, nominal, Inch(flats), source)
}

/// Diameter, across flats, head and nut, then across corners where a source prints it.
const fn iso(sizes: [f64; 4], corners: Option<Printed>, source: Source) -> Hexagon {
    let [nominal, flats, head, nut] = sizes;
    Hexagon {
        pattern: HexagonPattern::Iso,
        nominal: Mm(nominal),
        across_flats: Mm(flats),
        across_corners: corners,
        head: Some(Mm(head)),
        nut: Some(Mm(nut)),
        nut_across_flats: None,
        source,
    }
}

const fn din(nominal: f64, flats: f64, source: Source) -> Hexagon {
    flats_only(HexagonPattern::OldMetric, Mm(nominal), Mm(flats), source)
}

/// Across flats and head of the bolt as fractions, and the nut's middle thickness.
const fn asme(nominal: Printed, flats: Printed, head: Printed, nut: f64) -> Hexagon {
    Hexagon {
        pattern: HexagonPattern::UnifiedBolt,
        nominal,
        across_flats: flats,
        across_corners: None,
        head: Some(head),
        nut: Some(Inch(nut)),
        nut_across_flats: None,
        source: ASME,
    }
}

const fn small(nominal: f64, flats: Printed) -> Hexagon {
    flats_only(HexagonPattern::UnifiedSmall, Inch(nominal), flats, MEMORY)
}

#[rustfmt::skip]
pub(super) static ROWS: &[Hexagon] = &[
    flats_only(HexagonPattern::Bs1083, fraction(3, 16), Mm(8.59), BSF_NUT),
    bs_1083(fraction(1, 4), [0.445, 0.51, 0.176, 0.200], BS_1083),
    bs_1083(fraction(5, 16), [0.525, 0.61, 0.218, 0.250], BS_1083_TABLES),
    bs_1083(fraction(3, 8), [0.600, 0.69, 0.260, 0.312], BS_1083),
    bs_1083(fraction(7, 16), [0.710, 0.82, 0.302, 0.375], BS_1083),
    bs_1083(fraction(1, 2), [0.820, 0.95, 0.343, 0.437], BS_1083),
    bs_1083(fraction(9, 16), [0.920, 1.06, 0.375, 0.500], BS_1083),
    bs_1083(fraction(5, 8), [1.010, 1.17, 0.417, 0.562], BS_1083),
    bs_1083(fraction(3, 4), [1.200, 1.39, 0.500, 0.687], BS_1083),
    bs_1083(fraction(7, 8), [1.300, 1.50, 0.583, 0.750], BS_1083),
    bs_1083(mixed(1, 0, 1), [1.480, 1.71, 0.666, 0.875], BS_1083_TABLES),
    bs_1083(mixed(1, 1, 8), [1.670, 1.93, 0.750, 1.000], BS_1083),
    bs_1083(mixed(1, 1, 4), [1.860, 2.15, 0.830, 1.125], BS_1083_TABLES),
    bs_1083(mixed(1, 3, 8), [2.050, 2.37, 0.920, 1.250], BS_1083),
    bs_1083(mixed(1, 1, 2), [2.220, 2.56, 1.000, 1.375], BS_1083),
    bs_1083(mixed(1, 3, 4), [2.580, 2.98, 1.170, 1.625], BS_1083),
    bs_1083(mixed(2, 0, 1), [2.760, 3.19, 1.330, 1.750], BS_1083),
    old(fraction(3, 16), 0.445, OLD_SPANNERS),
    old(fraction(1, 4), 0.525, OLD_SPANNERS),
    old(fraction(5, 16), 0.600, OLD_SPANNERS),
    old(fraction(3, 8), 0.710, MEMORY),
    old(fraction(7, 16), 0.820, OLD_SPANNERS),
    old(fraction(1, 2), 0.920, OLD_SPANNERS),
    old(fraction(9, 16), 1.010, OLD_SPANNERS),
    iso([1.6, 3.2, 1.1, 1.3], Some(Mm(3.48)), ISO),
    iso([2.0, 4.0, 1.4, 1.6], None, ISO_LIBRARY),
    iso([2.5, 5.0, 1.7, 2.0], Some(Mm(5.45)), ISO),
    iso([3.0, 5.5, 2.0, 2.4], None, ISO_LIBRARY),
    iso([3.5, 6.0, 2.4, 2.8], None, ISO_LIBRARY),
    iso([4.0, 7.0, 2.8, 3.2], Some(Mm(7.66)), ISO),
    iso([5.0, 8.0, 3.5, 4.7], Some(Mm(8.79)), ISO),
    iso([6.0, 10.0, 4.0, 5.2], None, ISO_LIBRARY),
    iso([8.0, 13.0, 5.3, 6.8], None, ISO_LIBRARY),
    iso([10.0, 16.0, 6.4, 8.4], Some(Mm(17.77)), ISO),
    iso([12.0, 18.0, 7.5, 10.8], None, ISO_LIBRARY),
    iso([14.0, 21.0, 8.8, 12.8], Some(Mm(23.36)), ISO),
    iso([16.0, 24.0, 10.0, 14.8], Some(Mm(26.75)), ISO),
    iso([18.0, 27.0, 11.5, 15.8], Some(Mm(30.14)), ISO),
    iso([20.0, 30.0, 12.5, 18.0], Some(Mm(33.53)), ISO),
    iso([22.0, 34.0, 14.0, 19.4], None, ISO_LIBRARY),
    iso([24.0, 36.0, 15.0, 21.5], None, ISO_LIBRARY),
    din(10.0, 17.0, DIN_UNIVERSITY),
    din(12.0, 19.0, DIN_UNIVERSITY),
    din(14.0, 22.0, DIN_LIBRARY),
    din(22.0, 32.0, DIN_LIBRARY),
    small(0.060, fraction(5, 32)),
    small(0.073, fraction(5, 32)),
    small(0.086, fraction(3, 16)),
    small(0.099, fraction(3, 16)),
    small(0.112, fraction(1, 4)),
    small(0.125, fraction(5, 16)),
    small(0.138, fraction(5, 16)),
    small(0.164, fraction(11, 32)),
    small(0.190, fraction(3, 8)),
    small(0.216, fraction(7, 16)),
    asme(fraction(1, 4), fraction(7, 16), fraction(11, 64), 0.219),
    asme(fraction(5, 16), fraction(1, 2), fraction(7, 32), 0.2655),
    asme(fraction(3, 8), fraction(9, 16), fraction(1, 4), 0.3285),
    Hexagon { nut_across_flats: Some(fraction(11, 16)), ..asme(fraction(7, 16), fraction(5, 8), fraction(19, 64), 0.375) },
    asme(fraction(1, 2), fraction(3, 4), fraction(11, 32), 0.4375),
    asme(fraction(5, 8), fraction(15, 16), fraction(27, 64), 0.547),
    asme(fraction(3, 4), mixed(1, 1, 8), fraction(1, 2), 0.641),
    asme(fraction(7, 8), mixed(1, 5, 16), fraction(37, 64), 0.750),
    asme(mixed(1, 0, 1), mixed(1, 1, 2), fraction(43, 64), 0.859),
];
