//! BSW, BSF and BA tapping lists: BS 1157 as far as it is held, and lists of clubs and trainers.
//!
//! Left out: a rule of thumb that has No. 54 for 8 BA, below its minor diameter, and an
//! encyclopedia's 26.50 for 1 1/8 in BSF, a slip for 25.50.

use super::{List, ListedDrill};
use crate::tables::source::Source;
use crate::tables::threads::SystemId;
use crate::units::Printed::{self, Inch, Mm};

/// The standard itself was not read. The library cites it for BSF and is silent for BSW.
const HELD_BSW: Source = Source::library("BS 1157 sizes for BSW");
const HELD_BSF: Source = Source::library("BS 1157, BSF");
const RECALLED_BA: Source = Source::memory(
    "BS 1157:1975 recommended sizes for BA, recalled; all but 3 BA coincide with lists in print",
);
const TRAINING: Source =
    Source::published("Thread Cutting by Dies and Taps, a trainees' handbook, appendix 1");
const CLUB: Source =
    Source::published("a model engineers' club list, p. 30, about 75 % depth of thread, for steel");
const STEAMERS: Source = Source::published("a live steam society's tables of British threads");
const SUPPLIER: Source = Source::published("a fastener supplier's table, BA thread data");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const BS_1157_BSW: List = List { name: "BS 1157", system: SystemId::Bsw, source: HELD_BSW };
const TRAINING_BSW: List =
    List { name: "training handbook", system: SystemId::Bsw, source: TRAINING };
const CLUB_BSW: List = List { name: "model engineers' list", system: SystemId::Bsw, source: CLUB };
const BS_1157_BSF: List = List { name: "BS 1157", system: SystemId::Bsf, source: HELD_BSF };
const CLUB_BSF: List = List { name: "model engineers' list", system: SystemId::Bsf, source: CLUB };
const BS_1157_BA: List = List { name: "BS 1157", system: SystemId::Ba, source: RECALLED_BA };
const STEAMERS_BA: List =
    List { name: "live steamers' list", system: SystemId::Ba, source: STEAMERS };
const CLUB_BA: List = List { name: "model engineers' list", system: SystemId::Ba, source: CLUB };
const SUPPLIER_BA: List =
    List { name: "fastener supplier's list", system: SystemId::Ba, source: SUPPLIER };

