//! How a row is written: the few ways a source prints a diameter and a pitch.

use super::{Basic, SystemId, Taper, Thread};
use crate::tables::source::Source;
use crate::units::{Pitch, Printed};

/// A parallel thread with its pitch in millimetres.
pub(super) const fn metric_pitch(
    system: SystemId,
    size: &'static str,
    designation: &'static str,
    major: Printed,
    pitch_mm: f64,
    sources: &'static [Source],
) -> Thread {
    Thread {
        system,
        size,
        designation,
        basic: Basic::Major(major),
        pitch: Pitch::Mm(pitch_mm),
        taper: None,
        sources,
        note: None,
    }
}

/// A parallel thread with its pitch in threads per inch.
pub(super) const fn inch_pitch(
    system: SystemId,
    size: &'static str,
    designation: &'static str,
    major: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    Thread {
        system,
        size,
        designation,
        basic: Basic::Major(major),
        pitch: Pitch::PerInch(threads_per_inch),
        taper: None,
        sources,
        note: None,
    }
}

/// The same row as a taper thread.
pub(super) const fn taper(row: Thread, gauge_length: Option<Printed>) -> Thread {
    Thread { taper: Some(Taper { gauge_length }), ..row }
}

/// The same row with a note for the reader.
pub(super) const fn noted(row: Thread, note: &'static str) -> Thread {
    Thread { note: Some(note), ..row }
}

/// `1/4` in.
pub(super) const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

/// `1 1/4` in.
pub(super) const fn mixed(inches: u8, numerator: u8, denominator: u8) -> Printed {
    Printed::mixed(inches, numerator, denominator)
}

/// Whole inches.
pub(super) const fn whole(inches: u8) -> Printed {
    Printed::mixed(inches, 0, 1)
}
