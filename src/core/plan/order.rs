//! The order of the steps: one part, two parts drilled together, or spotted through a master.
//!
//! # Source
//! Common practice, no source.

use std::borrow::Cow;

use super::drilling::{Metals, hand_step, step};
use super::lips::{self, Into};
use super::question::Steps;
use super::worked_up::Reach;
use super::{
    Action, Hole, Operation, Over, Part, UpperHole, depths, finishing, fluid, starting, taps,
    worked_up,
};
use crate::calc::depth;
use crate::units::Length;

/// Every step, in order.
pub(super) fn operations(steps: &Steps<'_>) -> Vec<Operation> {
    match steps.spec.over {
        None => one_part(steps),
        Some(over) => match over.hole {
            UpperHole::Tapping => drilled_together(steps, over),
            UpperHole::Clearance => spotted_through(steps, over),
        },
    }
}

fn one_part(steps: &Steps<'_>) -> Vec<Operation> {
    let mut order = vec![
        starting::mark_out(Part::Lower, steps.spec.material),
        starting::spot(Part::Lower, steps.spec.material),
    ];
    order.extend(drill_lower(steps));
    order.extend(chamfer_and_tap(steps));
    order.push(finishing::try_screw(steps, Part::Lower));
    order
}

fn drilled_together(steps: &Steps<'_>, over: Over) -> Vec<Operation> {
    let mut order = vec![
        starting::mark_out(Part::Upper, over.material),
        starting::spot(Part::Upper, over.material),
        starting::register(),
    ];
    order.extend(drill_both(steps, over));
    order.push(starting::separate(
        "Take the parts apart, keeping the witness marks.",
        "The lower part is tapped with nothing in the way.",
    ));
    order.extend(finishing::deburr_each());
    order.extend(chamfer_and_tap(steps));
    order.push(open_out(steps, over));
    order.extend(finishing::seat(steps));
    order.push(finishing::break_edges(steps));
    order.push(finishing::try_screw(steps, Part::Both));
    order.push(finishing::next_hole());
    order
}

fn spotted_through(steps: &Steps<'_>, over: Over) -> Vec<Operation> {
    let mut order = vec![starting::register(), starting::spot_through(steps, over)];
    order.push(starting::separate(
        "Take the upper part off, keeping the witness marks.",
        "The smaller drill must not be led by the larger hole.",
    ));
    order.extend(drill_lower(steps));
    order.extend(chamfer_and_tap(steps));
    order.extend(finishing::seat(steps));
    order.push(finishing::try_screw(steps, Part::Both));
    order.push(finishing::next_hole());
    order
}

fn drill_both(steps: &Steps<'_>, over: Over) -> Vec<Operation> {
    let spec = steps.spec;
    let metals = Metals::both(over.material, spec.material);
    let whole =
        steps.depths.drill_full_diameter.zip(over.thickness).map(|(lower, upper)| lower + upper);
    let stop = whole.filter(|_| steps.depths.stop.is_some());
    let stop = stop.map(|whole| depths::settable(whole, spec.scale, steps.depths.stop_is_short));
    let words = Words { steps, metals, depth: whole, stop };
    let reach = Reach { part: Part::Both, metals, depth: whole, stop };
    let mut drills = worked_up::before(steps, reach);
    drills.push(Operation {
        stop,
        text: words.of("Drill through the upper part into the lower in one pass"),
        why: words.why("The upper part is its own jig: the two holes share one axis. It stays at tapping size until the lower part is tapped."),
        lips: lips::lips(metals, worked_up::meets(steps)),
        ..step(spec, Part::Both, steps.tapping, metals, whole)
    });
    for drilling in &mut drills {
        let both = [over.material, spec.material];
        drilling.lubricant = drilling.drill.and_then(|drill| fluid::for_both(spec, drill, both));
    }
    drills
}

