//! Printed limits of the metric screw and of the nut's effective diameter, 6g and 6H.
//!
//! BS 93 and ASME B1.1 print a formula instead: those are in [`crate::calc::screw_limits`].

use crate::tables::source::Source;
use crate::units::{Length, in_mm, mm};

/// What a pitch allows a 6g screw on its major diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MajorLimit {
    /// The pitch.
    pub pitch: Length,
    /// By how much the screw starts below the basic size, position g.
    pub allowance: Length,
    /// Tolerance of the major diameter, grade 6.
    pub tolerance: Length,
    /// Where the row was read.
    pub source: Source,
}

/// What a pitch and a size allow on the effective diameter, grade 6.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EffectiveLimit {
    /// The major diameter is more than this.
    pub over: Length,
    /// And no more than this.
    pub to: Length,
    /// The pitch.
    pub pitch: Length,
    /// Tolerance of the screw.
    pub screw: Length,
    /// Tolerance of the nut.
    pub nut: Length,
    /// Where the row was read.
    pub source: Source,
}

const CHART: Source =
    Source::published("a chart of metric external threads, 6g, after ASME B1.13M");
const GUIDE: Source = Source::published(
    "a chart of metric external threads, 6g, after ASME B1.13M, and a tool maker's guide to taps, 2022, p. 56, for the nut",
);
const LIBRARY: Source = Source::library("ASME B1.13M-2005");
const RECALLED: Source = Source::memory("ISO 965-1, tolerances of grade 6 and position g");

/// Pitches closer than this, in millimetres, are the same pitch.
const SAME_PITCH_MM: f64 = 1e-6;

/// The limits of the major diameter for a pitch.
#[must_use]
pub fn major_limit(pitch: Length) -> Option<&'static MajorLimit> {
    MAJOR.iter().find(|row| same(row.pitch, pitch))
}

/// The limits of the effective diameter for a size.
#[must_use]
pub fn effective_limit(major: Length, pitch: Length) -> Option<&'static EffectiveLimit> {
    EFFECTIVE.iter().find(|row| same(row.pitch, pitch) && row.over < major && major <= row.to)
}

fn same(pitch: Length, other: Length) -> bool {
    (in_mm(pitch) - in_mm(other)).abs() < SAME_PITCH_MM
}

/// In micrometres.
const fn g6(pitch: f64, allowance: f64, tolerance: f64, source: Source) -> MajorLimit {
    MajorLimit {
        pitch: mm(pitch),
        allowance: mm(allowance / 1000.0),
        tolerance: mm(tolerance / 1000.0),
        source,
    }
}

/// In micrometres.
const fn six(band: [f64; 2], pitch: f64, screw: f64, nut: f64, source: Source) -> EffectiveLimit {
    let [over, to] = band;
    EffectiveLimit {
        over: mm(over),
        to: mm(to),
        pitch: mm(pitch),
        screw: mm(screw / 1000.0),
        nut: mm(nut / 1000.0),
        source,
    }
}

#[rustfmt::skip]
static MAJOR: [MajorLimit; 18] = [
    g6(0.25, 18.0, 67.0, CHART),
    g6(0.30, 18.0, 75.0, RECALLED),
    g6(0.35, 19.0, 85.0, CHART),
    g6(0.40, 19.0, 95.0, CHART),
    g6(0.45, 20.0, 100.0, CHART),
    g6(0.50, 20.0, 106.0, CHART),
    g6(0.60, 21.0, 125.0, CHART),
    g6(0.70, 22.0, 140.0, CHART),
    g6(0.75, 22.0, 140.0, CHART),
    g6(0.80, 24.0, 150.0, RECALLED),
    g6(1.00, 26.0, 180.0, CHART),
    g6(1.25, 28.0, 212.0, CHART),
    g6(1.50, 32.0, 236.0, RECALLED),
    g6(1.75, 34.0, 265.0, LIBRARY),
    g6(2.00, 38.0, 280.0, RECALLED),
    g6(2.50, 42.0, 335.0, LIBRARY),
    g6(3.00, 48.0, 375.0, LIBRARY),
    g6(3.50, 53.0, 425.0, RECALLED),
];

/// The bands of the major diameter, in millimetres.
const SMALLEST: [f64; 2] = [0.99, 1.4];
const SMALL: [f64; 2] = [1.4, 2.8];
const TO_FIVE: [f64; 2] = [2.8, 5.6];
const TO_ELEVEN: [f64; 2] = [5.6, 11.2];
const TO_TWENTY_TWO: [f64; 2] = [11.2, 22.4];
const TO_FORTY_FIVE: [f64; 2] = [22.4, 45.0];

#[rustfmt::skip]
static EFFECTIVE: [EffectiveLimit; 27] = [
    six(SMALLEST, 0.30, 56.0, 75.0, RECALLED),
    six(SMALL, 0.35, 63.0, 85.0, GUIDE),
    six(SMALL, 0.40, 67.0, 90.0, GUIDE),
    six(SMALL, 0.45, 71.0, 95.0, GUIDE),
    six(TO_FIVE, 0.35, 67.0, 90.0, RECALLED),
    six(TO_FIVE, 0.50, 75.0, 100.0, GUIDE),
    six(TO_FIVE, 0.60, 85.0, 112.0, GUIDE),
    six(TO_FIVE, 0.70, 90.0, 118.0, GUIDE),
    six(TO_FIVE, 0.75, 90.0, 118.0, RECALLED),
    six(TO_FIVE, 0.80, 95.0, 125.0, RECALLED),
    six(TO_ELEVEN, 0.75, 100.0, 132.0, RECALLED),
    six(TO_ELEVEN, 1.00, 112.0, 150.0, GUIDE),
    six(TO_ELEVEN, 1.25, 118.0, 160.0, GUIDE),
    six(TO_ELEVEN, 1.50, 132.0, 180.0, RECALLED),
    six(TO_TWENTY_TWO, 1.00, 118.0, 160.0, RECALLED),
    six(TO_TWENTY_TWO, 1.25, 132.0, 180.0, RECALLED),
    six(TO_TWENTY_TWO, 1.50, 140.0, 190.0, RECALLED),
    six(TO_TWENTY_TWO, 1.75, 150.0, 200.0, LIBRARY),
    six(TO_TWENTY_TWO, 2.00, 160.0, 212.0, RECALLED),
    six(TO_TWENTY_TWO, 2.50, 170.0, 224.0, LIBRARY),
    six(TO_FORTY_FIVE, 1.00, 125.0, 170.0, RECALLED),
    six(TO_FORTY_FIVE, 1.50, 150.0, 200.0, RECALLED),
    six(TO_FORTY_FIVE, 2.00, 170.0, 224.0, RECALLED),
    six(TO_FORTY_FIVE, 3.00, 200.0, 265.0, LIBRARY),
    six(TO_FORTY_FIVE, 3.50, 212.0, 280.0, RECALLED),
    six(TO_TWENTY_TWO, 0.75, 106.0, 140.0, RECALLED),
    six(TO_ELEVEN, 0.50, 85.0, 112.0, RECALLED),
];
