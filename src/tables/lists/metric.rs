//! Metric tapping lists: ISO 2306, a training handbook's, and diameter less pitch.
//!
//! The training handbook prints 9.0 for M9 × 1, a slip for 8.0, left out. Thread-forming taps want
//! larger holes and have no list here.

use super::{List, ListedDrill};
use crate::tables::source::{Grade, Source};
use crate::tables::threads::SystemId;
use crate::units::Printed::Mm;

/// The standard itself was not read: a CAD library names it as its source.
const HELD_2306: Source =
    Source { cite: "ISO 2306, as held by the CAD library FreeCAD 0.20.2", grade: Grade::Library };
const TRAINING: Source = Source::published(
    "Institut für Berufliche Entwicklung, 'Thread Cutting by Dies and Taps', trainees' handbook, appendix 1",
);
const FINE_HELD: Source = Source {
    cite: "diameter less pitch exactly, as the CAD library FreeCAD 0.20.2 holds fine threads",
    grade: Grade::Library,
};

const ISO_2306: List = List { name: "ISO 2306", system: SystemId::Metric, source: HELD_2306 };
const TRAINING_COARSE: List =
    List { name: "training handbook", system: SystemId::Metric, source: TRAINING };
const TRAINING_FINE: List =
    List { name: "training handbook", system: SystemId::MetricFine, source: TRAINING };
const LESS_PITCH: List =
    List { name: "diameter less pitch", system: SystemId::MetricFine, source: FINE_HELD };

