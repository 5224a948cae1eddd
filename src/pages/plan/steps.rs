//! The ordered steps of a plan, as the page shows them.

use crate::figures::Both;
use crate::link::Link;
use crate::sentence::set;
use holewright_core::plan::{HoleSpec, Operation, Part};
use holewright_core::units::print::sentence as sentence_case;
use holewright_core::units::{in_mm, print};

/// One step.
pub(super) struct Step {
    /// `Drill`
    pub(super) action: &'static str,
    /// `both parts together`; none in a one-part plan.
    pub(super) part: Option<&'static str>,
    /// None where the step wants no tool.
    pub(super) tool: Option<String>,
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
        operation.speed.as_ref().map(|set| Figure {
            other: set.aside(spec.material.kind()),
            ..Figure::one("Speed", set.words())
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
        tool: (operation.tool != "none").then(|| sentence_case(&operation.tool)),
        drill: operation.drill.map(Link::drill),
        figures: figures.into_iter().flatten().collect(),
        text: set(&operation.text),
        why: set(&operation.why),
    }
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Upper => "upper part",
        Part::Lower => "lower part",
        Part::Both => "both parts together",
    }
}
