//! The hole a calculator reckons with: the one asked about, or the usual drill for a thread and a metal.

use crate::asking::{About, Diameter, Field, FieldError, Limits, Need, diameter, diameter_taken};
use crate::calc::aim::Aim;
use crate::calc::tapping::{Question, choose_or_get};
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::print;

/// The field that asks for it.
pub(super) static HOLE: Field<Diameter> = Field::new(
    About {
        name: "hole",
        label: "Hole",
        hint: "A drill or a size, or as measured: No. 36, 2.7 mm; the usual drill if left empty",
        description: "The hole: a drill by any name, or a size; the usual drill if left out",
        example: "No. 36",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    diameter,
)
.taking(|typed, _| diameter_taken(typed));

/// The hole asked about, or the usual drill at hand.
///
/// # Errors
/// Of [`HOLE`]: none was asked about, and no drill at hand will do.
pub(super) fn hole_or_usual(
    hole: Option<Diameter>,
    thread: &'static Thread,
    material: &'static Material,
    held: &[&'static Drill],
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
            Err(HOLE.error(format!("{}. Write the hole.", print::sentence(&refused.to_string()))))
        }
    }
}
