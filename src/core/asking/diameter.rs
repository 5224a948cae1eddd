//! A diameter by any name: a drill, or a length with its unit.

use super::error::sentence;
use super::{FieldError, Typed};
use crate::tables::drills::{self, Drill};
use crate::units::Length;
use crate::units::read::{Bare, length};

/// A diameter, and the drill it was named by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diameter {
    /// The diameter.
    pub size: Length,
    /// The drill, where a drill was named.
    pub drill: Option<&'static Drill>,
}

/// A diameter by the name of a drill, or a length. A bare number that could be a drill or millimetres
/// is millimetres.
///
/// # Errors
/// It is neither.
pub fn diameter(typed: Typed<'_>) -> Result<Diameter, FieldError> {
    if let Ok(drill) = drills::read::read(typed.text) {
        return Ok(Diameter { size: drill.diameter, drill: Some(drill) });
    }
    length(typed.text, Bare::Mm).map(|size| Diameter { size, drill: None }).map_err(|error| {
        typed
            .error(format!("{} Or name a drill: No. 46, F, 7/64 in.", sentence(&error.to_string())))
    })
}
