//! What a material weighs, bears, and how hard it is, as the JSON of a material has it.

use serde::Serialize;
use utoipa::ToSchema;

use super::figures;
use crate::tables::materials::{Measure, Property, Span};
use crate::units::{in_grams_per_cm3, in_newtons_per_mm2};

/// The figures of a material by quantity; a quantity without one is an empty list.
#[derive(Debug, Default, Serialize, ToSchema)]
#[schema(as = MaterialProperties)]
pub(super) struct Properties {
    /// Density, in grams a cubic centimetre.
    density_g_per_cm3: Vec<Range>,
    /// Ultimate tensile strength, in newtons a square millimetre.
    tensile_strength_n_per_mm2: Vec<Range>,
    /// 0.2 % proof or yield stress, in newtons a square millimetre.
    proof_stress_n_per_mm2: Vec<Range>,
    /// Elongation at break, in percent.
    elongation_percent: Vec<Range>,
    /// Hardness, each figure on its own scale.
    hardness: Vec<Range>,
    /// How well it cuts, in percent of the metal named as the scale.
    machinability_percent: Vec<Range>,
}

/// A figure as a source prints it, in one condition.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PropertyRange)]
struct Range {
    /// The least; null where only a greatest is printed.
    #[schema(required)]
    low: Option<f64>,
    /// The greatest, the same as the least where one figure is printed; null where only a least is printed.
    #[schema(required)]
    high: Option<f64>,
    /// The scale of a hardness, HB or HV, or the metal that is 100 for machinability; else null.
    #[schema(required)]
    scale: Option<String>,
    /// The condition it holds for; may be empty.
    condition: &'static str,
    /// Where it was read, or what stands in a source's place.
    source: String,
    /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
    grade: &'static str,
}

impl Properties {
    /// Sorts the rows by quantity; each list keeps their order.
    pub(super) fn of(rows: &[Property]) -> Self {
        let mut found = Self::default();
        for row in rows {
            let (list, span, scale) = match row.measure {
                Measure::Density(span) => {
                    (&mut found.density_g_per_cm3, span.map(in_grams_per_cm3), None)
                }
                Measure::TensileStrength(span) => {
                    (&mut found.tensile_strength_n_per_mm2, span.map(in_newtons_per_mm2), None)
                }
                Measure::ProofStress(span) => {
                    (&mut found.proof_stress_n_per_mm2, span.map(in_newtons_per_mm2), None)
                }
                Measure::ElongationPercent(span) => (&mut found.elongation_percent, span, None),
                Measure::Hardness(scale, span) => {
                    (&mut found.hardness, span, Some(scale.to_string()))
                }
                Measure::MachinabilityPercent(basis, span) => {
                    (&mut found.machinability_percent, span, Some(basis.to_string()))
                }
            };
            list.push(Range::of(row, span, scale));
        }
        found
    }
}

impl Range {
    fn of(row: &Property, span: Span<f64>, scale: Option<String>) -> Self {
        let (low, high) = match span.map(figures::number) {
            Span::Exactly(value) => (Some(value), Some(value)),
            Span::Between(low, high) => (Some(low), Some(high)),
            Span::AtLeast(low) => (Some(low), None),
            Span::AtMost(high) => (None, Some(high)),
        };
        Self {
            low,
            high,
            scale,
            condition: row.condition,
            source: figures::source(row.source),
            grade: row.source.grade.slug(),
        }
    }
}
