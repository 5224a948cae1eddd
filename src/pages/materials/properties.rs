//! What a material weighs and bears, row by row as sources print it.

use crate::key::{Key, Sign};
use holewright_core::tables::materials::{Measure, Property, Span};
use holewright_core::units::{in_grams_per_cm3, in_newtons_per_mm2, print};

/// One figure in one condition.
pub(super) struct PropertyRow {
    pub(super) quantity: String,
    /// `250 to 350 N/mm²`
    pub(super) figure: String,
    pub(super) condition: &'static str,
    pub(super) sign: Sign,
}

/// Every figure, in the order held: density, strength, hardness, machinability.
pub(super) fn rows(properties: &[Property], key: &mut Key) -> Vec<PropertyRow> {
    let mut ordered: Vec<&Property> = properties.iter().collect();
    // Stable: rows of one quantity keep the order of their conditions.
    ordered.sort_by_key(|property| rank(property.measure));
    ordered.into_iter().map(|property| row(property, key)).collect()
}

const fn rank(measure: Measure) -> u8 {
    match measure {
        Measure::Density(_) => 0,
        Measure::TensileStrength(_) => 1,
        Measure::ProofStress(_) => 2,
        Measure::ElongationPercent(_) => 3,
        Measure::Hardness(..) => 4,
        Measure::MachinabilityPercent(..) => 5,
    }
}

fn row(property: &Property, key: &mut Key) -> PropertyRow {
    let (quantity, figure) = match property.measure {
        Measure::Density(span) => {
            ("Density".to_owned(), words(span.map(in_grams_per_cm3), 3, "g/cm³"))
        }
        Measure::TensileStrength(span) => {
            ("Tensile strength".to_owned(), words(span.map(in_newtons_per_mm2), 0, "N/mm²"))
        }
        Measure::ProofStress(span) => {
            ("Proof or yield stress".to_owned(), words(span.map(in_newtons_per_mm2), 0, "N/mm²"))
        }
        Measure::ElongationPercent(span) => ("Elongation at break".to_owned(), words(span, 1, "%")),
        Measure::Hardness(scale, span) => {
            ("Hardness".to_owned(), words(span, 0, &scale.to_string()))
        }
        Measure::MachinabilityPercent(basis, span) => {
            (format!("Machinability ({basis})"), words(span, 0, "%"))
        }
    };
    PropertyRow { quantity, figure, condition: property.condition, sign: key.sign(property.source) }
}

/// `250 to 350 N/mm²`, `at least 190 N/mm²`.
fn words(span: Span<f64>, places: u8, unit: &str) -> String {
    let figure = |value| print::trimmed(value, places);
    match span {
        Span::Exactly(value) => format!("{} {unit}", figure(value)),
        Span::Between(low, high) => format!("{} to {} {unit}", figure(low), figure(high)),
        Span::AtLeast(low) => format!("at least {} {unit}", figure(low)),
        Span::AtMost(high) => format!("at most {} {unit}", figure(high)),
    }
}
