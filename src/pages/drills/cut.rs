//! What the chart is cut down to, read from its address.

use crate::{FieldError, Query};
use holewright_core::asking::{Typed, diameter, keep, too_long};
use holewright_core::tables::drills::{Cut, owned};

/// The fields by their names in the address, in the order of the canonical one.
pub(super) const NAMES: [&str; 4] = ["from", "to", "series", "owned"];

/// Reads a cut. A bare number that could be a drill or millimetres is millimetres.
///
/// # Errors
/// One for each field that makes no sense, and for two sizes with nothing between.
pub fn read(query: &Query) -> Result<Cut, Vec<FieldError>> {
    let at = |field| Typed { field, text: query.get(field) };
    let mut errors: Vec<FieldError> = NAMES.into_iter().map(at).filter_map(too_long).collect();
    if !errors.is_empty() {
        return Err(errors);
    }
    let size = |field| match at(field) {
        Typed { text: "", .. } => Ok(None),
        typed => diameter(typed).map(|found| Some(found.size)),
    };
    let from = keep(&mut errors, size("from"));
    let to = keep(&mut errors, size("to"));
    let series = keep(&mut errors, at("series").optional(owned::series));
    let owned = keep(&mut errors, at("owned").optional(owned::owned));
    if let (Some(least), Some(most)) = (from, to)
        && least > most
    {
        errors.push(at("to").error("The larger size stands first: nothing lies between."));
    }
    if errors.is_empty() { Ok(Cut { from, to, series, owned }) } else { Err(errors) }
}
