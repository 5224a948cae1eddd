//! British Standard Cycle, once the Cycle Engineers' Institute thread.
//!
//! A plain size is the standard pitch, 26 tpi from 7/32 in up; the 20 tpi sizes carry it in their
//! name and address: `9-16x20`.

use super::rows::{fraction, inch_pitch, noted, whole};
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const TRADE_CLASSIC: Source = Source::published("a cycle dealer's table of British thread sizes");
const TOOLBOX: Source = Source::published("a table of British Standard Cycle threads");

const TWENTY: &str = "A 20 tpi thread of Whitworth form is also met under this name: try a known \
    screw or a thread gauge first.";

const fn bsc(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Bsc, size, designation, diameter, threads_per_inch, sources)
}

const fn twenty(size: &'static str, designation: &'static str, diameter: Printed) -> Thread {
    noted(bsc(size, designation, diameter, 20.0, &[TRADE_CLASSIC]), TWENTY)
}

/// BS 811: depth of thread 0.5327 p.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: 0.5327,
    rounding: Rounding::Nothing,
    basis: Basis::published("of full thread depth, 0.5327 p (BS 811)"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Round,
    root: Finish::Round,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::Cycle,
    any_size: AnySize::Word("cycle", "Cycle, 60°"),
};

pub(super) static SYSTEM: System = System {
    id: SystemId::Bsc,
    slug: "bsc",
    name: "British Standard Cycle",
    mark: "BSC",
    spellings: &["bscy", "cei", "cycle"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "BS 811:1950",
    form: Form::Cycle,
    largest_hole: SizeLimit::LikeBs84,
    lists: TappingLists::NotHeld,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Cycles and older British motor cycles.",
    threads: &ROWS,
};

#[rustfmt::skip]
static ROWS: [Thread; 21] = [
    bsc("1-8", "1/8 in BSC", fraction(1, 8), 40.0, &[TRADE_CLASSIC]),
    bsc("5-32", "5/32 in BSC", fraction(5, 32), 32.0, &[TRADE_CLASSIC]),
    bsc("3-16", "3/16 in BSC", fraction(3, 16), 32.0, &[TRADE_CLASSIC]),
    bsc("7-32", "7/32 in BSC", fraction(7, 32), 26.0, &[TRADE_CLASSIC]),
    bsc("1-4", "1/4 in BSC", fraction(1, 4), 26.0, &[TRADE_CLASSIC]),
    bsc("9-32", "9/32 in BSC", fraction(9, 32), 26.0, &[TRADE_CLASSIC]),
    bsc("5-16", "5/16 in BSC", fraction(5, 16), 26.0, &[TRADE_CLASSIC]),
    bsc("3-8", "3/8 in BSC", fraction(3, 8), 26.0, &[TRADE_CLASSIC]),
    bsc("7-16", "7/16 in BSC", fraction(7, 16), 26.0, &[TRADE_CLASSIC]),
    twenty("7-16x20", "7/16 in × 20 BSC", fraction(7, 16)),
    bsc("1-2", "1/2 in BSC", fraction(1, 2), 26.0, &[TRADE_CLASSIC]),
    twenty("1-2x20", "1/2 in × 20 BSC", fraction(1, 2)),
    bsc("9-16", "9/16 in BSC", fraction(9, 16), 26.0, &[TRADE_CLASSIC]),
    twenty("9-16x20", "9/16 in × 20 BSC", fraction(9, 16)),
    bsc("5-8", "5/8 in BSC", fraction(5, 8), 26.0, &[TRADE_CLASSIC]),
    twenty("5-8x20", "5/8 in × 20 BSC", fraction(5, 8)),
    bsc("11-16", "11/16 in BSC", fraction(11, 16), 26.0, &[TRADE_CLASSIC]),
    twenty("11-16x20", "11/16 in × 20 BSC", fraction(11, 16)),
    bsc("3-4", "3/4 in BSC", fraction(3, 4), 26.0, &[TRADE_CLASSIC]),
    twenty("3-4x20", "3/4 in × 20 BSC", fraction(3, 4)),
    bsc("1", "1 in BSC", whole(1), 26.0, &[TOOLBOX]),
];
