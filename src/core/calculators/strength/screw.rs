//! The screw: a class by its mark, or the metal it is turned from.

use crate::asking::{FieldError, Typed, metal, quoted};
use crate::tables::screw_metals::{Strength, class, classes, least_shear, least_tensile};
use crate::units::{Stress, in_newtons_per_mm2, print};

/// A screw, as far as it bears.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Screw {
    name: &'static str,
    pub(super) tensile: Strength,
    pub(super) proof: Option<Stress>,
}

impl Screw {
    /// It and its strength in words.
    pub(super) fn words(&self) -> String {
        strength_words(self.name, &self.tensile)
    }
}

/// `gunmetal, 200 N/mm², sand casting (a foundry's sheet)`
pub(super) fn strength_words(name: &str, strength: &Strength) -> String {
    let Strength { stress, condition, source } = strength;
    let figure = print::trimmed(in_newtons_per_mm2(*stress), 0);
    let condition = if condition.is_empty() { String::new() } else { format!(", {condition}") };
    format!("{}, {figure} N/mm²{condition} ({})", print::sentence(name), source.cite)
}

/// The screw named.
///
/// # Errors
/// It is no class held, and no metal.
pub(super) fn screw(typed: Typed<'_>) -> Result<Screw, FieldError> {
    if let Some(class) = class(typed.text) {
        let tensile = Strength { stress: class.tensile, condition: "", source: class.source };
        return Ok(Screw { name: class.name, tensile, proof: class.proof });
    }
    if typed.text.starts_with(|first: char| first.is_ascii_digit())
        && typed.text.parse::<f64>().is_ok()
    {
        let marks: Vec<&str> = classes().iter().map(|class| class.mark).collect();
        return Err(typed.error(format!(
            "{} is no class held. Write {}, or a metal.",
            quoted(typed.text),
            marks.join(", ")
        )));
    }
    let material = metal(typed)?;
    match (least_shear(material), least_tensile(material)) {
        (Some(_), Some(tensile)) => Ok(Screw { name: material.name, tensile, proof: None }),
        _ => Err(typed.error(format!(
            "No strength is held for a screw of {}. Write a metal, or a class: 8.8, A2-70.",
            material.name
        ))),
    }
}
