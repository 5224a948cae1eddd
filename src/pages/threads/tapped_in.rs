//! The material in the address of a system's table.

use crate::{FieldError, Query};
use holewright_core::asking::{Typed, metal, too_long};
use holewright_core::calc::tapped_in::TappedIn;

/// The one field, by its name in the address.
pub(crate) const MATERIAL: &str = "material";

/// Reads what is tapped from an address.
///
/// # Errors
/// The material is not known, could be several, or is not to be cut.
pub(crate) fn read(query: &Query) -> Result<TappedIn, FieldError> {
    let typed = Typed { field: MATERIAL, text: query.get(MATERIAL) };
    if let Some(error) = too_long(typed) {
        return Err(error);
    }
    match typed.text {
        "" => Ok(TappedIn::UsualGroup),
        _ => metal(typed).map(TappedIn::Material),
    }
}
