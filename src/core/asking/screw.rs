//! A screw: a class by its mark, or the metal it is turned from.

use super::error::quoted;
use super::{FieldError, Typed, metal};
use crate::tables::screw_metals::{Screw, class, classes, least_shear, least_tensile};

/// The screw named.
///
/// # Errors
/// It is no class held, and no metal whose strength is.
pub fn screw(typed: Typed<'_>) -> Result<Screw, FieldError> {
    if let Some(class) = class(typed.text) {
        return Ok(class.screw());
    }
    if typed.text.parse::<f64>().is_ok() {
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
