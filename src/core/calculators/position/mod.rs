//! `/calculators/position`: whether two parts go together when their holes' centres are off.

mod fields;
mod outputs;
mod words;

pub use fields::{Found, answer_to};

use super::{AnswerKind, Declaration, Finding, Form};
use crate::asking::{OWNED, SERIES};
use crate::calculators::clearance::{DIAMETER, FIT, THREAD};
use fields::{
    CASE, DUTY, HOLE, LEAN, LOWER_ERROR, LOWER_HOLE, REGISTER, STAGE, THICKNESS, UPPER_ERROR,
};
use outputs::PLAIN;

/// The calculator.
pub static DECLARATION: Declaration = Declaration {
    slug: "position",
    title: "Holes out of place",
    answers: "Whether two parts go together with their centres so far off, what clearance would do, and what to do about it.",
    finding: Finding {
        title: "Holes out of place",
        why: "whether parts go together with centres off, what clearance would do, and what to do",
        names: &[
            "position",
            "hole position",
            "position error",
            "position tolerance",
            "positional tolerance",
            "holes out of place",
            "holes do not line up",
            "holes dont line up",
        ],
        words: &["position", "centres", "tolerance", "astray"],
    },
    form: Form {
        first: &[&CASE, &THREAD, &DIAMETER, &UPPER_ERROR, &LOWER_ERROR],
        rest_heading: "Holes as made, lean, how far it has gone, drills at hand",
        rest: &[
            &FIT,
            &HOLE,
            &LOWER_HOLE,
            &REGISTER,
            &THICKNESS,
            &LEAN,
            &STAGE,
            &DUTY,
            &SERIES,
            &OWNED,
        ],
        begun_by: &[&THREAD, &DIAMETER],
        button: "Do they go together?",
    },
    answer: AnswerKind::Rows(&PLAIN),
};
