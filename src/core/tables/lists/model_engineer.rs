//! Tapping lists for the brass thread and the Model Engineer threads: club lists, no standard.
//!
//! The two lists do not agree: one lies at 64 to 82 % of full thread depth, the other at 87 to 107.

use super::{List, ListedDrill};
use crate::tables::source::Source;
use crate::tables::threads::SystemId;
use crate::units::Printed::{self, Inch, Mm};

const CLUB: Source =
    Source::published("a model engineers' club list, p. 30, about 75 % depth of thread, for steel");
const STEAMERS: Source = Source::published("a live steam society's tables of British threads");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const CLUB_BRASS: List =
    List { name: "model engineers' list", system: SystemId::Bsb, source: CLUB };
const CLUB_40: List = List { name: "model engineers' list", system: SystemId::Me40, source: CLUB };
const CLUB_32: List = List { name: "model engineers' list", system: SystemId::Me32, source: CLUB };
const CLUB_26: List = List { name: "model engineers' list", system: SystemId::Me26, source: CLUB };
const STEAMERS_40: List =
    List { name: "live steamers' list", system: SystemId::Me40, source: STEAMERS };
const STEAMERS_32: List =
    List { name: "live steamers' list", system: SystemId::Me32, source: STEAMERS };

/// Size, drill, and the drill as the list names it.
#[rustfmt::skip]
pub(super) static ROWS: &[ListedDrill] = &[
    CLUB_BRASS.row("1-4", Mm(5.6), "5.6 mm"),
    CLUB_BRASS.row("1-4", Inch(0.2210), "No. 2"),
    CLUB_BRASS.row("9-32", Mm(6.35), "6.35 mm"),
    CLUB_BRASS.row("9-32", Inch(0.250), "Letter E"),
    CLUB_BRASS.row("5-16", Mm(7.15), "7.15 mm"),
    CLUB_BRASS.row("5-16", Inch(0.281), "Letter K"),
    CLUB_BRASS.row("3-8", Mm(8.8), "8.8 mm"),
    CLUB_BRASS.row("3-8", Inch(0.348), "Letter S"),
    CLUB_BRASS.row("7-16", Mm(10.3), "10.3 mm"),
    CLUB_BRASS.row("7-16", Inch(0.404), "Letter Y"),
    CLUB_BRASS.row("1-2", Mm(11.9), "11.9 mm"),
    CLUB_BRASS.row("1-2", fraction(15, 32), "15/32 in"),
    CLUB_40.row("1-8", Mm(2.6), "2.6 mm"),
    CLUB_40.row("1-8", Inch(0.1015), "No. 38"),
    CLUB_40.row("5-32", Mm(3.3), "3.3 mm"),
    CLUB_40.row("5-32", Inch(0.1285), "No. 30"),
    CLUB_40.row("3-16", Mm(4.1), "4.1 mm"),
    CLUB_40.row("3-16", Inch(0.1610), "No. 20"),
    CLUB_40.row("7-32", Mm(5.0), "5 mm"),
    CLUB_40.row("7-32", Inch(0.1960), "No. 9"),
    CLUB_40.row("1-4", Mm(5.8), "5.8 mm"),
    CLUB_40.row("1-4", Inch(0.2280), "No. 1"),
    CLUB_32.row("9-32", Mm(6.35), "6.35 mm"),
    CLUB_32.row("9-32", Inch(0.250), "Letter E"),
    CLUB_32.row("5-16", Mm(7.15), "7.15 mm"),
    CLUB_32.row("5-16", fraction(9, 32), "9/32 in"),
    CLUB_32.row("3-8", Mm(8.75), "8.75 mm"),
    CLUB_32.row("3-8", fraction(11, 32), "11/32 in"),
    CLUB_26.row("7-16", Mm(10.1), "10.1 mm"),
    CLUB_26.row("7-16", Inch(0.397), "Letter X"),
    CLUB_26.row("1-2", Mm(11.9), "11.9 mm"),
    CLUB_26.row("1-2", fraction(15, 32), "15/32 in"),
    STEAMERS_40.row("5-32", Inch(0.1285), "No. 30"),
    STEAMERS_40.row("3-8", fraction(11, 32), "11/32 in"),
    STEAMERS_32.row("5-16", Inch(0.277), "Letter J"),
    STEAMERS_32.row("3-8", Inch(0.332), "Letter Q").with_note("Below the minor diameter of 0.335 in: a tap will not follow"),
];
