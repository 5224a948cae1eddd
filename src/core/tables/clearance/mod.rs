//! Clearance holes as printed by ISO 273, ASME B18.2.8 and BS 4186.
//!
//! A row is for a nominal diameter, whatever the pitch. Threads without a standard have no row
//! here; their stated rule is in [`crate::calc::clearance`].

mod metric;
mod unified;

use std::fmt;

use crate::tables::drills::SAME_SIZE;
use crate::tables::source::Source;
use crate::tables::threads::{Basic, ClearanceFamily, SystemId, Thread};
use crate::units::{Printed, in_mm};

/// Whose figures a row holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standard {
    /// ISO 273: fine, medium, coarse.
    Iso273,
    /// BS 4186:1967, the older British figure: close, medium, free.
    Bs4186,
    /// ASME B18.2.8: close, normal, loose, as inch drills.
    AsmeB1828,
    /// ASME B18.2.8, the same screws with metric drills.
    AsmeB1828Metric,
    /// In print, but not in the standard.
    Unofficial,
}

impl Standard {
    /// The words the standard has for close, medium and free.
    #[must_use]
    pub const fn fit_words(self) -> [&'static str; 3] {
        match self {
            Self::Iso273 => ["fine", "medium", "coarse"],
            Self::Bs4186 => ["close", "medium", "free"],
            Self::AsmeB1828 | Self::AsmeB1828Metric | Self::Unofficial => {
                ["close", "normal", "loose"]
            }
        }
    }
}

impl fmt::Display for Standard {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Iso273 => "ISO 273",
            Self::Bs4186 => "BS 4186",
            Self::AsmeB1828 => "ASME B18.2.8",
            Self::AsmeB1828Metric => "ASME B18.2.8, metric drills",
            Self::Unofficial => "a parts library, not in ASME B18.2.8",
        })
    }
}

/// The clearance holes of one nominal diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Holes {
    /// Whose figures.
    pub standard: Standard,
    /// The screw's nominal (major) diameter.
    pub nominal: Printed,
    /// The closest hole.
    pub close: Printed,
    /// The usual hole.
    pub medium: Printed,
    /// The largest hole.
    pub free: Printed,
    /// Where the row was read.
    pub source: Source,
}

/// Every row, metric first, by standard and then by size.
pub fn all() -> impl Iterator<Item = &'static Holes> {
    metric::ROWS.iter().chain(unified::ROWS)
}

/// The rows in print for a thread's nominal diameter, the ruling standard first.
///
/// Metric coarse and fine share ISO 273 and BS 4186; the Unified series share ASME B18.2.8.
/// The two metric standards part at M12, M14 and M16.
#[must_use = "the rows are only looked up when the iterator is used"]
pub fn printed_for(thread: &Thread) -> impl Iterator<Item = &'static Holes> {
    let nominal = match thread.basic {
        Basic::Major(major) => Some(major.length()),
        Basic::EffectiveAtGauge(_) => None,
    };
    rows_of(thread.system).iter().filter(move |row| {
        nominal
            .is_some_and(|nominal| in_mm(row.nominal.length() - nominal).abs() < in_mm(SAME_SIZE))
    })
}

/// The rows that speak of a system's screws.
fn rows_of(system: SystemId) -> &'static [Holes] {
    match system.system().clearance {
        ClearanceFamily::Metric => metric::ROWS,
        ClearanceFamily::Unified => unified::ROWS,
        ClearanceFamily::Rule => &[],
    }
}
