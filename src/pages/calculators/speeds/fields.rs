//! The form: what every work asks, then what this work asks, then the machine.

use crate::FieldError;
use crate::calculators::form::Form;
use crate::field::Field;
use holewright_core::asking::Asked;
use holewright_core::calculators::speeds::{DECLARATION, Work, work_of};

/// The form as typed. A field that belongs to another work stands in it only where something is
/// typed there, so that nothing is lost.
pub(super) fn form(asked: &Asked, errors: &[FieldError]) -> Form {
    let work = work_of(asked);
    Form::shaped(&DECLARATION, asked, errors, |mut field: Field| {
        if field.name == "depth" && work == Work::Tapping {
            field.hint = "Length of full thread: 8 mm, 5/16 in".into();
        }
        let is_asked = works(field.name).contains(&work) || !asked.typed(field.name).is_empty();
        is_asked.then_some(field)
    })
}

/// The works that a field below the fold is asked for.
fn works(field: &str) -> &'static [Work] {
    use Work::{Countersinking, Drilling, Reaming, Spotting, Tapping};
    match field {
        "depth" => &[Drilling, Reaming, Tapping],
        "point_angle" => &[Drilling, Spotting],
        "series" | "owned" => &[Reaming],
        "head" | "hole_size" | "countersink_angle" => &[Countersinking],
        _ => &Work::ALL,
    }
}
