//! `/calculators/blind-hole`: how deep to drill for so much full thread, whether the part holds it, and
//! what would make it possible.

mod fields;
mod outputs;
mod words;

pub use fields::{Found, answer_to};

use super::{AnswerKind, Declaration, Finding, Form};
use crate::asking::POINT_ANGLE;
use fields::{DEPTH, DRILL, FINISH, MATERIAL, PART_THICKNESS, TAP_END, THREAD};
use outputs::PLAIN;

/// The calculator.
pub static DECLARATION: Declaration = Declaration {
    slug: "blind-hole",
    title: "Blind hole",
    answers: "How deep to drill for so much full thread, what wall is left, and what would make it possible where the part is too thin.",
    finding: Finding {
        title: "Blind hole",
        why: "how deep to drill for so many threads, the wall left, and what to do where it is too thin",
        names: &[
            "blind hole",
            "blind holes",
            "blind hole depth",
            "blind hole depths",
            "blind tapping",
            "wall under a hole",
            "bottoming",
            "how deep for threads",
        ],
        words: &["blind", "bottoming", "wall"],
    },
    form: Form {
        first: &[&THREAD, &DEPTH, &PART_THICKNESS],
        rest_heading: "Tap and drill",
        rest: &[&FINISH, &TAP_END, &MATERIAL, &DRILL, &POINT_ANGLE],
        begun_by: &[&THREAD],
        button: "Find the depths",
    },
    answer: AnswerKind::Rows(&PLAIN),
};
