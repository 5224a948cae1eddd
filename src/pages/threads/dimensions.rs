//! The dimensions of one thread, in both units.

use crate::figures::Column;
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::threads::{Basic, Thread};
use holewright_core::units::{Length, in_degrees, in_mm, in_mm2, print};

/// One dimension.
pub(super) struct DimensionRow {
    pub(super) name: &'static str,
    pub(super) size: Column,
}

/// A figure that is no length.
pub(super) struct OtherFigure {
    pub(super) name: &'static str,
    pub(super) value: String,
}

/// The lengths: pitch, diameters, depth of thread.
pub(super) fn lengths(thread: &Thread, geometry: &Geometry) -> Vec<DimensionRow> {
    let one_minor =
        print::fixed(in_mm(geometry.minor), 3) == print::fixed(in_mm(geometry.minor_internal), 3);
    let mut rows = vec![
        row(major_name(thread), geometry.major),
        row("Effective diameter", geometry.effective),
    ];
    if one_minor {
        rows.push(row("Minor diameter", geometry.minor));
    } else {
        rows.push(row("Minor diameter of the screw", geometry.minor));
        rows.push(row("Minor diameter of the nut", geometry.minor_internal));
    }
    rows.push(row("Pitch", geometry.pitch));
    rows.push(row("Depth of thread, one side", geometry.thread_depth));
    if let Some(gauge_length) = thread.taper.and_then(|taper| taper.gauge_length) {
        rows.push(row("Gauge length, from the small end", gauge_length.length()));
    }
    rows
}

/// A taper thread's diameters are those at its gauge plane.
fn major_name(thread: &Thread) -> &'static str {
    match thread.basic {
        Basic::Major(_) => "Major diameter",
        Basic::EffectiveAtGauge(_) => "Major diameter at the gauge plane",
    }
}

fn row(name: &'static str, length: Length) -> DimensionRow {
    DimensionRow { name, size: Column::of(length) }
}

/// Threads per inch, angle, area.
pub(super) fn others(geometry: &Geometry) -> Vec<OtherFigure> {
    let figure = |name, value| OtherFigure { name, value };
    vec![
        figure("Threads per inch", print::trimmed(geometry.threads_per_inch, 3)),
        figure(
            "Thread angle",
            format!("{}°", print::trimmed(in_degrees(geometry.thread_angle), 1)),
        ),
        figure(
            "Tensile area of the screw",
            format!("{} mm²", print::trimmed(in_mm2(geometry.tensile_area), 2)),
        ),
    ]
}
