//! `/calculators`: the list of them.

use askama::Template;

use super::CALCULATORS;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Answer, Visit};

#[derive(Template)]
#[template(path = "calculators/index.html")]
struct CalculatorsPage {
    frame: Frame,
    rows: Vec<Row>,
}

struct Row {
    link: Link,
    answers: &'static str,
}

/// The list of calculators.
pub(crate) fn index(visit: &Visit<'_>) -> Answer {
    let description =
        "Spindle speed, tapping size of any thread, clearance and float: each with its sources.";
    let frame = Frame::new(visit, Section::Calculators, "Calculators", description);
    let rows = CALCULATORS
        .iter()
        .map(|calculator| Row { link: calculator.link(), answers: calculator.answers })
        .collect();
    Answer::html(200, &CalculatorsPage { frame, rows })
}
