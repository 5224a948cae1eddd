//! The plan for a taper pipe thread: a straight hole or a reamed one by the standard's list, depth by
//! gauge length, and the steps.
//!
//! # Source
//! Common practice, no source; the drills are the lists', the gauge lengths the standards'.

use std::borrow::Cow;

use super::drilling::{Metals, hand_step, on_one_machine, step};
use super::worked_up::Reach;
use super::{
    Action, Cautions, Error, Hole, HoleSpec, Operation, Part, Tap, TaperPlan, cautions, depths,
    finishing, lips, starting, taps, worked_up,
};
use crate::calc::depth;
use crate::calc::taper_hole::{self, drill_for};
use crate::calc::thread_form;
use crate::tables::lists::TaperHole;
use crate::units::{Length, in_mm, mm, print};

/// The plan for a taper thread.
///
/// # Errors
/// [`Error::Refused`] where the material is not to be cut; [`Error::TaperWantsHandTaps`] for a tap under
/// power or a forming tap; [`Error::NotTaper`] for a thread that is none.
///
/// # Examples
/// R 1/8 in brass: a straight hole of 8.2 mm (a tap maker's list), tapped until the fitting goes in by
/// hand to within the gauge length of 4 mm (ISO 7-1, recalled).
/// ```
/// use holewright_core::{plan::{HoleSpec, build_taper}, tables::{materials, threads}, units::mm};
/// let thread = threads::find("bspt", "1-8").unwrap();
/// let spec = HoleSpec::new(thread, materials::find("free-cutting-brass").unwrap());
/// let plan = build_taper(&spec).unwrap();
/// assert_eq!(plan.drill.unwrap().label, "8.2 mm");
/// assert_eq!(plan.depths.hand_tight, mm(4.0));
/// ```
pub fn build_taper(spec: &HoleSpec) -> Result<TaperPlan<'_>, Error> {
    if spec.material.refused.is_some() {
        return Err(Error::Refused { material: spec.material });
    }
    if spec.tap != Tap::Hand {
        return Err(Error::TaperWantsHandTaps { thread: spec.thread });
    }
    let geometry = thread_form::geometry(spec.thread);
    let mut holes = taper_hole::holes(spec.thread, &geometry).into_iter();
    let (Some(depths), Some(hole)) = (taper_hole::depths(spec.thread, &geometry), holes.next())
    else {
        return Err(Error::NotTaper { thread: spec.thread });
    };
    let drill = drill_for(&hole, &geometry, spec.at_hand.drills());
    check_wall(spec, &depths, &hole)?;
    let mut plan = TaperPlan {
        spec,
        geometry,
        drill,
        others: holes.collect(),
        depths,
        operations: Vec::new(),
        cautions: Cautions::default(),
        hole,
    };
    plan.operations = operations(&plan);
    cautions::place_taper(&mut plan);
    Ok(plan)
}

/// A blind hole must end in the part.
fn check_wall(
    spec: &HoleSpec,
    depths: &taper_hole::Depths,
    hole: &taper_hole::Hole,
) -> Result<(), Error> {
    let (Hole::Blind, Some(part_thickness)) = (spec.hole, spec.part_thickness) else {
        return Ok(());
    };
    let needed = depths.drill + depth::point_length(hole.diameter, spec.point_angle);
    if needed < part_thickness {
        return Ok(());
    }
    Err(Error::PartTooThin { asked: depths.thread, needed, part_thickness, most: None })
}

fn operations(plan: &TaperPlan<'_>) -> Vec<Operation> {
    let mut order = vec![
        starting::mark_out(Part::Lower, plan.spec.material),
        starting::spot(Part::Lower, plan.spec.material),
    ];
    order.extend(drilled(plan));
    order.push(chamfer(plan));
    if plan.spec.hole == Hole::Blind {
        order.push(finishing::clear_chips());
    }
    order.push(tap(plan));
    order.push(try_fitting(plan));
    order
}

