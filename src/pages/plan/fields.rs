//! Reading the fields of a plan that name a thing: the thread, the metals, the drills at hand.

use crate::FieldError;
use crate::form::{material_choices, sentence, thread_error};
use crate::typed::{Typed, keep};
use holewright_core::calc::spindle::Spindle;
use holewright_core::plan::{AtHand, Error};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::Thread;
use holewright_core::tables::threads::read::{self, Hand};
use holewright_core::units::read::spindle_speed;

/// The thread and its hand, which may be typed with the thread or asked for in its own field.
pub(super) fn thread(
    thread: Typed<'_>,
    asked: Option<Hand>,
) -> Result<(&'static Thread, Hand), FieldError> {
    if thread.text.is_empty() {
        return Err(thread.error(
            "Say which thread. Write its size and system: 5 BA, 1/4 BSF, M3, 1/4 x 40 ME.",
        ));
    }
    let read =
        read::read_with_hand(thread.text).map_err(|error| thread_error(thread.field, &error))?;
    match (asked, read.hand) {
        (Some(Hand::Right), Hand::Left) => Err(FieldError::new(
            "hand",
            "The thread is typed as left hand, and right hand is asked for here.",
        )),
        (asked, typed) => Ok((read.thread, asked.unwrap_or(typed))),
    }
}

/// A material, which must be named.
pub(crate) fn material(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    if typed.text.is_empty() {
        return Err(
            typed.error("Choose the metal that is tapped: it decides how much thread to aim for.")
        );
    }
    let material = materials::read::read(typed.text).map_err(|error| {
        let choices = material_choices(&error);
        FieldError { choices, ..typed.error(sentence(&error.to_string())) }
    })?;
    match material.refused {
        Some(_) => Err(typed.error(sentence(&Error::Refused { material }.to_string()))),
        None => Ok(material),
    }
}

/// A material, or nothing where nothing was typed.
pub(super) fn optional_material(typed: Typed<'_>) -> Result<Option<&'static Material>, FieldError> {
    if typed.text.is_empty() { Ok(None) } else { material(typed).map(Some) }
}

/// The speeds of the machine, from its list and its fastest speed, either of which may be unknown.
pub(crate) fn spindle(
    listed: Typed<'_>,
    fastest: Typed<'_>,
    errors: &mut Vec<FieldError>,
) -> Spindle {
    let speeds = keep(errors, listed.optional(Spindle::read)).unwrap_or_default();
    let most = keep(errors, fastest.optional(spindle_speed));
    let held = speeds.held_to(most);
    keep(errors, held.map_err(|error| fastest.error(sentence(&error.to_string()))))
}

/// The drills that may be chosen from. With both a list and series, those of the list in the series.
pub(crate) fn at_hand(
    typed: Typed<'_>,
    series: Option<Vec<Series>>,
    listed: Option<Vec<&'static Drill>>,
) -> Result<AtHand, FieldError> {
    let wanted =
        |drill: &&'static Drill| series.as_ref().is_none_or(|held| held.contains(&drill.series));
    match (&series, listed) {
        (None, None) => Ok(AtHand::All),
        (Some(_), None) => Ok(AtHand::Only(drills::all().iter().filter(wanted).collect())),
        (_, Some(listed)) => {
            let both: Vec<_> = listed.into_iter().filter(wanted).collect();
            if both.is_empty() {
                Err(typed.error("None of the drills listed is in the series chosen."))
            } else {
                Ok(AtHand::Only(both))
            }
        }
    }
}
