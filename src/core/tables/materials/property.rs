//! What a material weighs, what it bears, how hard it is and how well it cuts, as sources print it.
//!
//! One row a figure and condition. Leaves out: speeds and feeds, which have files of their own.

use std::fmt;

use crate::tables::source::Source;
use crate::units::{Density, Stress, grams_per_cm3, ksi, newtons_per_mm2};

/// A figure as a source prints it: one value, a range, or a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Span<T> {
    /// One figure.
    Exactly(T),
    /// From the first to the second.
    Between(T, T),
    /// A least figure.
    AtLeast(T),
    /// A greatest figure.
    AtMost(T),
}

/// The scale a hardness is read on. The figures of two scales do not compare.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HardnessScale {
    /// Brinell.
    Brinell,
    /// Vickers.
    Vickers,
    /// Rockwell B.
    RockwellB,
    /// Rockwell C.
    RockwellC,
    /// Rockwell M, for plastics.
    RockwellM,
}

/// What a machinability figure is a percentage of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MachinabilityBasis {
    /// Free-cutting brass (CZ121, CW614N, C36000) is 100.
    FreeCuttingBrass,
    /// Resulphurised steel AISI 1212 is 100.
    Steel1212,
}

/// A quantity with its figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measure {
    /// Density.
    Density(Span<Density>),
    /// Ultimate tensile strength.
    TensileStrength(Span<Stress>),
    /// 0.2 % proof stress or yield stress, as the source has it.
    ProofStress(Span<Stress>),
    /// Elongation at break, in percent.
    ElongationPercent(Span<f64>),
    /// Hardness on a scale.
    Hardness(HardnessScale, Span<f64>),
    /// How well it cuts, in percent of a standard metal.
    MachinabilityPercent(MachinabilityBasis, Span<f64>),
}

/// One figure in one condition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Property {
    /// The quantity and its figure.
    pub measure: Measure,
    /// The condition it holds for: `cold drawn, 16 to 40 mm`; empty where the source names none.
    pub condition: &'static str,
    /// Where it comes from.
    pub source: Source,
}

impl fmt::Display for HardnessScale {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Brinell => "HB",
            Self::Vickers => "HV",
            Self::RockwellB => "HRB",
            Self::RockwellC => "HRC",
            Self::RockwellM => "HRM",
        })
    }
}

impl fmt::Display for MachinabilityBasis {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::FreeCuttingBrass => "free-cutting brass is 100",
            Self::Steel1212 => "AISI 1212 steel is 100",
        })
    }
}

impl<T: Copy> Span<T> {
    /// The same span of another quantity.
    pub fn map<U>(self, with: impl Fn(T) -> U) -> Span<U> {
        match self {
            Self::Exactly(value) => Span::Exactly(with(value)),
            Self::Between(low, high) => Span::Between(with(low), with(high)),
            Self::AtLeast(low) => Span::AtLeast(with(low)),
            Self::AtMost(high) => Span::AtMost(with(high)),
        }
    }
}

/// The rows of the tables are constants, and a constant function takes no closure.
macro_rules! mapped {
    ($span:expr, $with:path) => {
        match $span {
            Span::Exactly(value) => Span::Exactly($with(value)),
            Span::Between(low, high) => Span::Between($with(low), $with(high)),
            Span::AtLeast(low) => Span::AtLeast($with(low)),
            Span::AtMost(high) => Span::AtMost($with(high)),
        }
    };
}

/// One figure.
pub(super) const fn exactly(value: f64) -> Span<f64> {
    Span::Exactly(value)
}

/// A range.
pub(super) const fn between(low: f64, high: f64) -> Span<f64> {
    Span::Between(low, high)
}

/// A least figure.
pub(super) const fn at_least(low: f64) -> Span<f64> {
    Span::AtLeast(low)
}

/// A greatest figure.
pub(super) const fn at_most(high: f64) -> Span<f64> {
    Span::AtMost(high)
}

impl Property {
    /// Density in grams per cubic centimetre.
    pub(super) const fn density(span: Span<f64>, condition: &'static str, source: Source) -> Self {
        Self { measure: Measure::Density(mapped!(span, grams_per_cm3)), condition, source }
    }

    /// Tensile strength in N/mm².
    pub(super) const fn tensile(span: Span<f64>, condition: &'static str, source: Source) -> Self {
        let measure = Measure::TensileStrength(mapped!(span, newtons_per_mm2));
        Self { measure, condition, source }
    }

    /// Tensile strength in thousands of pounds a square inch.
    pub(super) const fn tensile_ksi(
        span: Span<f64>,
        condition: &'static str,
        source: Source,
    ) -> Self {
        Self { measure: Measure::TensileStrength(mapped!(span, ksi)), condition, source }
    }

    /// Proof or yield stress in N/mm².
    pub(super) const fn proof(span: Span<f64>, condition: &'static str, source: Source) -> Self {
        Self { measure: Measure::ProofStress(mapped!(span, newtons_per_mm2)), condition, source }
    }

    /// Proof or yield stress in thousands of pounds a square inch.
    pub(super) const fn proof_ksi(
        span: Span<f64>,
        condition: &'static str,
        source: Source,
    ) -> Self {
        Self { measure: Measure::ProofStress(mapped!(span, ksi)), condition, source }
    }

    /// Elongation at break in percent.
    pub(super) const fn elongation(
        span: Span<f64>,
        condition: &'static str,
        source: Source,
    ) -> Self {
        Self { measure: Measure::ElongationPercent(span), condition, source }
    }

    /// Hardness on a scale.
    pub(super) const fn hardness(
        scale: HardnessScale,
        span: Span<f64>,
        condition: &'static str,
        source: Source,
    ) -> Self {
        Self { measure: Measure::Hardness(scale, span), condition, source }
    }

    /// Machinability in percent of a standard metal.
    pub(super) const fn machinability(
        basis: MachinabilityBasis,
        span: Span<f64>,
        condition: &'static str,
        source: Source,
    ) -> Self {
        Self { measure: Measure::MachinabilityPercent(basis, span), condition, source }
    }
}
