//! What is asked of a tap's effort.

use super::answer::{Answer, At};
use crate::asking::{
    About, Asked, Control, Diameter, Field, FieldError, Limits, Need, Reading, TOOL_STEELS, Typed,
    at_hand, metal, parallel_thread, thread_taken,
};
use crate::calc::engagement;
use crate::calc::tapping::next_larger;
use crate::calc::thread_form::geometry;
use crate::calc::tool_steel::ToolSteel;
use crate::calculators::usual_hole::{HOLE, hole_or_usual};
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::tapping_force::resists;
use crate::tables::threads::Thread;
use crate::units::print;

pub(super) static THREAD: Field<&Thread> = Field::new(
    About {
        name: "thread",
        label: "Thread",
        hint: "5 BA, M3, 1/4 x 40 ME",
        description: "The thread, in any usual spelling",
        example: "5 BA",
        need: Need::Always("Write the thread: 5 BA, M3, 1/4 x 40 ME."),
        limits: Limits::None,
    },
    |typed| parallel_thread(typed, "it has no effort in print"),
)
.taking(|typed, _| thread_taken(typed));

pub(super) static MATERIAL: Field<&Material> = Field::new(
    About {
        name: "material",
        label: "Material",
        hint: "",
        description: "The material that is tapped, by any name or mark",
        example: "gunmetal",
        need: Need::Always("Choose the material: it decides how hard the tap turns."),
        limits: Limits::None,
    },
    metal_with_figure,
)
.with_control(Control::Metal("Choose the material"));

pub(super) static TAP_STEEL: Field<ToolSteel> = Field::words(
    About {
        name: "tap_steel",
        label: "Steel of the tap",
        hint: "",
        description: "Steel of the tap",
        example: "hss",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    TOOL_STEELS,
);

fn metal_with_figure(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    let material = metal(typed)?;
    match resists(material) {
        Some(_) => Ok(material),
        None => Err(typed.error(format!(
            "No maker prints how hard {} is to tap, and a tap is not likely to break in it. Choose a metal.",
            material.name
        ))),
    }
}

/// The answer.
///
/// # Errors
/// One for each field that makes no sense, in the order of the form.
pub(super) fn answer(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let thread = reading.required(&THREAD);
    let material = reading.required(&MATERIAL);
    let hole = reading.optional(&HOLE);
    let steel = reading.or_default(&TAP_STEEL);
    let held = at_hand(&mut reading);
    let subject = thread.zip(material).filter(|_| reading.is_clean());
    let found = subject.and_then(|(thread, material)| {
        let chosen = reading.keep(hole_or_usual(hole, thread, material, &held))?;
        reading.keep(reckoned(thread, material, steel, chosen, &held))
    });
    reading.answered(found)
}

/// What is asked, reckoned.
fn reckoned(
    thread: &'static Thread,
    material: &'static Material,
    steel: ToolSteel,
    hole: Diameter,
    held: &[&'static Drill],
) -> Result<Answer, FieldError> {
    let figures = geometry(thread);
    let at = |hole, drill| At {
        hole,
        drill,
        percent: engagement::percent(thread.form(), &figures, hole),
    };
    let chosen = at(hole.size, hole.drill);
    if !(LEAST_THREAD..=MOST_THREAD).contains(&chosen.percent) {
        return Err(HOLE.error(format!(
            "A hole of {} leaves {} of the thread of {}. Write one that leaves {LEAST_THREAD} to {MOST_THREAD} %.",
            print::mm(hole.size, 3),
            print::percent(chosen.percent),
            thread.designation
        )));
    }
    let Some(resists) = resists(material) else {
        return Err(MATERIAL.error("No maker prints how hard it is to tap. Choose a metal."));
    };
    let larger = next_larger(thread.form(), &figures, hole.size, held.iter().copied());
    let larger = larger.into_iter().take(2).map(|drill| at(drill.diameter, Some(drill))).collect();
    Ok(Answer { thread, geometry: figures, material, resists, steel, chosen, larger })
}

/// A hole that leaves less is no thread, percent.
const LEAST_THREAD: f64 = 20.0;
/// A hole that leaves more is smaller than any core, percent.
const MOST_THREAD: f64 = 110.0;
