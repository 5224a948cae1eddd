//! A diameter by any name: a drill, or a length with its unit.

use crate::FieldError;
use crate::form::sentence;
use crate::typed::Typed;
use holewright_core::tables::drills::{self, Drill};
use holewright_core::units::Length;
use holewright_core::units::read::{Bare, length};

/// A diameter, and the drill it was named by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diameter {
    /// The diameter.
    pub size: Length,
    /// The drill, where a drill was named.
    pub drill: Option<&'static Drill>,
}

/// What was typed as a diameter; nothing where nothing was. A bare number that could be a drill or
/// millimetres is millimetres.
pub(super) fn optional(typed: Typed<'_>) -> Result<Option<Diameter>, FieldError> {
    if typed.text.is_empty() {
        return Ok(None);
    }
    if let Ok(drill) = drills::read::read(typed.text) {
        return Ok(Some(Diameter { size: drill.diameter, drill: Some(drill) }));
    }
    length(typed.text, Bare::Mm).map(|size| Some(Diameter { size, drill: None })).map_err(|error| {
        typed
            .error(format!("{} Or name a drill: No. 46, F, 7/64 in.", sentence(&error.to_string())))
    })
}
