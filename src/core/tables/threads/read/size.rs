//! By what size a thread is called, and whether a typed size or pitch is that.

use std::sync::LazyLock;

use super::super::{Basic, Naming, Thread, all};
use super::figure::{Figure, Unit};
use crate::units::read::Notation;
use crate::units::{Pitch, in_inch, in_mm};

/// The size in a thread's name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Nominal {
    /// A number: BA, Unified below 1/4 in. Leading zeros count.
    Number {
        digits: &'static str,
        /// The major diameter, where a decimal of an inch names the size too: .190-32 is 10-32.
        inches: Option<f64>,
    },
    /// Inches; for pipe, of the bore it was once named for.
    Inch(f64),
    Mm(f64),
}

/// A thread with the size in its name.
pub(super) struct NamedThread {
    pub(super) thread: &'static Thread,
    pub(super) nominal: Nominal,
}

static NAMED: LazyLock<Vec<NamedThread>> = LazyLock::new(|| {
    all().filter_map(|thread| Some(NamedThread { thread, nominal: nominal(thread)? })).collect()
});

/// Every thread with the size in its name, in the order of the tables.
pub(super) fn named() -> &'static [NamedThread] {
    &NAMED
}

/// The size in the address of a thread, without its mark and its pitch.
fn nominal(thread: &'static Thread) -> Option<Nominal> {
    let size = thread.size;
    match (thread.system.system().naming, thread.pitch) {
        (Naming::Number, _) => Some(Nominal::Number { digits: size, inches: None }),
        (Naming::Metric, _) | (Naming::Unified, Pitch::Mm(_)) => metric(size),
        (Naming::Inch, _) => inches(size.split_once('x').map_or(size, |(size, _tpi)| size)),
        (Naming::Unified, Pitch::PerInch(_)) => unified(thread),
    }
}

/// `4-40` as No. 4, `1-4-20` as 1/4 in.
fn unified(thread: &'static Thread) -> Option<Nominal> {
    let (size, _tpi) = thread.size.rsplit_once('-')?;
    let number = size.parse().ok().filter(|number| is_number(thread, *number));
    match number {
        Some(_) => Some(Nominal::Number { digits: size, inches: major_inches(thread) }),
        None => inches(size),
    }
}

fn metric(size: &str) -> Option<Nominal> {
    let size = size.trim_start_matches(|mark: char| mark.is_ascii_alphabetic());
    let (size, _pitch) = size.split_once('x').unwrap_or((size, ""));
    size.parse().ok().map(Nominal::Mm)
}

/// Whether a Unified whole size is a number: `1-64` is No. 1, `1-8` is one inch.
fn is_number(thread: &Thread, number: f64) -> bool {
    major_inches(thread).is_some_and(|major| number < 1.0 || major < number / 2.0)
}

/// `1-1-4` as 1 1/4 in, `0.266` as it stands.
fn inches(size: &str) -> Option<Nominal> {
    let parts: Vec<f64> = size.split('-').map(|part| part.parse().ok()).collect::<Option<_>>()?;
    match parts.as_slice() {
        [size] => Some(Nominal::Inch(*size)),
        [numerator, denominator] => Some(Nominal::Inch(numerator / denominator)),
        [whole, numerator, denominator] => Some(Nominal::Inch(whole + numerator / denominator)),
        _ => None,
    }
}

/// Whether a thread is called by the size that was typed.
pub(super) fn is_called(named: &NamedThread, size: &Figure<'_>) -> bool {
    let value = size.number.value;
    let whole = match size.number.notation {
        Notation::Whole(digits) => Some(digits),
        _ => None,
    };
    match (named.nominal, size.unit) {
        (Nominal::Number { digits, .. }, _) if size.is_number => whole == Some(digits),
        _ if size.is_number => false,
        (_, Some(Unit::PerInch)) => false,
        (Nominal::Number { digits, .. }, None) if whole.is_some() => whole == Some(digits),
        (Nominal::Number { inches, .. }, None | Some(Unit::Inch)) => {
            whole.is_none() && inches.is_some_and(|inches| is_inch(inches, value))
        }
        (Nominal::Number { .. }, Some(Unit::Mm)) => false,
        (Nominal::Inch(inches), None | Some(Unit::Inch)) => is_inch(inches, value),
        (Nominal::Inch(_), Some(Unit::Mm)) => false,
        (Nominal::Mm(_), _) if size.number.is_vulgar() => false,
        (Nominal::Mm(millimetres), None | Some(Unit::Mm)) => is_mm(millimetres, value),
        (Nominal::Mm(_), Some(Unit::Inch)) => false,
    }
}

/// Whether a thread has the pitch that was typed. Without a unit it is read as its table prints it.
pub(super) fn has_pitch(thread: &Thread, pitch: &Figure<'_>) -> bool {
    let value = pitch.number.value;
    match (pitch.unit, thread.pitch) {
        (None, Pitch::PerInch(tpi)) | (Some(Unit::PerInch), Pitch::PerInch(tpi)) => {
            (tpi - value).abs() < 0.01
        }
        (None, Pitch::Mm(pitch)) | (Some(Unit::Mm), Pitch::Mm(pitch)) => is_mm(pitch, value),
        // The other way to say a pitch is rounded as it was typed: 5 BA is 43.1 tpi.
        (Some(Unit::PerInch), Pitch::Mm(_)) => {
            rounds_to(thread.pitch.threads_per_inch(), value, pitch.number.places())
        }
        (Some(Unit::Mm), Pitch::PerInch(_)) => {
            let places = pitch.number.places();
            places >= 2 && rounds_to(in_mm(thread.pitch.length()), value, places)
        }
        (Some(Unit::Inch), _) => false,
    }
}

/// The major diameter in inches.
fn major_inches(thread: &Thread) -> Option<f64> {
    match thread.basic {
        Basic::Major(major) => Some(in_inch(major.length())),
        Basic::EffectiveAtGauge(_) => None,
    }
}

/// To the three places of inches that drawings give: 5/16 may be typed .312 or .313.
fn is_inch(inches: f64, typed: f64) -> bool {
    (inches - typed).abs() <= 0.000_501
}

fn is_mm(millimetres: f64, typed: f64) -> bool {
    (millimetres - typed).abs() < 1e-6
}

fn rounds_to(value: f64, typed: f64, places: usize) -> bool {
    let half_place = match places {
        0 => 0.5,
        1 => 0.05,
        2 => 0.005,
        _ => 0.000_5,
    };
    (value - typed).abs() <= half_place + 1e-9
}
