//! The thread systems and their sizes.
//!
//! A row holds what its source prints: a diameter and a pitch. Effective and minor diameters,
//! limits and tapping sizes are computed in [`crate::calc`]. Square, Acme and trapezoidal threads
//! are not covered yet.

mod ba;
mod cycle;
mod metric;
mod metric_fine;
mod model_engineer;
mod pipe;
pub mod read;
mod rows;
mod sources;
mod unified;
mod unified_miniature;
mod whitworth;

use crate::tables::source::Source;
use crate::units::{Pitch, Printed};

/// The shape of a thread, as its standard draws it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// British Association, 47½°, rounded (BS 93).
    BritishAssociation,
    /// Whitworth, 55°, rounded (BS 84): BSW, BSF, brass, Model Engineer.
    Whitworth,
    /// Whitworth, 55°, on pipe sizes in millimetres (ISO 228, ISO 7).
    Pipe,
    /// ISO metric, 60° (ISO 68-1).
    IsoMetric,
    /// Unified inch, 60° (ASME B1.1).
    Unified,
    /// Miniature, 60° with the shallower internal thread (ISO 1501, ASME B1.10).
    Miniature,
    /// Cycle, 60°, rounded (BS 811).
    Cycle,
    /// American taper pipe, 60°, taper 1 in 16 (ASME B1.20.1).
    TaperPipe,
}

/// What the first diameter of a row is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basic {
    /// The basic major diameter.
    Major(Printed),
    /// The effective diameter at the gauge plane of a taper thread (E1 of ASME B1.20.1).
    EffectiveAtGauge(Printed),
}

/// A taper thread's further primary figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taper {
    /// Distance from the small end to the gauge plane, where a source prints one.
    pub gauge_length: Option<Printed>,
}

/// One thread size: a row of its system's table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// The system it belongs to.
    pub system: SystemId,
    /// The size in address dress: `5`, `1-4`, `m3x0.35`, `4-40`.
    pub size: &'static str,
    /// The name the trade writes: `5 BA`, `1/4 in BSW`, `M3 × 0.35`.
    pub designation: &'static str,
    /// The diameter printed by the source.
    pub basic: Basic,
    /// The pitch printed by the source.
    pub pitch: Pitch,
    /// Set on taper threads.
    pub taper: Option<Taper>,
    /// Where the row was read.
    pub sources: &'static [Source],
    /// What a reader should know: historical, kept for old work, and the like.
    pub note: Option<&'static str>,
}

/// A thread system: its form, its standard, what it is for, and its sizes in order.
#[derive(Debug)]
pub struct System {
    /// Which system.
    pub id: SystemId,
    /// The address part: `ba`, `metric-fine`.
    pub slug: &'static str,
    /// The system's full name.
    pub name: &'static str,
    /// The suffix or mark the trade writes: `BA`, `BSW`, `M`.
    pub mark: &'static str,
    /// The standard, with its year where the figures depend on it.
    pub standard: &'static str,
    /// The shape.
    pub form: Form,
    /// Where a model engineer meets it.
    pub used_for: &'static str,
    /// The sizes, largest first for BA and smallest first elsewhere, as the trade lists them.
    pub threads: &'static [Thread],
}

/// Every system we hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum SystemId {
    /// British Association.
    Ba,
    /// British Standard Whitworth.
    Bsw,
    /// British Standard Fine.
    Bsf,
    /// Brass thread, 26 tpi at every size.
    Bsb,
    /// Model Engineer, 40 tpi.
    Me40,
    /// Model Engineer, 32 tpi.
    Me32,
    /// Model Engineer, 26 tpi.
    Me26,
    /// British Standard pipe, parallel (ISO 228 G).
    Bspp,
    /// British Standard pipe, taper (ISO 7 R and Rc, with the parallel internal Rp).
    Bspt,
    /// British Standard cycle.
    Bsc,
    /// ISO metric coarse.
    Metric,
    /// ISO metric fine.
    MetricFine,
    /// Miniature S.
    Miniature,
    /// Unified coarse.
    Unc,
    /// Unified fine.
    Unf,
    /// Unified extra fine.
    Unef,
    /// Unified special.
    Uns,
    /// Unified miniature, with the sizes below No. 0.
    Unm,
    /// American taper pipe.
    Npt,
    /// Model taper pipe.
    ModelTaperPipe,
}

static SYSTEMS: [&System; 20] = [
    &ba::SYSTEM,
    &whitworth::BSW,
    &whitworth::BSF,
    &whitworth::BSB,
    &model_engineer::ME_40,
    &model_engineer::ME_32,
    &model_engineer::ME_26,
    &pipe::BSPP,
    &pipe::BSPT,
    &cycle::SYSTEM,
    &metric::COARSE,
    &metric_fine::SYSTEM,
    &metric::MINIATURE,
    &unified::UNC,
    &unified::UNF,
    &unified::UNEF,
    &unified::UNS,
    &unified_miniature::SYSTEM,
    &pipe::NPT,
    &pipe::MODEL_TAPER_PIPE,
];

/// Every system, in the order the pages list them.
#[must_use]
pub fn systems() -> &'static [&'static System] {
    &SYSTEMS
}

/// Every thread of every system.
pub fn all() -> impl Iterator<Item = &'static Thread> {
    SYSTEMS.iter().flat_map(|system| system.threads)
}

/// The system with this address part.
#[must_use]
pub fn system(slug: &str) -> Option<&'static System> {
    SYSTEMS.iter().copied().find(|system| system.slug == slug)
}

/// The thread at this address: `find("ba", "5")`.
#[must_use]
pub fn find(system_slug: &str, size: &str) -> Option<&'static Thread> {
    system(system_slug)?.threads.iter().find(|thread| thread.size == size)
}

impl SystemId {
    /// The system itself.
    #[must_use]
    pub fn system(self) -> &'static System {
        match self {
            Self::Ba => &ba::SYSTEM,
            Self::Bsw => &whitworth::BSW,
            Self::Bsf => &whitworth::BSF,
            Self::Bsb => &whitworth::BSB,
            Self::Me40 => &model_engineer::ME_40,
            Self::Me32 => &model_engineer::ME_32,
            Self::Me26 => &model_engineer::ME_26,
            Self::Bspp => &pipe::BSPP,
            Self::Bspt => &pipe::BSPT,
            Self::Bsc => &cycle::SYSTEM,
            Self::Metric => &metric::COARSE,
            Self::MetricFine => &metric_fine::SYSTEM,
            Self::Miniature => &metric::MINIATURE,
            Self::Unc => &unified::UNC,
            Self::Unf => &unified::UNF,
            Self::Unef => &unified::UNEF,
            Self::Uns => &unified::UNS,
            Self::Unm => &unified_miniature::SYSTEM,
            Self::Npt => &pipe::NPT,
            Self::ModelTaperPipe => &pipe::MODEL_TAPER_PIPE,
        }
    }
}

impl Thread {
    /// The form of this thread's system.
    #[must_use]
    pub fn form(&self) -> Form {
        self.system.system().form
    }

    /// The page's address.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/threads/{}/{}", self.system.system().slug, self.size)
    }
}
