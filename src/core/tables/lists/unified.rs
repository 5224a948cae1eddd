//! Unified tapping lists: the handbook's where it was read, a tap maker's and a chart for the rest.
//!
//! The handbook and the tap maker agree wherever both were read; each size stands once.

use super::{List, ListedDrill};
use crate::tables::source::Source;
use crate::tables::threads::SystemId;
use crate::units::Printed::{self, Inch, Mm};

const HANDBOOK: Source = Source::published(
    "Machinery's Handbook 31st ed. p. 2168, table 4, tap drills, threads of American National form",
);
const HANDBOOK_SCREWS: Source = Source::published(
    "Machinery's Handbook, tap drills for machine screws with American National form, \
     as copied in public notes (4014-docs, hole size)",
);
const MAKER: Source = Source::published("a tap maker's tap drill sizes, Unified thread, p. 390");
const CHART: Source = Source::library("a 75 % tap drill chart");
const LIBRARY: Source = Source::library("core holes for UNEF");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const fn mixed(whole: u8, numerator: u8, denominator: u8) -> Printed {
    Printed::mixed(whole, numerator, denominator)
}

const SCREWS_UNC: List =
    List { name: "Machinery's Handbook", system: SystemId::Unc, source: HANDBOOK_SCREWS };
const SCREWS_UNF: List =
    List { name: "Machinery's Handbook", system: SystemId::Unf, source: HANDBOOK_SCREWS };
const SCREWS_UNS: List =
    List { name: "Machinery's Handbook", system: SystemId::Uns, source: HANDBOOK_SCREWS };
const HANDBOOK_UNC: List =
    List { name: "Machinery's Handbook", system: SystemId::Unc, source: HANDBOOK };
const HANDBOOK_UNF: List =
    List { name: "Machinery's Handbook", system: SystemId::Unf, source: HANDBOOK };
const HANDBOOK_UNEF: List =
    List { name: "Machinery's Handbook", system: SystemId::Unef, source: HANDBOOK };
const HANDBOOK_UNS: List =
    List { name: "Machinery's Handbook", system: SystemId::Uns, source: HANDBOOK };
const MAKER_UNC: List = List { name: "tap maker's list", system: SystemId::Unc, source: MAKER };
const MAKER_UNF: List = List { name: "tap maker's list", system: SystemId::Unf, source: MAKER };
const CHART_UNEF: List = List { name: "75 % chart", system: SystemId::Unef, source: CHART };
const LIBRARY_UNEF: List =
    List { name: "core holes, parts library", system: SystemId::Unef, source: LIBRARY };

