//! What a material weighs, bears, and how hard it is, as the JSON of a material has it.

use serde::Serialize;
use utoipa::ToSchema;

use super::figures;
use holewright_core::tables::materials::{Measure, Property, Span};
use holewright_core::units::{in_grams_per_cm3, in_newtons_per_mm2};

/// One type of range a unit: a key names the unit of its figure.
macro_rules! ranges {
    (
        $(#[$about:meta])* $name:ident as $schema:ident,
        $(#[$low_about:meta])* $low:ident,
        $(#[$high_about:meta])* $high:ident
    ) => {
        $(#[$about])*
        #[derive(Debug, Serialize, ToSchema)]
        #[schema(as = $schema)]
        struct $name {
            $(#[$low_about])*
            #[schema(required)]
            $low: Option<f64>,
            $(#[$high_about])*
            #[schema(required)]
            $high: Option<f64>,
            /// The condition it holds for; may be empty.
            condition: &'static str,
            /// Where it was read, or what stands in a source's place.
            source: String,
            /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
            grade: &'static str,
        }

        impl $name {
            fn of(row: &Property, span: Span<f64>) -> Self {
                let [low, high] = ends(span);
                Self {
                    $low: low,
                    $high: high,
                    condition: row.condition,
                    source: figures::source(row.source),
                    grade: row.source.grade.slug(),
                }
            }
        }
    };
}

ranges! {
    /// A density as a source prints it.
    Density as DensityRange,
    /// The least, in grams a cubic centimetre; null where only a greatest is printed.
    low_g_per_cm3,
    /// The greatest, in grams a cubic centimetre: the least where one figure is printed, null where only a least is.
    high_g_per_cm3
}
ranges! {
    /// A strength as a source prints it.
    Strength as StrengthRange,
    /// The least, in newtons a square millimetre; null where only a greatest is printed.
    low_n_per_mm2,
    /// The greatest, in newtons a square millimetre: the least where one figure is printed, null where only a least is.
    high_n_per_mm2
}
ranges! {
    /// A percentage as a source prints it.
    Share as PercentRange,
    /// The least, a percentage; null where only a greatest is printed.
    low_percent,
    /// The greatest, a percentage: the least where one figure is printed, null where only a least is.
    high_percent
}
ranges! {
    /// A hardness as a source prints it.
    Degree as HardnessRange,
    /// The least, in points of the scale; null where only a greatest is printed.
    low_on_scale,
    /// The greatest, in points of the scale: the least where one figure is printed, null where only a least is.
    high_on_scale
}

/// A hardness with its scale.
#[derive(Debug, Serialize, ToSchema)]
struct Hardness {
    /// The scale: HB, HV, HRB, HRC, HRM.
    #[schema(example = "HB")]
    scale: String,
    #[serde(flatten)]
    range: Degree,
}

/// A machinability with the metal that is 100.
#[derive(Debug, Serialize, ToSchema)]
struct Machinability {
    /// What is 100.
    #[schema(example = "free-cutting brass is 100")]
    basis: String,
    #[serde(flatten)]
    range: Share,
}

/// The figures of a material by quantity; a quantity without one is an empty list.
#[derive(Debug, Default, Serialize, ToSchema)]
#[schema(as = MaterialProperties)]
pub(super) struct Properties {
    /// Density.
    density: Vec<Density>,
    /// Ultimate tensile strength.
    tensile_strength: Vec<Strength>,
    /// 0.2 % proof or yield stress.
    proof_stress: Vec<Strength>,
    /// Elongation at break.
    elongation: Vec<Share>,
    /// Hardness, each figure on its own scale.
    hardness: Vec<Hardness>,
    /// How well it cuts, by a metal that is 100.
    machinability: Vec<Machinability>,
}

impl Properties {
    /// Sorts the rows by quantity; each list keeps their order.
    pub(super) fn of(rows: &[Property]) -> Self {
        let mut found = Self::default();
        for row in rows {
            match row.measure {
                Measure::Density(span) => {
                    found.density.push(Density::of(row, span.map(in_grams_per_cm3)));
                }
                Measure::TensileStrength(span) => {
                    found.tensile_strength.push(Strength::of(row, span.map(in_newtons_per_mm2)));
                }
                Measure::ProofStress(span) => {
                    found.proof_stress.push(Strength::of(row, span.map(in_newtons_per_mm2)));
                }
                Measure::ElongationPercent(span) => found.elongation.push(Share::of(row, span)),
                Measure::Hardness(scale, span) => {
                    let range = Degree::of(row, span);
                    found.hardness.push(Hardness { scale: scale.to_string(), range });
                }
                Measure::MachinabilityPercent(basis, span) => {
                    let range = Share::of(row, span);
                    found.machinability.push(Machinability { basis: basis.to_string(), range });
                }
            }
        }
        found
    }
}

fn ends(span: Span<f64>) -> [Option<f64>; 2] {
    match span.map(figures::number) {
        Span::Exactly(value) => [Some(value); 2],
        Span::Between(low, high) => [Some(low), Some(high)],
        Span::AtLeast(low) => [Some(low), None],
        Span::AtMost(high) => [None, Some(high)],
    }
}
