//! ISO metric coarse, and the miniature S threads below it. Fine pitches are in
//! [`super::metric_fine`].

use super::rows::{metric_pitch, noted};
use super::sources::{ISCAR, PARTS_LIBRARY, YAMAWA_COARSE};
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const RECALLED_ISO_1501: Source = Source::memory("ISO 1501 diameters and pitches, recalled");

const OLD: &str = "An old size, dropped from ISO 261; still met in older instruments, clocks and \
    cameras.";

const fn coarse(
    size: &'static str,
    designation: &'static str,
    major: f64,
    pitch: f64,
    sources: &'static [Source],
) -> Thread {
    metric_pitch(SystemId::Metric, size, designation, Printed::Mm(major), pitch, sources)
}

const fn old(size: &'static str, designation: &'static str, major: f64, pitch: f64) -> Thread {
    noted(coarse(size, designation, major, pitch, &[YAMAWA_COARSE]), OLD)
}

const fn s(size: &'static str, designation: &'static str, major: f64, pitch: f64) -> Thread {
    let major = Printed::Mm(major);
    metric_pitch(SystemId::Miniature, size, designation, major, pitch, &[RECALLED_ISO_1501])
}

/// Three quarters of the sharp height of a 60° thread, in pitches (ISO 68-1).
pub(super) const THREE_QUARTER_HEIGHT: f64 = 0.649_519_052_838_329;
/// Twice five eighths of the sharp height: D − D1 of ISO 68-1 and ASME B1.1.
pub(super) const INTERNAL: f64 = 1.082_531_754_730_548;
/// Twice 17/24 of the sharp height: d − d3 of ISO 68-1.
const EXTERNAL: f64 = 1.226_869_322_027_955;
/// d less this much pitch is the mean of d2 and d3 of ISO 68-1.
pub(super) const TENSILE: f64 = 0.938_194_187_433_142;

/// ISO 68-1; nothing is rounded.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: THREE_QUARTER_HEIGHT,
    rounding: Rounding::Nothing,
    basis: Basis::published("of ¾ H, 0.6495 p (ISO 68-1)"),
    on_five_eighths_h: true,
    minors: Minors::Apart { nut: INTERNAL, screw: EXTERNAL },
    tensile: Tensile::BelowMajor(TENSILE),
    crest: Finish::Flat,
    root: Finish::Round,
    largest_hole: FormLimit::Iso965,
    forming_taps: true,
    cut_as: Form::IsoMetric,
    any_size: AnySize::Word("metric", "ISO metric, 60°"),
};

/// ISO 1501: the nut's thread is 0.48 p deep. From memory, unconfirmed.
pub(super) const MINIATURE_FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: THREE_QUARTER_HEIGHT,
    rounding: Rounding::Nothing,
    basis: Basis::memory("of ¾ H, 0.6495 p"),
    on_five_eighths_h: false,
    minors: Minors::Apart { nut: 0.96, screw: EXTERNAL },
    tensile: Tensile::BelowMajor(TENSILE),
    crest: Finish::Flat,
    root: Finish::Round,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::Miniature,
    any_size: AnySize::Word("miniature", "Miniature S, 60°"),
};

pub(super) static COARSE: System = System {
    id: SystemId::Metric,
    slug: "metric",
    name: "ISO metric coarse",
    mark: "M",
    spellings: &["iso", "iso metric", "coarse"],
    naming: Naming::Metric,
    meant: Meant::BySize,
    standard: "ISO 261:1998, form ISO 68-1",
    form: Form::IsoMetric,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Metric,
    clearance: ClearanceFamily::Metric,
    heads: HeadFamily::Metric,
    hexagons: HexagonFamily::Iso,
    used_for: "Most screws sold today.",
    threads: &COARSE_ROWS,
};

pub(super) static MINIATURE: System = System {
    id: SystemId::Miniature,
    slug: "miniature",
    name: "ISO miniature",
    mark: "S",
    spellings: &[],
    naming: Naming::Metric,
    meant: Meant::BySize,
    standard: "ISO 1501:2009",
    form: Form::Miniature,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::NotHeld,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::Metric,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Watches, clocks and very small instruments.",
    threads: &MINIATURE_ROWS,
};