/// How deep the hole is drilled: through, or the thread and the tap's lead.
fn depth(plan: &TaperPlan<'_>) -> Length {
    match plan.spec.hole {
        Hole::Through => plan.spec.depth.unwrap_or(plan.depths.drill),
        Hole::Blind => plan.depths.drill,
    }
}

fn drilled(plan: &TaperPlan<'_>) -> Vec<Operation> {
    let metals = Metals::one(plan.spec.material);
    let depth = depth(plan);
    let reamed = plan.others.iter().find(|hole| hole.way == TaperHole::Reamed);
    let reamed = reamed.map_or_else(String::new, |hole| {
        format!(
            " With a taper reamer, 1 in 16: drill {} instead and ream until the mouth is {}.",
            hole.label,
            print::mm(plan.geometry.minor_internal, 2)
        )
    });
    let scale = plan.spec.scale;
    let stop = (plan.spec.hole == Hole::Blind).then(|| depths::settable(depth, scale, false));
    let peck = depth::peck(plan.hole.diameter, metals.group());
    let pecks = depths::pecks(scale, &peck, Some(depth));
    let text = match stop {
        Some(stop) => {
            let stop = depths::as_set(stop, scale);
            format!("Drill straight; set the stop to {stop}.{pecks}{reamed}")
        }
        None => {
            format!(
                "Drill straight through; ease off the feed as it breaks through.{pecks}{reamed}"
            )
        }
    };
    let why = "The tap cuts the taper. In a straight hole it cuts more at the mouth than at the bottom; a taper-reamed one cuts lighter and seals better.";
    let Some(drill) = plan.drill else {
        return vec![Operation {
            diameter: Some(plan.hole.diameter),
            depth: Some(depth),
            text: Cow::Owned(format!(
                "No drill at hand is near enough: get {}. {text}",
                plan.hole.label
            )),
            why: why.into(),
            ..hand_step(Action::Drill, Part::Lower, "a drill of that size", "", "")
        }];
    };
    let spec = &on_one_machine(plan.spec, drill);
    let reach = Reach { part: Part::Lower, metals, depth: Some(depth), stop };
    let earlier = worked_up::before_drill(spec, drill, reach);
    let meets = worked_up::meets_after(spec, drill);
    let last = Operation {
        text: Cow::Owned(format!("{text}{}{}", lips::words(metals, meets), worked_up::held(drill))),
        why: why.into(),
        lips: lips::lips(metals, meets),
        stop,
        ..step(spec, Part::Lower, drill, metals, Some(depth))
    };
    earlier.into_iter().chain([last]).collect()
}

fn chamfer(plan: &TaperPlan<'_>) -> Operation {
    // No countersink is set nearer than to a tenth.
    let wide = mm(print::round(in_mm(plan.geometry.major), 1));
    let size = print::mm(wide, 1);
    Operation {
        diameter: Some(wide),
        text: Cow::Owned(format!("Break the mouth to about {size}, no more.")),
        ..hand_step(
            Action::Chamfer,
            Part::Lower,
            "countersink, 90°",
            "",
            "A deep chamfer takes away the threads that seal.",
        )
    }
}

fn tap(plan: &TaperPlan<'_>) -> Operation {
    let by_hand = print::mm(plan.depths.hand_tight, 1);
    let back_off = taps::back_off(plan.spec);
    Operation {
        depth: Some(plan.depths.thread),
        text: Cow::Owned(format!(
            "Start it square. {back_off} Go in a little at a time and try the fitting: stop when it enters about {by_hand} by hand."
        )),
        why: "A taper tap cuts larger the further it goes: half a turn too far and the joint has nothing left to tighten on.".into(),
        ..taps::taper(plan.spec)
    }
}

fn try_fitting(plan: &TaperPlan<'_>) -> Operation {
    let further = print::mm(plan.depths.thread - plan.depths.hand_tight, 1);
    Operation {
        text: Cow::Owned(format!(
            "Clean both threads. With jointing or tape the fitting tightens within about three threads more, {further}."
        )),
        ..hand_step(
            Action::TryScrew,
            Part::Lower,
            "the fitting it is for",
            "",
            "The thread itself is the seal; a second cut is easy now and hard later.",
        )
    }
}
