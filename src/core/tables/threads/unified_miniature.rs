//! Unified miniature, 0.30 to 1.40 UNM, with the American sizes below No. 0.
//!
//! An address is the name as the trade writes it: `0.80`, `00-90`.

use super::rows::{inch_pitch, metric_pitch, noted};
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
    metric,
};
use crate::tables::source::{Grade, Source};
use crate::units::Printed;

const TABLE_5: Source = Source::published(
    "Machinery's Handbook 31st ed. pp. 1998 and 1999, table 5, Unified miniature screw threads",
);
const NUMBER_RULE: Source = Source {
    cite: "Number sizes by ASME B1.1: 0.060 in + 0.013 in a number, 00 counting as -1, 000 as -2 \
           and 0000 as -3",
    grade: Grade::Derived,
};
const MINIATURE_THREAD: Source = Source::published("a miniature tap maker's tap drill sizes");

const BELOW_ZERO: &str = "Not in ASME B1.10M: an American model and instrument size, figured here \
    with the miniature form.";

const fn unm(size: &'static str, designation: &'static str, major: f64, pitch: f64) -> Thread {
    metric_pitch(SystemId::Unm, size, designation, Printed::Mm(major), pitch, &[TABLE_5])
}

const fn below_zero(
    size: &'static str,
    designation: &'static str,
    major: f64,
    threads_per_inch: f64,
) -> Thread {
    let row = inch_pitch(
        SystemId::Unm,
        size,
        designation,
        Printed::Inch(major),
        threads_per_inch,
        &[NUMBER_RULE, MINIATURE_THREAD],
    );
    noted(row, BELOW_ZERO)
}

/// ASME B1.10M: the nut's thread is 0.52 p deep and the screw's 0.6 p.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: metric::THREE_QUARTER_HEIGHT,
    rounding: Rounding::Nothing,
    basis: Basis::published("of ¾ H, 0.6495 p"),
    on_five_eighths_h: false,
    minors: Minors::Apart { nut: 1.04, screw: 1.2 },
    tensile: Tensile::BelowMajor(metric::TENSILE),
    crest: Finish::Flat,
    root: Finish::Round,
    largest_hole: FormLimit::AsmeB110,
    forming_taps: false,
    cut_as: Form::UnifiedMiniature,
    any_size: AnySize::As(Form::Miniature),
};

pub(super) static SYSTEM: System = System {
    id: SystemId::Unm,
    slug: "unm",
    name: "Unified miniature, with the sizes below No. 0",
    mark: "UNM",
    spellings: &["unified", "un", "unified miniature", "miniature"],
    naming: Naming::Unified,
    meant: Meant::BySize,
    standard: "ASME B1.10M-2004",
    form: Form::UnifiedMiniature,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::NotHeld,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::Metric,
    hexagons: HexagonFamily::NotHeld,
    used_for: "American watches, instruments and very small models.",
    threads: &ROWS,
};

#[rustfmt::skip]
static ROWS: [Thread; 18] = [
    unm("0.30", "0.30 UNM", 0.30, 0.080),
    unm("0.35", "0.35 UNM", 0.35, 0.090),
    unm("0.40", "0.40 UNM", 0.40, 0.100),
    unm("0.45", "0.45 UNM", 0.45, 0.100),
    unm("0.50", "0.50 UNM", 0.50, 0.125),
    below_zero("0000-160", "No. 0000-160", 0.021, 160.0),
    unm("0.55", "0.55 UNM", 0.55, 0.125),
    unm("0.60", "0.60 UNM", 0.60, 0.150),
    unm("0.70", "0.70 UNM", 0.70, 0.175),
    unm("0.80", "0.80 UNM", 0.80, 0.200),
    below_zero("000-120", "No. 000-120", 0.034, 120.0),
    unm("0.90", "0.90 UNM", 0.90, 0.225),
    unm("1.00", "1.00 UNM", 1.00, 0.250),
    unm("1.10", "1.10 UNM", 1.10, 0.250),
    below_zero("00-90", "No. 00-90", 0.047, 90.0),
    below_zero("00-96", "No. 00-96", 0.047, 96.0),
    unm("1.20", "1.20 UNM", 1.20, 0.250),
    unm("1.40", "1.40 UNM", 1.40, 0.300),
];