fn drill_lower(steps: &Steps<'_>) -> Vec<Operation> {
    let metals = Metals::one(steps.spec.material);
    let depth = steps.depths.drill_full_diameter;
    let words = Words { steps, metals, depth, stop: steps.depths.stop };
    let reach = Reach { part: Part::Lower, metals, depth, stop: steps.depths.stop };
    let mut drills = worked_up::before(steps, reach);
    drills.push(Operation {
        stop: steps.depths.stop,
        text: words.of("Drill at tapping size"),
        why: words.why(match steps.spec.hole {
            Hole::Blind => "The stop leaves room for the tap's lead and one thread under the last full one.",
            Hole::Through => "This size decides the thread: measure the hole if the drill is not known to cut to size.",
        }),
        lips: lips::lips(metals, worked_up::meets(steps)),
        ..step(steps.spec, Part::Lower, steps.tapping, metals, depth)
    });
    drills
}

/// What the words of the tapping drill's step are made from.
struct Words<'a> {
    steps: &'a Steps<'a>,
    metals: Metals,
    depth: Option<Length>,
    stop: Option<Length>,
}

impl Words<'_> {
    fn of(&self, opening: &str) -> Cow<'static, str> {
        let spec = self.steps.spec;
        let stop = match (spec.hole, self.stop) {
            (Hole::Blind, Some(stop)) => {
                let stop = depths::as_set(stop, spec.scale);
                format!("; set the stop to {stop} at the full diameter of the drill")
            }
            (Hole::Blind, None) => {
                "; set the stop to the upper part's thickness more than the lower part's depth"
                    .to_owned()
            }
            (Hole::Through, _) => "; ease off the feed as it breaks through".to_owned(),
        };
        let diameter = self.steps.tapping.diameter;
        let peck =
            depths::pecks(spec.scale, &depth::peck(diameter, self.metals.group()), self.depth);
        let lips = lips::words(self.metals, worked_up::meets(self.steps));
        let held = worked_up::held(self.steps.tapping);
        Cow::Owned(format!("{opening}{stop}.{peck}{lips}{held}"))
    }

    /// The reason, then how the stop was rounded and what a deeper hole would gain.
    fn why(&self, reason: &str) -> Cow<'static, str> {
        let Steps { spec, depths, .. } = self.steps;
        let mut why = reason.to_owned();
        let set = self.depth.zip(self.stop);
        if let Some(rounding) = set.and_then(|(sum, stop)| depths::rounding(sum, stop, spec.scale))
        {
            why.push(' ');
            why.push_str(&rounding);
        }
        if spec.hole == Hole::Blind && spec.tap == super::Tap::Hand {
            why.push(' ');
            why.push_str(&depths::metal_to_spare(depths));
        }
        Cow::Owned(why)
    }
}

fn chamfer_and_tap(steps: &Steps<'_>) -> Vec<Operation> {
    let spec = steps.spec;
    let mut order = finishing::chamfers(steps);
    let is_cleared = spec.over.is_some_and(|over| over.hole == UpperHole::Tapping);
    if spec.hole == Hole::Blind && !is_cleared {
        order.push(finishing::clear_chips());
    }
    order.extend(taps::operations(steps));
    order
}

fn open_out(steps: &Steps<'_>, over: Over) -> Operation {
    let metals = Metals::one(over.material);
    let text = Cow::Owned(format!(
        "Clamp the upper part on its own and open the hole to clearance.{}{}",
        lips::words(metals, Into::Hole),
        steps.clearance.drill.map_or("", worked_up::held)
    ));
    let why = "Only now: at tapping size the upper part was the jig for the lower.".into();
    let lips = lips::lips(metals, Into::Hole);
    match steps.clearance.drill {
        Some(drill) => Operation {
            action: Action::OpenOut,
            text,
            why,
            lips,
            ..step(steps.spec, Part::Upper, drill, metals, over.thickness)
        },
        None => Operation {
            diameter: Some(steps.clearance.hole.hole),
            depth: over.thickness,
            text,
            why,
            lips,
            ..hand_step(
                Action::OpenOut,
                Part::Upper,
                "a drill not less than the clearance size",
                "",
                "",
            )
        },
    }
}
