//! The hole a calculator reckons with: the one asked about, or the usual drill for a thread and a metal.

use crate::asking::{Diameter, FieldError};
use crate::calc::aim::Aim;
use crate::calc::tapping::{Question, choose_or_get};
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::print;

/// The hole asked about, or the usual drill at hand; an error is that of the field of holes.
pub(super) fn hole_or_usual(
    hole: Option<Diameter>,
    thread: &'static Thread,
    material: &'static Material,
    held: &[&'static Drill],
    error: impl Fn(String) -> FieldError,
) -> Result<Diameter, FieldError> {
    if let Some(hole) = hole {
        return Ok(hole);
    }
    let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
    match choose_or_get(question, held.iter().copied()) {
        Ok(choice) => {
            let drill = choice.planned().drill;
            Ok(Diameter { size: drill.diameter, drill: Some(drill) })
        }
        Err(refused) => {
            Err(error(format!("{}. Write the hole.", print::sentence(&refused.to_string()))))
        }
    }
}
