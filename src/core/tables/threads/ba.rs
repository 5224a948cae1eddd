//! British Association, BA 0 to 25: pitch and major diameter as printed.
//!
//! BS 93 holds 0 to 16; 17 to 25 stand in the older tables only and say so.

use super::rows::{metric_pitch, noted};
use super::sources::KAYE_LABY;
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const HANDBOOK: Source = Source::published(
    "BS 93:1951 basic dimensions, as printed in Machinery's Handbook 31st ed. p. 2115",
);

const HISTORICAL: &str = "Outside BS 93, which ends at 16 BA: from the older British Association \
    tables, for old instruments and watches. Taps are hard to find.";

const fn ba(
    size: &'static str,
    designation: &'static str,
    pitch: f64,
    major: f64,
    sources: &'static [Source],
) -> Thread {
    metric_pitch(SystemId::Ba, size, designation, Printed::Mm(major), pitch, sources)
}

const fn historical(
    size: &'static str,
    designation: &'static str,
    pitch: f64,
    major: f64,
) -> Thread {
    noted(ba(size, designation, pitch, major, &[KAYE_LABY]), HISTORICAL)
}

/// BS 93: depth of thread 0.6 p, to the nearest 0.005 mm.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 47.5,
    depth: 0.6,
    rounding: Rounding::DepthToStepMm(0.005),
    basis: Basis::published("of full thread depth, 0.6 p (BS 93)"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Round,
    root: Finish::Round,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::BritishAssociation,
    any_size: AnySize::Word("ba", "BA, 47½°"),
};

pub(super) static SYSTEM: System = System {
    id: SystemId::Ba,
    slug: "ba",
    name: "British Association",
    mark: "BA",
    spellings: &[],
    naming: Naming::Number,
    meant: Meant::BySize,
    standard: "BS 93:2008 (0 to 16 BA)",
    form: Form::BritishAssociation,
    largest_hole: SizeLimit::Bs93,
    lists: TappingLists::British,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::BritishAssociation,
    used_for: "Small screws, studs and nuts in models, instruments and older electrical work.",
    threads: &ROWS,
};

#[rustfmt::skip]
static ROWS: [Thread; 26] = [
    ba("0", "0 BA", 1.00, 6.0, &[HANDBOOK]),
    ba("1", "1 BA", 0.90, 5.3, &[KAYE_LABY]),
    ba("2", "2 BA", 0.81, 4.7, &[KAYE_LABY]),
    ba("3", "3 BA", 0.73, 4.1, &[HANDBOOK]),
    ba("4", "4 BA", 0.66, 3.6, &[HANDBOOK]),
    ba("5", "5 BA", 0.59, 3.2, &[HANDBOOK]),
    ba("6", "6 BA", 0.53, 2.8, &[HANDBOOK]),
    ba("7", "7 BA", 0.48, 2.5, &[HANDBOOK]),
    ba("8", "8 BA", 0.43, 2.2, &[HANDBOOK]),
    ba("9", "9 BA", 0.39, 1.9, &[KAYE_LABY]),
    ba("10", "10 BA", 0.35, 1.7, &[HANDBOOK]),
    ba("11", "11 BA", 0.31, 1.5, &[HANDBOOK]),
    ba("12", "12 BA", 0.28, 1.3, &[HANDBOOK]),
    ba("13", "13 BA", 0.25, 1.2, &[HANDBOOK]),
    ba("14", "14 BA", 0.23, 1.0, &[HANDBOOK]),
    ba("15", "15 BA", 0.21, 0.90, &[HANDBOOK]),
    ba("16", "16 BA", 0.19, 0.79, &[HANDBOOK]),
    historical("17", "17 BA", 0.17, 0.70),
    historical("18", "18 BA", 0.15, 0.62),
    historical("19", "19 BA", 0.14, 0.54),
    historical("20", "20 BA", 0.12, 0.48),
    historical("21", "21 BA", 0.11, 0.42),
    historical("22", "22 BA", 0.10, 0.37),
    historical("23", "23 BA", 0.09, 0.33),
    historical("24", "24 BA", 0.08, 0.29),
    historical("25", "25 BA", 0.07, 0.25),
];
