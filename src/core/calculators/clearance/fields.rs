//! What is asked for a clearance hole.

use super::answer::{Answer, Question, Screw, answer};
use crate::asking::{
    self, About, Asked, Control, FITS, Field, FieldError, Limits, Need, OWNED, Reading, SERIES,
    Typed, at_hand, sentence,
};
use crate::calc::clearance::{Fit, hole};
use crate::calc::thread_form::geometry;
use crate::calculators::{AnswerKind, Declaration, Finding, Form};
use crate::tables::threads::Thread;
use crate::units::read::{Bare, Problem, length};
use crate::units::{Length, print};

/// The calculator.
pub static DECLARATION: Declaration = Declaration {
    slug: "clearance",
    title: "Clearance and float",
    answers: "The hole a screw passes through, its drill, and how much larger it must be when centres are off.",
    finding: Finding {
        title: "Clearance and float",
        why: "the hole a screw passes through, and how far centres may be out",
        names: &["clearance", "clearance hole", "float", "clearance drill"],
        words: &["centres", "error", "close", "medium", "free"],
    },
    form: Form {
        first: &[&THREAD, &DIAMETER, &FIT],
        rest_heading: "Centres that may be off, drills at hand",
        rest: &[&UPPER_ERROR, &LOWER_ERROR, &SERIES, &OWNED],
        begun_by: &[&THREAD, &DIAMETER],
        button: "Find the hole",
    },
    answer: AnswerKind::Clearance,
};

pub(in crate::calculators) static THREAD: Field<&Thread> = Field::new(
    About {
        name: "thread",
        label: "Thread of the screw",
        hint: "5 BA, M3, 1/4 BSF",
        description: "The thread of the screw, in any usual spelling",
        example: "M12",
        need: Need::Open,
        limits: Limits::None,
    },
    thread,
)
.taking(|typed, _| asking::thread_taken(typed));

pub(in crate::calculators) static DIAMETER: Field<Length> = Field::length(About {
    name: "diameter",
    label: "Or its diameter",
    hint: "mm, or with its unit; with a thread, the screw as measured",
    description: "Diameter of the screw as measured; a bare number is mm",
    example: "12 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

pub(in crate::calculators) static FIT: Field<Fit> = Field::words(
    About {
        name: "fit",
        label: "Fit",
        hint: "",
        description: "How freely the screw passes",
        example: "medium",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::Pick,
    FITS,
);

/// How far a centre may be off: zero is dead on, and is taken.
pub(in crate::calculators) const CENTRE_ERROR: Limits =
    Limits::OfReader { taken: &["0", "0.0001", "2000"], refused: &["-0.1", "2000.1"] };

static UPPER_ERROR: Field<Length> = Field::new(
    About {
        name: "upper_error",
        label: "How far the clearance hole may be off",
        hint: "From where its centre should be; mm, or 10 thou",
        description: "How far the clearance hole's centre may be off; a bare number is mm",
        example: "0.2 mm",
        need: Need::Open,
        limits: CENTRE_ERROR,
    },
    centre_error,
);

static LOWER_ERROR: Field<Length> = Field::new(
    About {
        name: "lower_error",
        label: "How far the tapped hole may be off",
        hint: "From where its centre should be; mm, or 10 thou",
        description: "How far the tapped hole's centre may be off; a bare number is mm",
        example: "0.2 mm",
        need: Need::Open,
        limits: CENTRE_ERROR,
    },
    centre_error,
);

/// The figures.
///
/// # Errors
/// One [`FieldError`] for each field that makes no sense, in the order of the form.
///
/// # Examples
/// No standard speaks of 5 BA: 3.328 mm by the stated rule, drilled 3.4.
/// ```
/// use holewright_core::calculators::clearance::{DECLARATION, answer_to};
/// let asked = DECLARATION.asked([("thread", "5ba"), ("series", "metric")]);
/// assert_eq!(answer_to(&asked).unwrap().drill().unwrap().label, "3.4 mm");
/// assert!(answer_to(&DECLARATION.asked([("thread", "1/4 npt")])).is_err());
/// // A 6 mm screw is no 5 BA, which is 3.2 mm over the thread.
/// assert!(answer_to(&DECLARATION.asked([("thread", "5ba"), ("diameter", "6")])).is_err());
/// ```
pub fn answer_to(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let screw = screw(&mut reading);
    let fit = reading.or_default(&FIT);
    let upper_error = reading.or_default(&UPPER_ERROR);
    let lower_error = reading.or_default(&LOWER_ERROR);
    let at_hand = at_hand(&mut reading);
    let question = screw.map(|screw| Question { screw, fit, upper_error, lower_error, at_hand });
    reading.answered(question).map(answer)
}

/// The screw, by its thread, its diameter or both.
pub(in crate::calculators) fn screw(reading: &mut Reading<'_>) -> Option<Screw> {
    let thread = reading.optional(&THREAD);
    let diameter = reading.optional(&DIAMETER);
    let screw = match (thread, diameter) {
        (Some(thread), measured) => {
            Some(Screw { thread: Some(thread), major: Screw::major_of(thread), measured })
        }
        (None, Some(major)) => Some(Screw { thread: None, major, measured: None }),
        (None, None) => None,
    };
    if screw.is_none() && reading.is_clean() {
        reading.refuse(
            THREAD.error(
                "Say which screw. Write its thread, 5 BA, M3, 1/4 BSF, or its diameter below.",
            ),
        );
    }
    if let (Some(thread), Some(measured)) = (thread, diameter)
        && let Some(error) = misfit(thread, measured)
    {
        reading.refuse(error);
    }
    screw
}

fn thread(typed: Typed<'_>) -> Result<&'static Thread, FieldError> {
    let thread = asking::thread(typed)?;
    if thread.taper.is_none() {
        Ok(thread)
    } else {
        Err(typed.error(format!(
            "{} is a taper thread: it screws into its mate and passes through nothing.",
            thread.designation
        )))
    }
}

/// A screw as measured that cannot be of its thread: too thick for its own close hole, or no thicker than
/// the bottom of its thread.
fn misfit(thread: &Thread, measured: Length) -> Option<FieldError> {
    let geometry = geometry(thread);
    let close = hole(thread, geometry.major, Fit::Close).hole;
    (measured > close || measured <= geometry.minor).then(|| {
        DIAMETER.error(format!(
            "A screw of {} is no {}, which is {} over the thread. Measure it again, or leave one of the two out.",
            print::mm(measured, 3),
            thread.designation,
            print::mm(geometry.major, 3)
        ))
    })
}

/// How far a centre may be off; none, and zero too, is dead on.
pub(in crate::calculators) fn centre_error(typed: Typed<'_>) -> Result<Length, FieldError> {
    match length(typed.text, Bare::Mm) {
        Ok(length) => Ok(length),
        Err(error) if error.problem == Problem::Zero => Ok(Length::default()),
        Err(error) => Err(typed.error(sentence(&error.to_string()))),
    }
}
