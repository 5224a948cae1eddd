//! The ordered steps and the warnings of a plan, as the page shows them.

use crate::pages::figures::Both;
use crate::pages::link::Link;
use crate::plan::{HoleSpec, Level, Operation, Part, Warning};
use crate::units::{in_mm, in_rpm, print};

/// One step.
pub(super) struct Step {
    /// `Drill`
    pub(super) action: &'static str,
    /// `both parts together`; none in a one-part plan.
    pub(super) part: Option<&'static str>,
    pub(super) tool: String,
    /// The page of the drill, where the tool is one of the series.
    pub(super) drill: Option<Link>,
    pub(super) figures: Vec<Figure>,
    pub(super) text: String,
    pub(super) why: String,
}

/// A named figure of a step.
pub(super) struct Figure {
    pub(super) name: &'static str,
    pub(super) value: String,
    /// The same in the other unit.
    pub(super) other: Option<String>,
}

impl Figure {
    /// A figure with one value.
    pub(super) fn one(name: &'static str, value: impl Into<String>) -> Self {
        Self { name, value: value.into(), other: None }
    }

    /// A length in both units.
    pub(super) fn both(name: &'static str, both: Both) -> Self {
        Self { name, value: both.mm, other: Some(both.inch) }
    }
}

/// One step of a plan.
pub(super) fn step(spec: &HoleSpec, operation: &Operation) -> Step {
    let figures = [
        operation.diameter.map(|size| Figure::both("Size", Both::of(size))),
        operation.depth.map(|depth| Figure::both("Depth", Both::coarse(depth))),
        operation.speed.map(|speed| {
            let speed = print::trimmed(print::significant(in_rpm(speed), 2), 0);
            Figure::one("Speed", format!("about {speed} rev/min"))
        }),
        operation.feed.map(|feed| {
            let feed = print::trimmed(in_mm(feed), 3);
            Figure::one("Feed", format!("about {feed} mm/rev"))
        }),
        operation.lubricant.map(|lubricant| Figure::one("Lubricant", lubricant)),
    ];
    Step {
        action: operation.action.words(),
        part: spec.over.and(Some(part(operation.part))),
        tool: operation.tool.clone().into_owned(),
        drill: operation.drill.map(Link::drill),
        figures: figures.into_iter().flatten().collect(),
        text: operation.text.clone().into_owned(),
        why: operation.why.clone().into_owned(),
    }
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Upper => "upper part",
        Part::Lower => "lower part",
        Part::Both => "both parts together",
    }
}

/// A warning: a word, a shape and a class, so that colour never stands alone.
pub(super) struct ShownWarning {
    pub(super) class: &'static str,
    pub(super) word: &'static str,
    /// A path in a box of 16: a ring, a triangle, an octagon.
    pub(super) shape: &'static str,
    pub(super) text: String,
}

/// A warning of a plan.
pub(super) fn warning(warning: &Warning) -> ShownWarning {
    let (word, shape) = match warning.level {
        Level::Note => ("Note", "M8 1.5a6.500 6.500 0 1 0 .001 0zM8 7v5M8 4v1.500"),
        Level::Caution => ("Caution", "M8 1.500 15 14.500H1zM8 6v4.500M8 12v1"),
        Level::Danger => ("Danger", "M5 1h6l4 4v6l-4 4H5l-4-4V5zM8 4v5M8 11v1.500"),
    };
    let text = warning.text.clone().into_owned();
    ShownWarning { class: warning.level.slug(), word, shape, text }
}
