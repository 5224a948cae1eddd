//! Printed tolerances on the nut's minor diameter, by pitch.
//!
//! BS 93 and ASME B1.1 print a formula instead: those are in [`crate::calc::limits`].

use crate::tables::source::{Grade, Source};
use crate::units::{Length, Pitch, in_mm, mm};

/// One row: how much larger than its least the nut's minor diameter may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MinorTolerance {
    /// The pitch as printed.
    pub pitch: Pitch,
    /// The tolerance.
    pub tolerance: Length,
    /// The class or standard as pages name it: `6H`, `ISO 228`.
    pub class: &'static str,
    /// Where the row was read.
    pub source: Source,
}

/// Pitches closer than this, in millimetres, are the same pitch.
const SAME_PITCH_MM: f64 = 1e-6;

/// ISO 965-1, by pitch in millimetres: class 6H, or the coarsest class printed below it.
#[must_use]
pub fn iso_965(pitch: Length) -> Option<&'static MinorTolerance> {
    row(&ISO_965, pitch)
}

/// ISO 228-1, by threads per inch.
#[must_use]
pub fn iso_228(pitch: Length) -> Option<&'static MinorTolerance> {
    row(&ISO_228, pitch)
}

/// ASME B1.10M, by pitch in millimetres.
#[must_use]
pub fn unified_miniature(pitch: Length) -> Option<&'static MinorTolerance> {
    row(&UNIFIED_MINIATURE, pitch)
}

/// Every row held, for the pages that list them.
pub fn all() -> impl Iterator<Item = &'static MinorTolerance> {
    ISO_965.iter().chain(&ISO_228).chain(&UNIFIED_MINIATURE)
}

fn row(table: &'static [MinorTolerance], pitch: Length) -> Option<&'static MinorTolerance> {
    table.iter().find(|row| (in_mm(row.pitch.length()) - in_mm(pitch)).abs() < SAME_PITCH_MM)
}

const HANDBOOK: Source = Source::published(
    "ISO 965-1 TD1, as printed in Machinery's Handbook 27th ed. p. 1794, table 8",
);
const YAMAWA: Source = Source::published(
    "a tap maker's catalogue, 2022-23, tapping flow charts: least and largest minor",
);
const DGI: Source =
    Source::published("a tool dealer's catalogue, 2024, p. 782, metric 6H minor diameter limits");
const ENGINEERS_EDGE: Source =
    Source::published("a table of internal metric threads, M9 to M24, after ASME B1.13M-1995");
const LIBRARY: Source = Source::library("ASME B1.13M-2005");
const FORMULA: Source = Source {
    cite: "ISO 965-1 formula, 230 P^0.7 µm for 6H, to the nearest number of the R40 series",
    grade: Grade::Derived,
};
const EMUGE: Source =
    Source::published("a tap maker's wall chart, G threads: least and largest minor");
const TABLE_5: Source = Source::published(
    "Machinery's Handbook 31st ed. p. 1998, table 5, Unified miniature: least and largest minor",
);

const fn iso(pitch: f64, tolerance: f64, class: &'static str, source: Source) -> MinorTolerance {
    MinorTolerance { pitch: Pitch::Mm(pitch), tolerance: mm(tolerance), class, source }
}

const fn pipe(threads_per_inch: f64, tolerance: f64) -> MinorTolerance {
    MinorTolerance {
        pitch: Pitch::PerInch(threads_per_inch),
        tolerance: mm(tolerance),
        class: "ISO 228",
        source: EMUGE,
    }
}

const fn miniature(pitch: f64, tolerance: f64) -> MinorTolerance {
    iso(pitch, tolerance, "ASME B1.10M", TABLE_5)
}

#[rustfmt::skip]
static ISO_965: [MinorTolerance; 20] = [
    // No 6H is printed for the two finest pitches, and no 5H for the finest.
    iso(0.20, 0.038, "4H", HANDBOOK),
    iso(0.25, 0.056, "5H", HANDBOOK),
    iso(0.30, 0.085, "6H", HANDBOOK),
    iso(0.35, 0.100, "6H", HANDBOOK),
    iso(0.40, 0.112, "6H", HANDBOOK),
    iso(0.45, 0.125, "6H", HANDBOOK),
    iso(0.50, 0.140, "6H", HANDBOOK),
    iso(0.60, 0.160, "6H", HANDBOOK),
    iso(0.70, 0.180, "6H", HANDBOOK),
    iso(0.75, 0.190, "6H", ENGINEERS_EDGE),
    iso(0.80, 0.200, "6H", YAMAWA),
    iso(1.00, 0.236, "6H", ENGINEERS_EDGE),
    iso(1.25, 0.265, "6H", DGI),
    iso(1.50, 0.300, "6H", YAMAWA),
    iso(1.75, 0.335, "6H", YAMAWA),
    iso(2.00, 0.375, "6H", ENGINEERS_EDGE),
    iso(2.50, 0.450, "6H", LIBRARY),
    iso(3.00, 0.500, "6H", LIBRARY),
    iso(3.50, 0.560, "6H", FORMULA),
    iso(4.00, 0.600, "6H", FORMULA),
];

static ISO_228: [MinorTolerance; 4] =
    [pipe(28.0, 0.282), pipe(19.0, 0.445), pipe(14.0, 0.541), pipe(11.0, 0.640)];

#[rustfmt::skip]
static UNIFIED_MINIATURE: [MinorTolerance; 10] = [
    miniature(0.080, 0.037),
    miniature(0.090, 0.041),
    miniature(0.100, 0.044),
    miniature(0.125, 0.052),
    miniature(0.150, 0.060),
    miniature(0.175, 0.068),
    miniature(0.200, 0.076),
    miniature(0.225, 0.084),
    miniature(0.250, 0.092),
    miniature(0.300, 0.108),
];
