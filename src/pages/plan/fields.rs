//! Reading the fields of a plan that name a thing: the thread, the metals.

use crate::FieldError;
use holewright_core::asking::{self, Typed, metal, thread_as_meant};
use holewright_core::tables::materials::Material;
use holewright_core::tables::screw_metals::Screw;
use holewright_core::tables::threads::Thread;
use holewright_core::tables::threads::read::Hand;

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
    let read = thread_as_meant(thread)?;
    match (asked, read.hand) {
        (Some(Hand::Right), Hand::Left) => Err(FieldError::new(
            "hand",
            "The thread is typed as left hand, and right hand is asked for here.",
        )),
        (asked, typed) => Ok((read.thread, asked.unwrap_or(typed))),
    }
}

/// A material, which must be named.
pub(super) fn material(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    if typed.text.is_empty() {
        return Err(typed
            .error("Choose the material that is tapped: it decides how much thread to aim for."));
    }
    metal(typed)
}

/// The screw, or nothing where nothing was typed.
pub(super) fn screw(typed: Typed<'_>) -> Result<Option<Screw>, FieldError> {
    if typed.text.is_empty() { Ok(None) } else { asking::screw(typed).map(Some) }
}

/// A material, or nothing where nothing was typed.
pub(super) fn optional_material(typed: Typed<'_>) -> Result<Option<&'static Material>, FieldError> {
    if typed.text.is_empty() { Ok(None) } else { metal(typed).map(Some) }
}
