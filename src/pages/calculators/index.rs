//! `/calculators`: the list of them.

use askama::Template;

use super::link;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit};
use holewright_core::calculators::CALCULATORS;
use holewright_core::units::print;

/// No sentence names more of them than this.
const MOST_NAMED: usize = 3;

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
pub(crate) fn index(visit: &Visit<'_>) -> Reply {
    let description = format!("{}: each with its sources.", in_a_sentence());
    let frame = Frame::new(visit, Section::Calculators, "Calculators", &description);
    let rows = CALCULATORS
        .iter()
        .copied()
        .map(|calculator| Row { link: link(calculator), answers: calculator.answers })
        .collect();
    Reply::html(200, &CalculatorsPage { frame, rows })
}

/// The first few by name, and that there are more.
pub(crate) fn in_a_sentence() -> String {
    let names: Vec<String> =
        CALCULATORS.iter().take(MOST_NAMED).map(|named| print::running(named.title)).collect();
    let more = if CALCULATORS.len() > MOST_NAMED { ", and more" } else { "" };
    format!("{}{more}", print::sentence(&names.join(", ")))
}
