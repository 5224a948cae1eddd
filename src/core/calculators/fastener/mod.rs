//! `/calculators/fastener`: everything that goes with one screw and its head, on one card.
//!
//! Says nothing of strength; [`super::strength`] does.

mod answer;
mod fields;
mod head;
mod not_held;
mod outputs;

use super::{AnswerKind, Declaration, Finding, Form, Plain};
use fields::{HEAD, MATERIAL, THREAD, answer};
use outputs::OUTPUTS;

/// The calculator.
pub(super) static DECLARATION: Declaration = Declaration {
    slug: "fastener",
    title: "One fastener on one card",
    answers: "Everything that goes with a screw and its head: tapping size, clearance, head, spanner, washer, countersink or counterbore, edge, and how the screw is cut.",
    finding: Finding {
        title: "One fastener on one card",
        why: "tapping, clearance, head, spanner, washer, countersink and edge for one screw",
        names: &[
            "fastener",
            "fasteners",
            "spanner",
            "spanner size",
            "across flats",
            "af",
            "washer",
            "hexagon",
            "countersunk head",
            "csk head",
            "cap head",
            "cheese head",
            "counterbore",
            "counterbore size",
            "spotface",
            "edge distance",
            "die blank",
        ],
        words: &[
            "spanner",
            "flats",
            "hexagon",
            "washer",
            "counterbore",
            "spotface",
            "edge",
            "blank",
        ],
    },
    form: Form {
        first: &[&THREAD, &HEAD, &MATERIAL],
        rest_heading: "",
        rest: &[],
        begun_by: &[&THREAD],
        button: "Show the card",
    },
    answer: AnswerKind::Rows(&Plain {
        answer,
        heading: |found| found.heading(),
        outputs: &OUTPUTS,
        notes: |found| found.notes(),
        drawing: Some(|found| found.drawing()),
    }),
};
