//! What is asked of a thread's strength.

use super::answer::Answer;
use crate::asking::{
    About, Asked, Control, Diameter, Field, FieldError, Limits, Need, Reading, Typed, Word,
    at_hand, metal, parallel_thread, screw, thread_taken, word,
};
use crate::calc::strip::StripSizes;
use crate::calc::tapping::next_larger;
use crate::calc::thread_form::geometry;
use crate::calculators::usual_hole::{HOLE, hole_or_usual};
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::screw_metals::{Screw, least_shear};
use crate::tables::threads::Thread;
use crate::units::{Length, print};

/// What the joint is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Duty {
    /// It holds parts together.
    Fixing,
    /// It holds steam or pressure: no strength is given.
    Pressure,
}

static DUTIES: [Word<Duty>; 2] = [
    word("fixing", "Holding parts together", Duty::Fixing),
    word("pressure", "Steam or pressure behind it", Duty::Pressure),
];

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
    |typed| parallel_thread(typed, "it holds by its cone, and its strength is not reckoned"),
)
.taking(|typed, _| thread_taken(typed));

pub(super) static MATERIAL: Field<&Material> = Field::new(
    About {
        name: "material",
        label: "Material tapped",
        hint: "",
        description: "The material that is tapped, by any name or mark",
        example: "aluminium-6082",
        need: Need::Always("Choose the material that is tapped: its thread may be the weakest."),
        limits: Limits::None,
    },
    metal_with_strength,
)
.with_control(Control::Metal("Choose the material"));

pub(super) static SCREW: Field<Screw> = Field::new(
    About {
        name: "screw",
        label: "Metal of the screw",
        hint: "The mark on its head: 8.8, A2-70; or the metal it is turned from: brass, silver steel",
        description: "Property class of the screw, or the metal it is turned from; without it no weakest member is named",
        example: "8.8",
        need: Need::Open,
        limits: Limits::OfReader { taken: &["4.6", "12.9"], refused: &["0", "1", "0.37", "99999"] },
    },
    screw,
);

pub(super) static DUTY: Field<Duty> = Field::words(
    About {
        name: "duty",
        label: "What it is for",
        hint: "",
        description: "What the joint is for; no strength is given for what holds steam or pressure",
        example: "fixing",
        need: Need::Always(
            "Say what it is for: no strength is given for what holds steam or pressure.",
        ),
        limits: Limits::None,
    },
    Control::OpenList("Say what it is for"),
    &DUTIES,
);

pub(super) static ENGAGED: Field<Length> = Field::length(About {
    name: "engaged",
    label: "Length of thread engaged",
    hint: "Full thread that the screw is in: 6 mm, 1/4 in; one diameter if left empty",
    description: "Length of thread engaged; a bare number is mm; one diameter if left out",
    example: "6 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

fn metal_with_strength(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    let material = metal(typed)?;
    match least_shear(material) {
        Some(_) => Ok(material),
        None => Err(typed.error(format!(
            "No strength is held for a thread in {}. Choose a metal.",
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
    let screw = reading.optional(&SCREW);
    let duty = reading.required(&DUTY);
    if duty == Some(Duty::Pressure) {
        reading.refuse(DUTY.error(
            "No strength is given for what holds steam or pressure: the national boiler code and the club’s boiler inspector decide, before cutting.",
        ));
    }
    let engaged = reading.optional(&ENGAGED);
    let hole = reading.optional(&HOLE);
    let held = at_hand(&mut reading);
    let subject = thread.zip(material).filter(|_| reading.is_clean());
    let found = subject.and_then(|(thread, material)| {
        let hole = reading.keep(hole_or_usual(hole, thread, material, &held))?;
        reading.keep(reckoned(thread, material, screw, engaged, hole, &held))
    });
    reading.answered(found)
}

/// What is asked, reckoned.
fn reckoned(
    thread: &'static Thread,
    material: &'static Material,
    screw: Option<Screw>,
    engaged: Option<Length>,
    hole: Diameter,
    held: &[&'static Drill],
) -> Result<Answer, FieldError> {
    let figures = geometry(thread);
    let sizes = StripSizes::of(thread, &figures, hole.size);
    let major = sizes.pair.screw_major;
    if hole.size >= major {
        return Err(HOLE.error(format!(
            "A hole of {} leaves nothing of {} for a screw to hold by. Write a smaller one.",
            print::mm(hole.size, 3),
            thread.designation
        )));
    }
    let Some(shear) = least_shear(material) else {
        return Err(MATERIAL.error("No strength is held for a thread in it. Choose a metal."));
    };
    let larger = next_larger(thread.form(), &figures, hole.size, held.iter().copied());
    Ok(Answer {
        thread,
        geometry: figures,
        material,
        shear,
        screw,
        engaged: engaged.unwrap_or(figures.major),
        hole,
        sizes,
        larger: larger.first().copied(),
    })
}
