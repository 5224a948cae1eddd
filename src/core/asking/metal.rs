//! A metal by any name; one that is not to be cut says why.

use super::error::{material_choices, sentence};
use super::{FieldError, Typed};
use crate::plan::Error;
use crate::tables::materials::{self, Material};

/// The material named.
///
/// # Errors
/// The name is not known, could be several, or no hole is made in it.
pub fn metal(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    let material = materials::read::read(typed.text).map_err(|error| {
        let choices = material_choices(&error);
        FieldError { choices, ..typed.error(sentence(&error.to_string())) }
    })?;
    match material.refused {
        Some(_) => Err(typed.error(sentence(&Error::Refused { material }.to_string()))),
        None => Ok(material),
    }
}
