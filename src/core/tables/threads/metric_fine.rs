//! ISO metric fine, M1 to M36: the pitches of ISO 261, and the finer ones tap makers add.

use super::rows::{metric_pitch, noted};
use super::sources::{PARTS_LIBRARY, YAMAWA_LIMITS};
use super::{
    ClearanceFamily, Form, HeadFamily, HexagonFamily, Meant, Naming, SizeLimit, System, SystemId,
    TappingLists, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const RECALLED_ISO_261: Source = Source::memory("ISO 261 third choice, recalled");

const OUTSIDE_ISO_261: &str = "Not in ISO 261: a fine pitch that tap makers list, handy for thin \
    walls and adjusting screws.";

const fn fine(
    size: &'static str,
    designation: &'static str,
    major: f64,
    pitch: f64,
    sources: &'static [Source],
) -> Thread {
    metric_pitch(SystemId::MetricFine, size, designation, Printed::Mm(major), pitch, sources)
}

const fn outside_iso(
    size: &'static str,
    designation: &'static str,
    major: f64,
    pitch: f64,
) -> Thread {
    noted(fine(size, designation, major, pitch, &[YAMAWA_LIMITS]), OUTSIDE_ISO_261)
}

pub(super) static SYSTEM: System = System {
    id: SystemId::MetricFine,
    slug: "metric-fine",
    name: "ISO metric fine",
    mark: "M",
    spellings: &["mf", "metric", "iso", "iso metric", "fine"],
    naming: Naming::Metric,
    meant: Meant::ByPitch { plain: SystemId::Metric },
    standard: "ISO 261:1998, form ISO 68-1",
    form: Form::IsoMetric,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Metric,
    clearance: ClearanceFamily::Metric,
    heads: HeadFamily::Metric,
    hexagons: HexagonFamily::Iso,
    used_for: "Thin walls, adjusting screws, bearings and spark plugs.",
    threads: &ROWS,
};

#[rustfmt::skip]
static ROWS: [Thread; 80] = [
    fine("m1x0.2", "M1 × 0.2", 1.0, 0.2, &[PARTS_LIBRARY]),
    fine("m1.1x0.2", "M1.1 × 0.2", 1.1, 0.2, &[PARTS_LIBRARY]),
    fine("m1.2x0.2", "M1.2 × 0.2", 1.2, 0.2, &[PARTS_LIBRARY]),
    fine("m1.4x0.2", "M1.4 × 0.2", 1.4, 0.2, &[PARTS_LIBRARY]),
    fine("m1.6x0.2", "M1.6 × 0.2", 1.6, 0.2, &[PARTS_LIBRARY]),
    fine("m1.8x0.2", "M1.8 × 0.2", 1.8, 0.2, &[PARTS_LIBRARY]),
    fine("m2x0.25", "M2 × 0.25", 2.0, 0.25, &[PARTS_LIBRARY]),
    fine("m2.2x0.25", "M2.2 × 0.25", 2.2, 0.25, &[PARTS_LIBRARY]),
    fine("m2.5x0.35", "M2.5 × 0.35", 2.5, 0.35, &[PARTS_LIBRARY]),
    fine("m3x0.35", "M3 × 0.35", 3.0, 0.35, &[PARTS_LIBRARY]),
    fine("m3.5x0.35", "M3.5 × 0.35", 3.5, 0.35, &[PARTS_LIBRARY]),
    fine("m4x0.5", "M4 × 0.5", 4.0, 0.5, &[PARTS_LIBRARY]),
    fine("m4.5x0.5", "M4.5 × 0.5", 4.5, 0.5, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    fine("m5x0.5", "M5 × 0.5", 5.0, 0.5, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m5x0.75", "M5 × 0.75", 5.0, 0.75),
    fine("m5.5x0.5", "M5.5 × 0.5", 5.5, 0.5, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m5.5x0.75", "M5.5 × 0.75", 5.5, 0.75),
    outside_iso("m6x0.5", "M6 × 0.5", 6.0, 0.5),
    fine("m6x0.75", "M6 × 0.75", 6.0, 0.75, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m7x0.5", "M7 × 0.5", 7.0, 0.5),
    fine("m7x0.75", "M7 × 0.75", 7.0, 0.75, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m8x0.5", "M8 × 0.5", 8.0, 0.5),
    fine("m8x0.75", "M8 × 0.75", 8.0, 0.75, &[PARTS_LIBRARY]),
    fine("m8x1", "M8 × 1", 8.0, 1.0, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m9x0.5", "M9 × 0.5", 9.0, 0.5),
    fine("m9x0.75", "M9 × 0.75", 9.0, 0.75, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    fine("m9x1", "M9 × 1", 9.0, 1.0, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    outside_iso("m10x0.5", "M10 × 0.5", 10.0, 0.5),
    fine("m10x0.75", "M10 × 0.75", 10.0, 0.75, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    fine("m10x1", "M10 × 1", 10.0, 1.0, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    fine("m10x1.25", "M10 × 1.25", 10.0, 1.25, &[YAMAWA_LIMITS, PARTS_LIBRARY]),
    fine("m11x0.75", "M11 × 0.75", 11.0, 0.75, &[PARTS_LIBRARY]),
    fine("m11x1", "M11 × 1", 11.0, 1.0, &[PARTS_LIBRARY]),
    fine("m12x1", "M12 × 1", 12.0, 1.0, &[PARTS_LIBRARY]),
    fine("m12x1.25", "M12 × 1.25", 12.0, 1.25, &[PARTS_LIBRARY]),
    fine("m12x1.5", "M12 × 1.5", 12.0, 1.5, &[PARTS_LIBRARY]),
    fine("m14x1", "M14 × 1", 14.0, 1.0, &[PARTS_LIBRARY]),
    fine("m14x1.25", "M14 × 1.25", 14.0, 1.25, &[PARTS_LIBRARY]),
    fine("m14x1.5", "M14 × 1.5", 14.0, 1.5, &[PARTS_LIBRARY]),
    fine("m15x1", "M15 × 1", 15.0, 1.0, &[PARTS_LIBRARY]),
    fine("m15x1.5", "M15 × 1.5", 15.0, 1.5, &[PARTS_LIBRARY]),
    fine("m16x1", "M16 × 1", 16.0, 1.0, &[PARTS_LIBRARY]),
    fine("m16x1.5", "M16 × 1.5", 16.0, 1.5, &[PARTS_LIBRARY]),
    fine("m17x1", "M17 × 1", 17.0, 1.0, &[PARTS_LIBRARY]),
    fine("m17x1.5", "M17 × 1.5", 17.0, 1.5, &[PARTS_LIBRARY]),
    fine("m18x1", "M18 × 1", 18.0, 1.0, &[PARTS_LIBRARY]),
    fine("m18x1.5", "M18 × 1.5", 18.0, 1.5, &[PARTS_LIBRARY]),
    fine("m18x2", "M18 × 2", 18.0, 2.0, &[PARTS_LIBRARY]),
    fine("m20x1", "M20 × 1", 20.0, 1.0, &[PARTS_LIBRARY]),
    fine("m20x1.5", "M20 × 1.5", 20.0, 1.5, &[PARTS_LIBRARY]),
    fine("m20x2", "M20 × 2", 20.0, 2.0, &[PARTS_LIBRARY]),
    fine("m22x1", "M22 × 1", 22.0, 1.0, &[PARTS_LIBRARY]),
    fine("m22x1.5", "M22 × 1.5", 22.0, 1.5, &[PARTS_LIBRARY]),
    fine("m22x2", "M22 × 2", 22.0, 2.0, &[PARTS_LIBRARY]),
    fine("m24x1", "M24 × 1", 24.0, 1.0, &[PARTS_LIBRARY]),
    fine("m24x1.5", "M24 × 1.5", 24.0, 1.5, &[PARTS_LIBRARY]),
    fine("m24x2", "M24 × 2", 24.0, 2.0, &[PARTS_LIBRARY]),
    fine("m25x1", "M25 × 1", 25.0, 1.0, &[PARTS_LIBRARY]),
    fine("m25x1.5", "M25 × 1.5", 25.0, 1.5, &[PARTS_LIBRARY]),
    fine("m25x2", "M25 × 2", 25.0, 2.0, &[PARTS_LIBRARY]),
    fine("m26x1.5", "M26 × 1.5", 26.0, 1.5, &[RECALLED_ISO_261]),
    fine("m27x1", "M27 × 1", 27.0, 1.0, &[PARTS_LIBRARY]),
    fine("m27x1.5", "M27 × 1.5", 27.0, 1.5, &[PARTS_LIBRARY]),
    fine("m27x2", "M27 × 2", 27.0, 2.0, &[PARTS_LIBRARY]),
    fine("m28x1", "M28 × 1", 28.0, 1.0, &[PARTS_LIBRARY]),
    fine("m28x1.5", "M28 × 1.5", 28.0, 1.5, &[PARTS_LIBRARY]),
    fine("m28x2", "M28 × 2", 28.0, 2.0, &[PARTS_LIBRARY]),
    fine("m30x1", "M30 × 1", 30.0, 1.0, &[PARTS_LIBRARY]),
    fine("m30x1.5", "M30 × 1.5", 30.0, 1.5, &[PARTS_LIBRARY]),
    fine("m30x2", "M30 × 2", 30.0, 2.0, &[PARTS_LIBRARY]),
    fine("m30x3", "M30 × 3", 30.0, 3.0, &[PARTS_LIBRARY]),
    fine("m32x1.5", "M32 × 1.5", 32.0, 1.5, &[PARTS_LIBRARY]),
    fine("m32x2", "M32 × 2", 32.0, 2.0, &[PARTS_LIBRARY]),
    fine("m33x1.5", "M33 × 1.5", 33.0, 1.5, &[PARTS_LIBRARY]),
    fine("m33x2", "M33 × 2", 33.0, 2.0, &[PARTS_LIBRARY]),
    fine("m33x3", "M33 × 3", 33.0, 3.0, &[PARTS_LIBRARY]),
    fine("m35x1.5", "M35 × 1.5", 35.0, 1.5, &[PARTS_LIBRARY]),
    fine("m36x1.5", "M36 × 1.5", 36.0, 1.5, &[PARTS_LIBRARY]),
    fine("m36x2", "M36 × 2", 36.0, 2.0, &[PARTS_LIBRARY]),
    fine("m36x3", "M36 × 3", 36.0, 3.0, &[PARTS_LIBRARY]),
];
