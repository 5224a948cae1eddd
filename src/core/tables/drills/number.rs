//! Number drills 97 to 1, in decimals of an inch as ASME B94.11M prints them.
//!
//! The sizes follow no rule. A CAD library rounds six of them (5, 10, 18, 25, 28 and 69) to three
//! places; the four-place figures stand here.

use super::{Drill, Series};
use crate::tables::source::Source;
use crate::units::inch;

/// Number and diameter in inches, smallest first.
#[rustfmt::skip]
const SIZES: [(u8, f64); 97] = [
    (97, 0.0059),
    (96, 0.0063),
    (95, 0.0067),
    (94, 0.0071),
    (93, 0.0075),
    (92, 0.0079),
    (91, 0.0083),
    (90, 0.0087),
    (89, 0.0091),
    (88, 0.0095),
    (87, 0.0100),
    (86, 0.0105),
    (85, 0.0110),
    (84, 0.0115),
    (83, 0.0120),
    (82, 0.0125),
    (81, 0.0130),
    (80, 0.0135),
    (79, 0.0145),
    (78, 0.0160),
    (77, 0.0180),
    (76, 0.0200),
    (75, 0.0210),
    (74, 0.0225),
    (73, 0.0240),
    (72, 0.0250),
    (71, 0.0260),
    (70, 0.0280),
    (69, 0.0292),
    (68, 0.0310),
    (67, 0.0320),
    (66, 0.0330),
    (65, 0.0350),
    (64, 0.0360),
    (63, 0.0370),
    (62, 0.0380),
    (61, 0.0390),
    (60, 0.0400),
    (59, 0.0410),
    (58, 0.0420),
    (57, 0.0430),
    (56, 0.0465),
    (55, 0.0520),
    (54, 0.0550),
    (53, 0.0595),
    (52, 0.0635),
    (51, 0.0670),
    (50, 0.0700),
    (49, 0.0730),
    (48, 0.0760),
    (47, 0.0785),
    (46, 0.0810),
    (45, 0.0820),
    (44, 0.0860),
    (43, 0.0890),
    (42, 0.0935),
    (41, 0.0960),
    (40, 0.0980),
    (39, 0.0995),
    (38, 0.1015),
    (37, 0.1040),
    (36, 0.1065),
    (35, 0.1100),
    (34, 0.1110),
    (33, 0.1130),
    (32, 0.1160),
    (31, 0.1200),
    (30, 0.1285),
    (29, 0.1360),
    (28, 0.1405),
    (27, 0.1440),
    (26, 0.1470),
    (25, 0.1495),
    (24, 0.1520),
    (23, 0.1540),
    (22, 0.1570),
    (21, 0.1590),
    (20, 0.1610),
    (19, 0.1660),
    (18, 0.1695),
    (17, 0.1730),
    (16, 0.1770),
    (15, 0.1800),
    (14, 0.1820),
    (13, 0.1850),
    (12, 0.1890),
    (11, 0.1910),
    (10, 0.1935),
    (9, 0.1960),
    (8, 0.1990),
    (7, 0.2010),
    (6, 0.2040),
    (5, 0.2055),
    (4, 0.2090),
    (3, 0.2130),
    (2, 0.2210),
    (1, 0.2280),
];

/// Read number by number.
const READ: Source = Source::published(
    "ASME B94.11M number drills, as printed in Drills, Sizes, Threads & Preferred Sizes, 2007 (97 to 53), a tool maker's decimal equivalents (45 to 22 and 4 to 1) and Machinery's Handbook 31st ed., tap drill tables",
);
/// Not met in a printed table; a parts library and the series agree.
const LIBRARY: Source = Source::library("ASME B94.11M, number drills");
/// The parts library rounds it to 0.205 in.
const RECALLED: Source = Source::memory("ASME B94.11M, No. 5 recalled as 0.2055 in");

/// Where the size of one number was read.
pub(super) fn source(size: &str) -> Source {
    match size {
        "5" => RECALLED,
        "6" | "8" | "11" | "13" | "15" | "17" | "19" | "51" => LIBRARY,
        _ => READ,
    }
}

/// The drills of the series.
pub(super) fn drills() -> impl Iterator<Item = Drill> {
    SIZES.iter().map(|(number, inches)| Drill {
        series: Series::Number,
        size: number.to_string(),
        label: format!("No. {number}"),
        diameter: inch(*inches),
    })
}