/// Size, drill, and the drill as the list names it.
#[rustfmt::skip]
pub(super) static ROWS: &[ListedDrill] = &[
    BS_1157_BSW.row("1-8", Mm(2.55), "2.55 mm"),
    BS_1157_BSW.row("3-16", Mm(3.7), "3.7 mm"),
    BS_1157_BSW.row("1-4", Mm(5.1), "5.1 mm"),
    BS_1157_BSW.row("5-16", Mm(6.5), "6.5 mm"),
    BS_1157_BSW.row("3-8", Mm(7.9), "7.9 mm"),
    BS_1157_BSW.row("7-16", Mm(9.3), "9.3 mm"),
    BS_1157_BSW.row("1-2", Mm(10.5), "10.5 mm"),
    BS_1157_BSW.row("9-16", Mm(12.1), "12.1 mm"),
    BS_1157_BSW.row("5-8", Mm(13.5), "13.5 mm"),
    BS_1157_BSW.row("11-16", Mm(15.0), "15 mm"),
    BS_1157_BSW.row("3-4", Mm(16.25), "16.25 mm"),
    BS_1157_BSW.row("7-8", Mm(19.25), "19.25 mm"),
    BS_1157_BSW.row("1", Mm(22.0), "22 mm"),
    BS_1157_BSW.row("1-1-8", Mm(24.75), "24.75 mm"),
    BS_1157_BSW.row("1-1-4", Mm(28.0), "28 mm"),
    BS_1157_BSW.row("1-1-2", Mm(33.5), "33.5 mm"),
    BS_1157_BSW.row("1-3-4", Mm(39.0), "39 mm"),
    BS_1157_BSW.row("2", Mm(44.5), "44.5 mm"),
    TRAINING_BSW.row("1-4", Mm(5.0), "5 mm"),
    TRAINING_BSW.row("1-4", Mm(5.1), "5.1 mm"),
    TRAINING_BSW.row("5-16", Mm(6.4), "6.4 mm"),
    TRAINING_BSW.row("5-16", Mm(6.5), "6.5 mm"),
    TRAINING_BSW.row("3-8", Mm(7.7), "7.7 mm"),
    TRAINING_BSW.row("3-8", Mm(7.9), "7.9 mm"),
    TRAINING_BSW.row("7-16", Mm(9.1), "9.1 mm"),
    TRAINING_BSW.row("7-16", Mm(9.25), "9.25 mm"),
    TRAINING_BSW.row("1-2", Mm(10.25), "10.25 mm"),
    TRAINING_BSW.row("1-2", Mm(10.5), "10.5 mm"),
    TRAINING_BSW.row("5-8", Mm(13.25), "13.25 mm"),
    TRAINING_BSW.row("5-8", Mm(13.5), "13.5 mm"),
    TRAINING_BSW.row("3-4", Mm(16.25), "16.25 mm"),
    TRAINING_BSW.row("3-4", Mm(16.5), "16.5 mm"),
    TRAINING_BSW.row("7-8", Mm(19.0), "19 mm"),
    TRAINING_BSW.row("7-8", Mm(19.25), "19.25 mm"),
    TRAINING_BSW.row("1", Mm(21.75), "21.75 mm"),
    TRAINING_BSW.row("1", Mm(22.0), "22 mm"),
    TRAINING_BSW.row("1-1-8", Mm(24.5), "24.5 mm"),
    TRAINING_BSW.row("1-1-8", Mm(24.75), "24.75 mm"),
    TRAINING_BSW.row("1-1-4", Mm(27.5), "27.5 mm"),
    TRAINING_BSW.row("1-1-4", Mm(27.75), "27.75 mm"),
    TRAINING_BSW.row("1-3-8", Mm(30.0), "30 mm"),
    TRAINING_BSW.row("1-3-8", Mm(30.5), "30.5 mm"),
    CLUB_BSW.row("1-16", Mm(1.15), "1.15 mm"),
    CLUB_BSW.row("1-16", Inch(0.0420), "No. 58"),
    CLUB_BSW.row("3-32", Mm(1.9), "1.9 mm"),
    CLUB_BSW.row("3-32", Inch(0.0730), "No. 49"),
    CLUB_BSW.row("1-8", Mm(2.6), "2.6 mm"),
    CLUB_BSW.row("1-8", Inch(0.1015), "No. 38"),
    CLUB_BSW.row("5-32", Mm(3.2), "3.2 mm"),
    CLUB_BSW.row("5-32", Inch(0.1200), "No. 31"),
    CLUB_BSW.row("3-16", Mm(3.8), "3.8 mm"),
    CLUB_BSW.row("3-16", Inch(0.1470), "No. 26"),
    CLUB_BSW.row("7-32", Mm(4.6), "4.6 mm"),
    CLUB_BSW.row("7-32", Inch(0.1800), "No. 15"),
    CLUB_BSW.row("1-4", Mm(5.2), "5.2 mm"),
    CLUB_BSW.row("1-4", Inch(0.2010), "No. 7"),
    CLUB_BSW.row("5-16", Mm(6.6), "6.6 mm"),
    CLUB_BSW.row("5-16", Inch(0.257), "Letter F"),
    CLUB_BSW.row("3-8", Mm(8.0), "8 mm"),
    CLUB_BSW.row("3-8", Inch(0.316), "Letter O"),
    CLUB_BSW.row("7-16", Mm(9.3), "9.3 mm"),
    CLUB_BSW.row("7-16", Inch(0.368), "Letter U"),
    CLUB_BSW.row("1-2", Mm(10.7), "10.7 mm"),
    CLUB_BSW.row("1-2", fraction(27, 64), "27/64 in"),
    BS_1157_BSF.row("3-16", Mm(4.0), "4 mm"),
    BS_1157_BSF.row("7-32", Mm(4.6), "4.6 mm"),
    BS_1157_BSF.row("1-4", Mm(5.3), "5.3 mm"),
    BS_1157_BSF.row("9-32", Mm(6.1), "6.1 mm"),
    BS_1157_BSF.row("5-16", Mm(6.8), "6.8 mm"),
    BS_1157_BSF.row("3-8", Mm(8.3), "8.3 mm"),
    BS_1157_BSF.row("7-16", Mm(9.7), "9.7 mm"),
    BS_1157_BSF.row("1-2", Mm(11.1), "11.1 mm"),
    BS_1157_BSF.row("9-16", Mm(12.7), "12.7 mm"),
    BS_1157_BSF.row("5-8", Mm(14.0), "14 mm"),
    BS_1157_BSF.row("11-16", Mm(15.5), "15.5 mm"),
    BS_1157_BSF.row("3-4", Mm(16.75), "16.75 mm"),
    BS_1157_BSF.row("7-8", Mm(19.75), "19.75 mm"),
    BS_1157_BSF.row("1", Mm(22.75), "22.75 mm"),
    BS_1157_BSF.row("1-1-8", Mm(25.5), "25.5 mm"),
    BS_1157_BSF.row("1-1-4", Mm(28.5), "28.5 mm"),
    BS_1157_BSF.row("1-3-8", Mm(31.5), "31.5 mm"),
    BS_1157_BSF.row("1-1-2", Mm(34.5), "34.5 mm"),
    CLUB_BSF.row("3-16", Mm(4.0), "4 mm").with_note("The list prints 28 tpi; 3/16 in BSF is 32 tpi"),
    CLUB_BSF.row("7-32", Mm(4.7), "4.7 mm"),
    CLUB_BSF.row("7-32", Inch(0.1820), "No. 14"),
    CLUB_BSF.row("1-4", Mm(5.4), "5.4 mm"),
    CLUB_BSF.row("1-4", Inch(0.2130), "No. 3"),
    CLUB_BSF.row("9-32", Mm(6.2), "6.2 mm"),
    CLUB_BSF.row("9-32", Inch(0.242), "Letter C"),
    CLUB_BSF.row("5-16", Mm(6.9), "6.9 mm"),
    CLUB_BSF.row("5-16", Inch(0.266), "Letter H"),
    CLUB_BSF.row("3-8", Mm(8.3), "8.3 mm"),
    CLUB_BSF.row("3-8", fraction(21, 64), "21/64 in"),
    CLUB_BSF.row("7-16", Mm(9.8), "9.8 mm"),
    CLUB_BSF.row("7-16", Inch(0.386), "Letter W"),
    CLUB_BSF.row("1-2", Mm(11.1), "11.1 mm"),
    CLUB_BSF.row("1-2", fraction(7, 16), "7/16 in"),
    BS_1157_BA.row("0", Mm(5.1), "5.1 mm"),
    BS_1157_BA.row("1", Mm(4.5), "4.5 mm"),
    BS_1157_BA.row("2", Mm(4.0), "4 mm"),
    BS_1157_BA.row("3", Mm(3.4), "3.4 mm"),
    BS_1157_BA.row("4", Mm(3.0), "3 mm"),
    BS_1157_BA.row("5", Mm(2.65), "2.65 mm"),
    BS_1157_BA.row("6", Mm(2.3), "2.3 mm"),
    BS_1157_BA.row("7", Mm(2.05), "2.05 mm"),
    BS_1157_BA.row("8", Mm(1.8), "1.8 mm"),
    BS_1157_BA.row("9", Mm(1.55), "1.55 mm"),
    BS_1157_BA.row("10", Mm(1.4), "1.4 mm"),
    BS_1157_BA.row("11", Mm(1.2), "1.2 mm"),
    BS_1157_BA.row("12", Mm(1.05), "1.05 mm"),
    BS_1157_BA.row("13", Mm(0.98), "0.98 mm"),
    BS_1157_BA.row("14", Mm(0.8), "0.8 mm"),
    BS_1157_BA.row("15", Mm(0.7), "0.7 mm"),
    BS_1157_BA.row("16", Mm(0.6), "0.6 mm"),
    STEAMERS_BA.row("0", Inch(0.1935), "No. 10"),
    STEAMERS_BA.row("2", Inch(0.1520), "No. 24"),
    STEAMERS_BA.row("4", Inch(0.1160), "No. 32"),
    STEAMERS_BA.row("6", Inch(0.0890), "No. 43"),
    STEAMERS_BA.row("7", Inch(0.0810), "No. 46"),
    STEAMERS_BA.row("8", Inch(0.0700), "No. 50"),
    STEAMERS_BA.row("10", Inch(0.0520), "No. 55"),
    STEAMERS_BA.row("11", Inch(0.0465), "No. 56"),
    STEAMERS_BA.row("12", Inch(0.0400), "No. 60"),
    STEAMERS_BA.row("14", Inch(0.0280), "No. 70").with_note("Below the minor diameter of 0.72 mm: a tap will not follow"),
    CLUB_BA.row("0", Mm(5.1), "5.1 mm"),
    CLUB_BA.row("0", Inch(0.2010), "No. 7"),
    CLUB_BA.row("1", Mm(4.5), "4.5 mm"),
    CLUB_BA.row("1", Inch(0.1770), "No. 16"),
    CLUB_BA.row("2", Mm(4.0), "4 mm"),
    CLUB_BA.row("2", Inch(0.1570), "No. 22"),
    SUPPLIER_BA.row("5", Mm(2.65), "2.65 mm"),
    SUPPLIER_BA.row("5", Inch(0.1040), "No. 37"),
    SUPPLIER_BA.row("6", Mm(2.3), "2.3 mm"),
    SUPPLIER_BA.row("8", Mm(1.8), "1.8 mm"),
    SUPPLIER_BA.row("8", Inch(0.0700), "No. 50"),
    SUPPLIER_BA.row("9", Mm(1.55), "1.55 mm"),
    SUPPLIER_BA.row("11", Mm(1.2), "1.2 mm"),
    SUPPLIER_BA.row("11", Inch(0.0465), "No. 56"),
    SUPPLIER_BA.row("14", Mm(0.8), "0.8 mm"),
    SUPPLIER_BA.row("15", Mm(0.7), "0.7 mm"),
    SUPPLIER_BA.row("15", Inch(0.0280), "No. 70"),
    SUPPLIER_BA.row("16", Mm(0.6), "0.6 mm"),
    SUPPLIER_BA.row("16", Inch(0.0240), "No. 73"),
];