/// Size, drill, and the drill as the list names it.
#[rustfmt::skip]
pub(super) static ROWS: &[ListedDrill] = &[
    SCREWS_UNC.row("1-64", Inch(0.0595), "No. 53"),
    SCREWS_UNC.row("2-56", Inch(0.0700), "No. 50"),
    SCREWS_UNC.row("3-48", Inch(0.0785), "No. 47"),
    SCREWS_UNC.row("4-40", Inch(0.0890), "No. 43"),
    SCREWS_UNC.row("5-40", Inch(0.1015), "No. 38"),
    SCREWS_UNC.row("6-32", Inch(0.1065), "No. 36"),
    SCREWS_UNC.row("8-32", Inch(0.1360), "No. 29"),
    SCREWS_UNC.row("10-24", Inch(0.1495), "No. 25"),
    SCREWS_UNC.row("12-24", Inch(0.1770), "No. 16"),
    SCREWS_UNF.row("0-80", fraction(3, 64), "3/64 in"),
    SCREWS_UNF.row("1-72", Inch(0.0595), "No. 53"),
    SCREWS_UNF.row("2-64", Inch(0.0700), "No. 50"),
    SCREWS_UNF.row("3-56", Inch(0.0820), "No. 45"),
    SCREWS_UNF.row("4-48", Inch(0.0935), "No. 42"),
    SCREWS_UNF.row("5-44", Inch(0.1040), "No. 37"),
    SCREWS_UNF.row("6-40", Inch(0.1130), "No. 33"),
    SCREWS_UNF.row("8-36", Inch(0.1360), "No. 29"),
    SCREWS_UNF.row("10-32", Inch(0.1590), "No. 21"),
    SCREWS_UNF.row("12-28", Inch(0.1820), "No. 14"),
    SCREWS_UNF.row("3-8-24", Inch(0.332), "Letter Q"),
    HANDBOOK_UNC.row("1-4-20", Inch(0.2010), "No. 7"),
    HANDBOOK_UNC.row("5-16-18", Inch(0.257), "Letter F"),
    HANDBOOK_UNC.row("3-8-16", fraction(5, 16), "5/16 in"),
    HANDBOOK_UNC.row("7-16-14", Inch(0.368), "Letter U"),
    HANDBOOK_UNC.row("1-2-13", fraction(27, 64), "27/64 in"),
    HANDBOOK_UNC.row("3-4-10", fraction(21, 32), "21/32 in"),
    HANDBOOK_UNC.row("7-8-9", fraction(49, 64), "49/64 in"),
    HANDBOOK_UNC.row("1-8", fraction(7, 8), "7/8 in"),
    HANDBOOK_UNC.row("1-1-8-7", fraction(63, 64), "63/64 in"),
    HANDBOOK_UNC.row("1-3-8-6", mixed(1, 7, 32), "1 7/32 in"),
    HANDBOOK_UNF.row("1-4-28", Inch(0.2130), "No. 3"),
    HANDBOOK_UNF.row("5-16-24", Inch(0.272), "Letter I"),
    HANDBOOK_UNF.row("7-16-20", fraction(25, 64), "25/64 in"),
    HANDBOOK_UNF.row("1-2-20", fraction(29, 64), "29/64 in"),
    HANDBOOK_UNF.row("5-8-18", fraction(37, 64), "37/64 in"),
    HANDBOOK_UNF.row("3-4-16", fraction(11, 16), "11/16 in"),
    HANDBOOK_UNF.row("7-8-14", fraction(13, 16), "13/16 in"),
    HANDBOOK_UNF.row("1-12", fraction(59, 64), "59/64 in"),
    HANDBOOK_UNF.row("1-1-8-12", mixed(1, 3, 64), "1 3/64 in"),
    HANDBOOK_UNF.row("1-1-4-12", mixed(1, 11, 64), "1 11/64 in"),
    HANDBOOK_UNF.row("1-3-8-12", mixed(1, 19, 64), "1 19/64 in"),
    HANDBOOK_UNF.row("1-1-2-12", mixed(1, 27, 64), "1 27/64 in"),
    HANDBOOK_UNEF.row("1-4-32", fraction(7, 32), "7/32 in"),
    HANDBOOK_UNEF.row("5-16-32", fraction(9, 32), "9/32 in"),
    HANDBOOK_UNS.row("1-4-24", Inch(0.2090), "No. 4"),
    HANDBOOK_UNS.row("1-4-27", Inch(0.2130), "No. 3"),
    HANDBOOK_UNS.row("5-16-27", Inch(0.277), "Letter J"),
    HANDBOOK_UNS.row("3-8-27", Inch(0.339), "Letter R"),
    HANDBOOK_UNS.row("7-16-24", Inch(0.397), "Letter X"),
    HANDBOOK_UNS.row("7-16-27", Inch(0.404), "Letter Y"),
    HANDBOOK_UNS.row("1-2-12", fraction(27, 64), "27/64 in"),
    HANDBOOK_UNS.row("1-2-27", fraction(15, 32), "15/32 in"),
    HANDBOOK_UNS.row("1-14", fraction(15, 16), "15/16 in"),
    SCREWS_UNS.row("4-36", Inch(0.0860), "No. 44"),
    MAKER_UNC.row("9-16-12", fraction(31, 64), "31/64 in"),
    MAKER_UNC.row("5-8-11", fraction(17, 32), "17/32 in"),
    MAKER_UNC.row("1-1-4-7", mixed(1, 7, 64), "1 7/64 in"),
    MAKER_UNC.row("1-1-2-6", mixed(1, 11, 32), "1 11/32 in"),
    MAKER_UNF.row("9-16-18", fraction(33, 64), "33/64 in"),
    CHART_UNEF.row("12-32", Inch(0.1850), "No. 13"),
    CHART_UNEF.row("3-8-32", fraction(11, 32), "11/32 in"),
    CHART_UNEF.row("7-16-28", Inch(0.404), "Letter Y"),
    CHART_UNEF.row("1-2-28", fraction(15, 32), "15/32 in"),
    CHART_UNEF.row("9-16-24", fraction(33, 64), "33/64 in"),
    CHART_UNEF.row("5-8-24", fraction(37, 64), "37/64 in"),
    CHART_UNEF.row("11-16-24", fraction(41, 64), "41/64 in"),
    CHART_UNEF.row("3-4-20", fraction(45, 64), "45/64 in"),
    CHART_UNEF.row("13-16-20", fraction(49, 64), "49/64 in"),
    CHART_UNEF.row("7-8-20", fraction(53, 64), "53/64 in"),
    CHART_UNEF.row("15-16-20", fraction(57, 64), "57/64 in"),
    CHART_UNEF.row("1-20", fraction(61, 64), "61/64 in"),
    LIBRARY_UNEF.row("1-1-16-18", Mm(25.8), "25.8 mm"),
    LIBRARY_UNEF.row("1-1-8-18", Mm(27.35), "27.35 mm"),
    LIBRARY_UNEF.row("1-1-4-18", Mm(30.55), "30.55 mm"),
    LIBRARY_UNEF.row("1-5-16-18", Mm(32.1), "32.1 mm"),
    LIBRARY_UNEF.row("1-3-8-18", Mm(33.7), "33.7 mm"),
    LIBRARY_UNEF.row("1-7-16-18", Mm(35.3), "35.3 mm"),
    LIBRARY_UNEF.row("1-1-2-18", Mm(36.9), "36.9 mm"),
];