/// Size, drill, and the drill as the list names it.
#[rustfmt::skip]
pub(super) static ROWS: &[ListedDrill] = &[
    ISO_2306.row("m1", Mm(0.75), "0.75 mm"),
    ISO_2306.row("m1.1", Mm(0.85), "0.85 mm"),
    ISO_2306.row("m1.2", Mm(0.95), "0.95 mm"),
    ISO_2306.row("m1.4", Mm(1.1), "1.1 mm"),
    ISO_2306.row("m1.6", Mm(1.25), "1.25 mm"),
    ISO_2306.row("m1.8", Mm(1.45), "1.45 mm"),
    ISO_2306.row("m2", Mm(1.6), "1.6 mm"),
    ISO_2306.row("m2.2", Mm(1.75), "1.75 mm"),
    ISO_2306.row("m2.5", Mm(2.05), "2.05 mm"),
    ISO_2306.row("m3", Mm(2.5), "2.5 mm"),
    ISO_2306.row("m3.5", Mm(2.9), "2.9 mm"),
    ISO_2306.row("m4", Mm(3.3), "3.3 mm"),
    ISO_2306.row("m4.5", Mm(3.7), "3.7 mm"),
    ISO_2306.row("m5", Mm(4.2), "4.2 mm"),
    ISO_2306.row("m6", Mm(5.0), "5 mm"),
    ISO_2306.row("m7", Mm(6.0), "6 mm"),
    ISO_2306.row("m8", Mm(6.8), "6.8 mm"),
    ISO_2306.row("m9", Mm(7.8), "7.8 mm"),
    ISO_2306.row("m10", Mm(8.5), "8.5 mm"),
    ISO_2306.row("m11", Mm(9.5), "9.5 mm"),
    ISO_2306.row("m12", Mm(10.2), "10.2 mm"),
    ISO_2306.row("m14", Mm(12.0), "12 mm"),
    ISO_2306.row("m16", Mm(14.0), "14 mm"),
    ISO_2306.row("m18", Mm(15.5), "15.5 mm"),
    ISO_2306.row("m20", Mm(17.5), "17.5 mm"),
    ISO_2306.row("m22", Mm(19.5), "19.5 mm"),
    ISO_2306.row("m24", Mm(21.0), "21 mm"),
    ISO_2306.row("m27", Mm(24.0), "24 mm"),
    ISO_2306.row("m30", Mm(26.5), "26.5 mm"),
    ISO_2306.row("m33", Mm(29.5), "29.5 mm"),
    ISO_2306.row("m36", Mm(32.0), "32 mm"),
    TRAINING_COARSE.row("m6", Mm(5.0), "5 mm"),
    TRAINING_COARSE.row("m8", Mm(6.75), "6.75 mm"),
    TRAINING_COARSE.row("m10", Mm(8.5), "8.5 mm"),
    TRAINING_COARSE.row("m12", Mm(10.25), "10.25 mm"),
    TRAINING_COARSE.row("m14", Mm(12.0), "12 mm"),
    TRAINING_COARSE.row("m16", Mm(14.0), "14 mm"),
    TRAINING_COARSE.row("m18", Mm(15.5), "15.5 mm"),
    TRAINING_COARSE.row("m20", Mm(17.5), "17.5 mm"),
    TRAINING_COARSE.row("m22", Mm(19.5), "19.5 mm"),
    TRAINING_COARSE.row("m24", Mm(21.0), "21 mm"),
    TRAINING_COARSE.row("m27", Mm(24.0), "24 mm"),
    TRAINING_COARSE.row("m30", Mm(26.5), "26.5 mm"),
    TRAINING_COARSE.row("m33", Mm(29.5), "29.5 mm"),
    TRAINING_FINE.row("m6x0.75", Mm(5.2), "5.2 mm"),
    TRAINING_FINE.row("m8x0.75", Mm(7.2), "7.2 mm"),
    TRAINING_FINE.row("m8x1", Mm(7.0), "7 mm"),
    TRAINING_FINE.row("m10x0.75", Mm(9.2), "9.2 mm"),
    TRAINING_FINE.row("m10x1", Mm(9.0), "9 mm"),
    TRAINING_FINE.row("m10x1.25", Mm(8.8), "8.8 mm"),
    TRAINING_FINE.row("m12x1", Mm(11.0), "11 mm"),
    TRAINING_FINE.row("m12x1.25", Mm(10.8), "10.8 mm"),
    TRAINING_FINE.row("m12x1.5", Mm(10.5), "10.5 mm"),
    TRAINING_FINE.row("m14x1", Mm(13.0), "13 mm"),
    TRAINING_FINE.row("m14x1.25", Mm(12.8), "12.8 mm"),
    TRAINING_FINE.row("m22x1.5", Mm(20.5), "20.5 mm"),
    TRAINING_FINE.row("m22x2", Mm(20.0), "20 mm"),
    TRAINING_FINE.row("m24x1", Mm(23.0), "23 mm"),
    TRAINING_FINE.row("m24x1.5", Mm(22.5), "22.5 mm"),
    TRAINING_FINE.row("m24x2", Mm(22.0), "22 mm"),
    TRAINING_FINE.row("m27x1", Mm(26.0), "26 mm"),
    TRAINING_FINE.row("m27x1.5", Mm(25.5), "25.5 mm"),
    TRAINING_FINE.row("m27x2", Mm(25.0), "25 mm"),
    TRAINING_FINE.row("m30x1", Mm(29.0), "29 mm"),
    TRAINING_FINE.row("m30x1.5", Mm(28.5), "28.5 mm"),
    TRAINING_FINE.row("m30x2", Mm(28.0), "28 mm"),
    TRAINING_FINE.row("m30x3", Mm(27.0), "27 mm"),
    LESS_PITCH.row("m3x0.35", Mm(2.65), "2.65 mm"),
    LESS_PITCH.row("m4x0.5", Mm(3.5), "3.5 mm"),
    LESS_PITCH.row("m5x0.5", Mm(4.5), "4.5 mm"),
    LESS_PITCH.row("m6x0.75", Mm(5.25), "5.25 mm"),
    LESS_PITCH.row("m7x0.75", Mm(6.25), "6.25 mm"),
    LESS_PITCH.row("m8x0.75", Mm(7.25), "7.25 mm"),
    LESS_PITCH.row("m8x1", Mm(7.0), "7 mm"),
    LESS_PITCH.row("m10x0.75", Mm(9.25), "9.25 mm"),
    LESS_PITCH.row("m10x1", Mm(9.0), "9 mm"),
    LESS_PITCH.row("m10x1.25", Mm(8.75), "8.75 mm"),
    LESS_PITCH.row("m12x1", Mm(11.0), "11 mm"),
    LESS_PITCH.row("m12x1.25", Mm(10.75), "10.75 mm"),
    LESS_PITCH.row("m12x1.5", Mm(10.5), "10.5 mm"),
    LESS_PITCH.row("m14x1", Mm(13.0), "13 mm"),
    LESS_PITCH.row("m14x1.25", Mm(12.75), "12.75 mm"),
    LESS_PITCH.row("m14x1.5", Mm(12.5), "12.5 mm"),
    LESS_PITCH.row("m16x1", Mm(15.0), "15 mm"),
    LESS_PITCH.row("m16x1.5", Mm(14.5), "14.5 mm"),
    LESS_PITCH.row("m18x1", Mm(17.0), "17 mm"),
    LESS_PITCH.row("m18x1.5", Mm(16.5), "16.5 mm"),
    LESS_PITCH.row("m18x2", Mm(16.0), "16 mm"),
    LESS_PITCH.row("m20x1", Mm(19.0), "19 mm"),
    LESS_PITCH.row("m20x1.5", Mm(18.5), "18.5 mm"),
    LESS_PITCH.row("m20x2", Mm(18.0), "18 mm"),
    LESS_PITCH.row("m22x1", Mm(21.0), "21 mm"),
    LESS_PITCH.row("m22x1.5", Mm(20.5), "20.5 mm"),
    LESS_PITCH.row("m22x2", Mm(20.0), "20 mm"),
    LESS_PITCH.row("m24x1", Mm(23.0), "23 mm"),
    LESS_PITCH.row("m24x1.5", Mm(22.5), "22.5 mm"),
    LESS_PITCH.row("m24x2", Mm(22.0), "22 mm"),
    LESS_PITCH.row("m27x1", Mm(26.0), "26 mm"),
    LESS_PITCH.row("m27x1.5", Mm(25.5), "25.5 mm"),
    LESS_PITCH.row("m27x2", Mm(25.0), "25 mm"),
    LESS_PITCH.row("m30x1", Mm(29.0), "29 mm"),
    LESS_PITCH.row("m30x1.5", Mm(28.5), "28.5 mm"),
    LESS_PITCH.row("m30x2", Mm(28.0), "28 mm"),
    LESS_PITCH.row("m30x3", Mm(27.0), "27 mm"),
    LESS_PITCH.row("m33x1.5", Mm(31.5), "31.5 mm"),
    LESS_PITCH.row("m33x2", Mm(31.0), "31 mm"),
    LESS_PITCH.row("m33x3", Mm(30.0), "30 mm"),
    LESS_PITCH.row("m36x1.5", Mm(34.5), "34.5 mm"),
    LESS_PITCH.row("m36x2", Mm(34.0), "34 mm"),
    LESS_PITCH.row("m36x3", Mm(33.0), "33 mm"),
];
