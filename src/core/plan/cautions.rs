//! What to watch for in one plan, each caution at its place: at the head what sets this cut apart from
//! every other, at a step what bites there, and once, for all, what stands for every such job.

mod asked;
mod head;
mod hole;
mod machine;
mod materials;
mod standing;
mod tap;

pub(super) use standing::speaks_of_pressure;

use std::borrow::Cow;
use std::cmp::Reverse;

use super::{Action, Cautions, HolePlan, HoleSpec, Level, Operation, Part, TaperPlan, Warning};
use crate::units::Length;

/// No more stand at the head.
const MOST_AT_HEAD: usize = 3;

/// Where a caution is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Place {
    /// At the head of the plan.
    Head,
    /// Under the question, as what was assumed.
    Assumed,
    /// Beside the choice of the drill.
    Choice,
    /// At the last step of this kind on this part, or on both together; with no such step, nowhere.
    At(Action, Part),
    /// At the tapping drill.
    Drilling,
    /// At the first tap.
    FirstTap,
    /// At the first step on this part.
    First(Part),
    /// Once for every such job.
    Standing,
}

/// The cautions found, each with its place, in the order of the work.
#[derive(Default)]
struct Found(Vec<(Place, Warning)>);

impl Found {
    fn say(&mut self, place: Place, level: Level, text: impl Into<Cow<'static, str>>) {
        self.0.push((place, Warning { level, text: text.into() }));
    }

    /// Each at its place, the worst first.
    fn settled(mut self, steps: &mut [Operation]) -> Cautions {
        self.0.sort_by_key(|(_, warning)| Reverse(warning.level));
        let mut cautions = Cautions::default();
        for (place, warning) in self.0 {
            settle(place, warning, steps, &mut cautions);
        }
        cautions
    }

    /// Those of a part that knows nothing of places.
    fn all(&mut self, place: Place, warnings: Vec<Warning>) {
        self.0.extend(warnings.into_iter().map(|warning| (place, warning)));
    }
}

/// One more caution of a part that knows nothing of places.
fn say(found: &mut Vec<Warning>, level: Level, text: impl Into<Cow<'static, str>>) {
    found.push(Warning { level, text: text.into() });
}

/// Puts every caution of the plan at its place.
pub(super) fn place(plan: &mut HolePlan<'_>) {
    let mut found = Found::default();
    asked::assumed(plan, &mut found);
    head::of_this_cut(plan, &mut found);
    hole::cautions(plan, &mut found);
    tap::cautions(plan.spec, &mut found);
    machine::at_its_steps(plan, &mut found);
    standing::cautions(plan.spec, &mut found);
    let hole = plan.tapping.planned().drill.diameter;
    let job = Job { spec: plan.spec, operations: &plan.operations, hole };
    materials::cautions(&job, &mut found);
    plan.cautions = found.settled(&mut plan.operations);
}

/// The same for a taper thread.
pub(super) fn place_taper(plan: &mut TaperPlan<'_>) {
    let mut found = Found::default();
    asked::taper(plan, &mut found);
    head::fire(plan.spec, &mut found);
    head::thin_for_taper(plan, &mut found);
    tap::cautions(plan.spec, &mut found);
    standing::cautions(plan.spec, &mut found);
    let job = Job { spec: plan.spec, operations: &plan.operations, hole: plan.hole.diameter };
    materials::cautions(&job, &mut found);
    plan.cautions = found.settled(&mut plan.operations);
}

/// What the cautions of the materials turn on.
struct Job<'a> {
    spec: &'a HoleSpec,
    operations: &'a [Operation],
    /// Diameter of the hole that is tapped.
    hole: Length,
}

/// Puts one at its place; where the head is full it stands at the drill, so that none is lost.
fn settle(place: Place, warning: Warning, steps: &mut [Operation], cautions: &mut Cautions) {
    let step = match place {
        Place::Head if cautions.head.len() < MOST_AT_HEAD => return cautions.head.push(warning),
        Place::Assumed => return cautions.assumed.push(warning),
        Place::Choice => return cautions.choice.push(warning),
        Place::Standing => return cautions.standing.push(warning),
        Place::At(action, part) => {
            steps.iter_mut().rfind(|step| step.action == action && covers(step.part, part))
        }
        Place::Head | Place::Drilling => {
            steps.iter_mut().rfind(|step| step.action == Action::Drill)
        }
        Place::FirstTap => steps.iter_mut().find(|step| step.action == Action::Tap),
        Place::First(part) => steps.iter_mut().find(|step| covers(step.part, part)),
    };
    match step {
        // What would be folded away at the step, and can hurt, is not left to be found there.
        Some(step) if warning.level == Level::Danger && step.is_full() => {
            cautions.standing.push(warning);
        }
        Some(step) => step.cautions.push(warning),
        None => {}
    }
}

/// Whether a step on one part, or on both, is a step on the other.
const fn covers(step: Part, part: Part) -> bool {
    matches!(
        (step, part),
        (Part::Both, _) | (Part::Upper, Part::Upper) | (Part::Lower, Part::Lower)
    )
}
