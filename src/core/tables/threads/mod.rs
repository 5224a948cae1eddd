//! The thread systems and their sizes.
//!
//! A row holds what its source prints: a diameter and a pitch. Effective and minor diameters,
//! limits and tapping sizes are computed in [`crate::calc`]. Square, Acme and trapezoidal threads
//! are not covered yet.

mod ba;
mod cycle;
#[macro_use]
mod form;
mod loewenherz;
mod metric;
mod metric_fine;
mod model_engineer;
mod pipe;
pub mod read;
mod rows;
mod sources;
#[macro_use]
mod system;
mod unified;
mod unified_miniature;
mod whitworth;

pub use form::{AnySize, Basis, Finish, FormLimit, Minors, Rounding, Shape, Tensile};
pub use system::{
    ClearanceFamily, HeadFamily, HexagonFamily, Meant, Naming, SizeLimit, System, TappingLists,
};

use crate::tables::source::{Grade, Source};
use crate::units::{Pitch, Printed};

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
    /// The size as addresses write it: `5`, `1-4`, `m3x0.35`, `4-40`.
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

forms! {
    /// ISO metric, 60° (ISO 68-1).
    IsoMetric = metric::FORM;
    /// Unified inch, 60° (ASME B1.1).
    Unified = unified::FORM;
    /// Whitworth, 55°, rounded (BS 84): BSW, BSF, brass, Model Engineer.
    Whitworth = whitworth::FORM;
    /// British Association, 47½°, rounded (BS 93).
    BritishAssociation = ba::FORM;
    /// Whitworth, 55°, on pipe sizes in millimetres (ISO 228, ISO 7).
    Pipe = pipe::FORM;
    /// Cycle, 60°, rounded (BS 811).
    Cycle = cycle::FORM;
    /// Miniature S, 60° with the shallower internal thread (ISO 1501).
    Miniature = metric::MINIATURE_FORM;
    /// Unified miniature, 60° with the shallower internal thread (ASME B1.10M).
    UnifiedMiniature = unified_miniature::FORM;
    /// Löwenherz, 53°08′, cut flat.
    Loewenherz = loewenherz::FORM;
    /// American taper pipe, 60°, taper 1 in 16 (ASME B1.20.1).
    TaperPipe = pipe::TAPER_FORM;
}

systems! {
    /// British Association.
    Ba = ba::SYSTEM;
    /// British Standard Whitworth.
    Bsw = whitworth::BSW;
    /// British Standard Fine.
    Bsf = whitworth::BSF;
    /// Brass thread, 26 tpi at every size.
    Bsb = whitworth::BSB;
    /// Model Engineer, 40 tpi.
    Me40 = model_engineer::ME_40;
    /// Model Engineer, 32 tpi.
    Me32 = model_engineer::ME_32;
    /// Model Engineer, 26 tpi.
    Me26 = model_engineer::ME_26;
    /// British Standard pipe, parallel (ISO 228 G).
    Bspp = pipe::BSPP;
    /// British Standard pipe, taper (ISO 7 R and Rc, with the parallel internal Rp).
    Bspt = pipe::BSPT;
    /// British Standard cycle.
    Bsc = cycle::SYSTEM;
    /// ISO metric coarse.
    Metric = metric::COARSE;
    /// ISO metric fine.
    MetricFine = metric_fine::SYSTEM;
    /// Miniature S.
    Miniature = metric::MINIATURE;
    /// Unified coarse.
    Unc = unified::UNC;
    /// Unified fine.
    Unf = unified::UNF;
    /// Unified extra fine.
    Unef = unified::UNEF;
    /// Unified special.
    Uns = unified::UNS;
    /// Unified miniature, with the sizes below No. 0.
    Unm = unified_miniature::SYSTEM;
    /// Löwenherz.
    Loewenherz = loewenherz::SYSTEM;
    /// American taper pipe.
    Npt = pipe::NPT;
    /// Model taper pipe.
    ModelTaperPipe = pipe::MODEL_TAPER_PIPE;
}

/// Every system, in the order the pages list them.
#[must_use]
pub fn systems() -> &'static [&'static System] {
    SYSTEMS
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

impl Thread {
    /// The form of this thread's system.
    #[must_use]
    pub fn form(&self) -> Form {
        self.system.system().form
    }

    /// How far its diameter and pitch can be trusted: as far as the surest of its sources.
    #[must_use]
    pub fn grade(&self) -> Grade {
        self.sources.iter().map(|source| source.grade).min().unwrap_or(Grade::Memory)
    }

    /// The page's address.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/threads/{}/{}", self.system.system().slug, self.size)
    }
}
