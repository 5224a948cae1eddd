//! The ordered steps of a plan, as the page shows them.

use super::depths::stopped;
use super::figure::Figure;
use crate::figures::Both;
use crate::link::Link;
use crate::sentence::set;
use crate::warnings::Said;
use holewright_core::plan::{Action, HoleSpec, Operation, Part};
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
    /// What the machine is set by, in large figures: a drill's size, stop and speed.
    pub(super) set: Vec<Figure>,
    pub(super) figures: Vec<Figure>,
    pub(super) text: String,
    pub(super) why: String,
    pub(super) cautions: Vec<Said>,
    /// The milder cautions, folded away with the why.
    pub(super) folded: Vec<Said>,
}

/// One step of a plan.
pub(super) fn step(spec: &HoleSpec, operation: &Operation) -> Step {
    let set_at_the_machine = [
        operation.diameter.map(|size| Figure::both("Size", Both::of(size))),
        depth(spec, operation),
        operation.speed.as_ref().map(|set| Figure {
            other: set.aside(spec.material.kind()),
            ..Figure::one("Speed", set.words())
        }),
    ];
    let others = [
        match operation.feed {
            Some(feed) => {
                let feed = print::trimmed(in_mm(feed), 3);
                Some(Figure::one("Feed", format!("about {feed} mm/rev")))
            }
            // A drill too small for a figure.
            None => operation.drill.map(|_| Figure::one("Feed", "by feel")),
        },
        operation.lubricant.map(|lubricant| Figure::one("Lubricant", lubricant)),
    ];
    let [set_at_the_machine, others] =
        [set_at_the_machine.to_vec(), others.to_vec()].map(|figures| figures.into_iter().flatten());
    // What is read off at arm's length is what a drill is set by.
    let is_drilled = operation.drill.is_some();
    let (set_figures, figures) = if is_drilled {
        (set_at_the_machine.collect(), others.collect())
    } else {
        (Vec::new(), set_at_the_machine.chain(others).collect())
    };
    let (open, folded) = operation.open_and_folded();
    Step {
        action: operation.action.words(),
        part: spec.over.and(Some(part(operation.part))),
        tool: (operation.tool != "none").then(|| sentence_case(&operation.tool)),
        drill: operation.drill.map(Link::drill),
        set: set_figures,
        figures,
        text: set(&operation.text),
        why: set(&operation.why),
        cautions: open.iter().map(Said::of).collect(),
        folded: folded.iter().map(Said::of).collect(),
    }
}

/// How deep the step goes, by what is set or read there.
fn depth(spec: &HoleSpec, operation: &Operation) -> Option<Figure> {
    if let Some(stop) = operation.stop {
        return Some(stopped("Stop", stop, spec.scale));
    }
    let (name, length) = match (operation.tip, operation.action) {
        (Some(tip), _) => ("Tap ends at", Some(tip)),
        (None, Action::Tap) => ("Length of thread", operation.depth),
        (None, _) => ("Depth", operation.depth),
    };
    length.map(|length| Figure::both(name, Both::coarse(length)))
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Upper => "upper part",
        Part::Lower => "lower part",
        Part::Both => "both parts together",
    }
}
