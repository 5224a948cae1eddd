//! The steps of a plan, in order.

use super::{Cell, Table};
use crate::calc::setting::Setting;
use crate::plan::{Operation, Part};
use crate::units::{Frequency, Length, in_inch, in_mm, in_rpm, print};

/// The steps, each with its tool and figures.
#[must_use]
pub fn operations(operations: &[Operation]) -> Table {
    Table {
        columns: &[
            "number",
            "action",
            "part",
            "tool",
            "diameter_mm",
            "diameter_in",
            "depth_mm",
            "depth_in",
            "stop_mm",
            "stop_in",
            "tip_mm",
            "tip_in",
            "speed_rpm",
            "speed",
            "feed_mm_per_rev",
            "lubricant",
            "text",
            "why",
            "cautions",
        ],
        rows: (1..).zip(operations).map(row).collect(),
    }
}

fn row((number, operation): (usize, &Operation)) -> Vec<Cell> {
    let mm = |length: Option<Length>, places| {
        Cell::or_empty(length.map(|length| Cell::number(print::trimmed(in_mm(length), places))))
    };
    let inch = |length: Option<Length>, places| {
        Cell::or_empty(length.map(|length| Cell::number(print::fixed(in_inch(length), places))))
    };
    let set = operation.speed.as_ref();
    vec![
        Cell::count(number),
        Cell::text(operation.action.words()),
        Cell::text(part(operation.part)),
        Cell::text(if operation.tool == "none" { "" } else { &operation.tool }),
        mm(operation.diameter, 3),
        inch(operation.diameter, 4),
        mm(operation.depth, 2),
        inch(operation.depth, 3),
        mm(operation.stop, 2),
        inch(operation.stop, 3),
        mm(operation.tip, 2),
        inch(operation.tip, 3),
        Cell::or_empty(set.and_then(Setting::speed).map(|speed| Cell::number(about(speed)))),
        Cell::or_empty(set.map(|set| Cell::text(set.words()))),
        mm(operation.feed, 3),
        Cell::or_empty(operation.lubricant.map(Cell::text)),
        Cell::text(operation.text.as_ref()),
        Cell::text(operation.why.as_ref()),
        Cell::text(cautions(operation)),
    ]
}

/// What to watch for in the step, one after the other.
fn cautions(operation: &Operation) -> String {
    let texts: Vec<&str> = operation.cautions.iter().map(|caution| caution.text.as_ref()).collect();
    texts.join(" ")
}

/// A spindle is set to two figures at most.
fn about(speed: Frequency) -> String {
    print::trimmed(print::significant(in_rpm(speed), 2), 0)
}

const fn part(part: Part) -> &'static str {
    match part {
        Part::Upper => "upper",
        Part::Lower => "lower",
        Part::Both => "both",
    }
}
