//! A metal by any name; one that is not to be cut says why.

use super::error::{material_choices, sentence};
use super::{FieldError, Typed};
use crate::plan::Error;
use crate::tables::materials::{self, Material, scrap::scrap};

/// The material named.
///
/// # Errors
/// The name is not known, could be several, or no hole is made in it.
pub fn metal(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    let material = materials::read::read(typed.text).map_err(|error| {
        let choices = material_choices(&error);
        let message = match scrap(typed.text) {
            Some(part) => {
                format!(
                    "{} is usually of these. To tell: {} Choose one.",
                    part.name(),
                    part.tell.text
                )
            }
            None => sentence(&error.to_string()),
        };
        FieldError { choices, ..typed.error(message) }
    })?;
    match material.refused {
        Some(_) => Err(typed.error(sentence(&Error::Refused { material }.to_string()))),
        None => Ok(material),
    }
}