#[rustfmt::skip]
static COARSE_ROWS: [Thread; 34] = [
    coarse("m1", "M1", 1.0, 0.25, &[PARTS_LIBRARY]),
    coarse("m1.1", "M1.1", 1.1, 0.25, &[PARTS_LIBRARY]),
    coarse("m1.2", "M1.2", 1.2, 0.25, &[PARTS_LIBRARY]),
    coarse("m1.4", "M1.4", 1.4, 0.3, &[PARTS_LIBRARY]),
    coarse("m1.6", "M1.6", 1.6, 0.35, &[ISCAR, PARTS_LIBRARY]),
    old("m1.7", "M1.7", 1.7, 0.35),
    coarse("m1.8", "M1.8", 1.8, 0.35, &[ISCAR, PARTS_LIBRARY]),
    coarse("m2", "M2", 2.0, 0.4, &[ISCAR, PARTS_LIBRARY]),
    coarse("m2.2", "M2.2", 2.2, 0.45, &[ISCAR, PARTS_LIBRARY]),
    old("m2.3", "M2.3", 2.3, 0.4),
    coarse("m2.5", "M2.5", 2.5, 0.45, &[ISCAR, PARTS_LIBRARY]),
    old("m2.6", "M2.6", 2.6, 0.45),
    coarse("m3", "M3", 3.0, 0.5, &[ISCAR, PARTS_LIBRARY]),
    coarse("m3.5", "M3.5", 3.5, 0.6, &[ISCAR, PARTS_LIBRARY]),
    coarse("m4", "M4", 4.0, 0.7, &[ISCAR, PARTS_LIBRARY]),
    coarse("m4.5", "M4.5", 4.5, 0.75, &[ISCAR, PARTS_LIBRARY]),
    coarse("m5", "M5", 5.0, 0.8, &[ISCAR, PARTS_LIBRARY]),
    coarse("m6", "M6", 6.0, 1.0, &[ISCAR, PARTS_LIBRARY]),
    coarse("m7", "M7", 7.0, 1.0, &[ISCAR, PARTS_LIBRARY]),
    coarse("m8", "M8", 8.0, 1.25, &[ISCAR, PARTS_LIBRARY]),
    coarse("m9", "M9", 9.0, 1.25, &[ISCAR, PARTS_LIBRARY]),
    coarse("m10", "M10", 10.0, 1.5, &[ISCAR, PARTS_LIBRARY]),
    coarse("m11", "M11", 11.0, 1.5, &[ISCAR, PARTS_LIBRARY]),
    coarse("m12", "M12", 12.0, 1.75, &[ISCAR, PARTS_LIBRARY]),
    coarse("m14", "M14", 14.0, 2.0, &[ISCAR, PARTS_LIBRARY]),
    coarse("m16", "M16", 16.0, 2.0, &[ISCAR, PARTS_LIBRARY]),
    coarse("m18", "M18", 18.0, 2.5, &[ISCAR, PARTS_LIBRARY]),
    coarse("m20", "M20", 20.0, 2.5, &[ISCAR, PARTS_LIBRARY]),
    coarse("m22", "M22", 22.0, 2.5, &[PARTS_LIBRARY]),
    coarse("m24", "M24", 24.0, 3.0, &[PARTS_LIBRARY]),
    coarse("m27", "M27", 27.0, 3.0, &[PARTS_LIBRARY]),
    coarse("m30", "M30", 30.0, 3.5, &[PARTS_LIBRARY]),
    coarse("m33", "M33", 33.0, 3.5, &[PARTS_LIBRARY]),
    coarse("m36", "M36", 36.0, 4.0, &[PARTS_LIBRARY]),
];

#[rustfmt::skip]
static MINIATURE_ROWS: [Thread; 14] = [
    s("s0.3", "S 0.3", 0.3, 0.08),
    s("s0.35", "S 0.35", 0.35, 0.09),
    s("s0.4", "S 0.4", 0.4, 0.1),
    s("s0.45", "S 0.45", 0.45, 0.1),
    s("s0.5", "S 0.5", 0.5, 0.125),
    s("s0.55", "S 0.55", 0.55, 0.125),
    s("s0.6", "S 0.6", 0.6, 0.15),
    s("s0.7", "S 0.7", 0.7, 0.175),
    s("s0.8", "S 0.8", 0.8, 0.2),
    s("s0.9", "S 0.9", 0.9, 0.225),
    s("s1", "S 1", 1.0, 0.25),
    s("s1.1", "S 1.1", 1.1, 0.25),
    s("s1.2", "S 1.2", 1.2, 0.25),
    s("s1.4", "S 1.4", 1.4, 0.3),
];
