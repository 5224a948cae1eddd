//! What sets this cut apart from every cut: a hole this deep, a part this thin, a tap this small, metal
//! whose swarf burns.

use super::{Found, Place, hole, materials};
use crate::calc::depth::{Deep, how_deep};
use crate::plan::{Action, Hole, HolePlan, HoleSpec, Level, Part, Tap, TaperPlan, UpperHole, hold};
use crate::tables::materials::{Group, Work};
use crate::units::{Length, exceeds, falls_short, in_mm, mm, print};

/// Below this size a tap is small. Common practice, no source.
const SMALL_TAP: Length = mm(3.0);

/// A thread longer than this many diameters is hard on a hand tap. Common practice, no source.
const LONG_THREAD: f64 = 2.5;

/// Up to here a part bends under the drill, and is sheet. Common practice, no source.
const SHEET: Length = mm(3.0);

pub(super) fn of_this_cut(plan: &HolePlan<'_>, found: &mut Found) {
    fire(plan.spec, found);
    let mut choice = Vec::new();
    hole::choice(&plan.tapping, &mut choice);
    let (grave, notes) = choice.into_iter().partition(|said| said.level > Level::Note);
    // That no drill at hand will do is the answer itself, and is not said again below it.
    match plan.tapping.get {
        Some(get) => {
            let get = &get.drill.label;
            let text = format!("Get the {get} drill first: none at hand will do.");
            found.say(Place::Drilling, Level::Caution, text);
            found.all(Place::Choice, grave);
        }
        None => found.all(Place::Head, grave),
    }
    found.all(Place::Choice, notes);
    few_threads(plan, found);
    measured(plan, found);
    thin_part(plan, found);
    wall(plan, found);
    deep(plan, found);
    long_thread(plan, found);
    small_tap(plan, found);
}

/// A part in which a taper thread has not its length.
pub(super) fn thin_for_taper(plan: &TaperPlan<'_>, found: &mut Found) {
    let thread = plan.depths.thread;
    // Of the figure as it is printed.
    let printed = mm(print::round(in_mm(thread), 1));
    let is_thin = plan.spec.depth.is_some_and(|depth| falls_short(depth, printed));
    if plan.spec.hole == Hole::Through && is_thin {
        found.say(
            Place::Head,
            Level::Caution,
            format!(
                "The part is thinner than the thread is long, {}: take a smaller thread or a boss, or screw the fitting less far in.",
                print::mm(thread, 1)
            ),
        );
    }
}

/// Chips that can burn: what to have at hand before the first cut. The rest stands at the drill.
pub(super) fn fire(spec: &HoleSpec, found: &mut Found) {
    let mut fires = materials::by_name(spec, Work::Fire).into_iter();
    if let Some((level, text)) = fires.next() {
        found.say(Place::Head, level, text);
    }
    for (level, text) in fires {
        found.say(Place::Drilling, level, text);
    }
}

fn few_threads(plan: &HolePlan<'_>, found: &mut Found) {
    if let Some(text) = hold::too_few(plan.spec, &plan.geometry, plan.depths.full_thread) {
        found.say(Place::Head, Level::Caution, text);
    }
}

fn measured(plan: &HolePlan<'_>, found: &mut Found) {
    let Some(percent) = plan.hole.measured_engagement_percent else { return };
    let leaves = print::percent(percent);
    let is_small = plan.spec.measured_hole.is_some_and(|hole| hole < plan.geometry.minor_internal);
    if is_small && plan.spec.tap != Tap::Forming {
        found.say(
            Place::Head,
            Level::Caution,
            format!(
                "The hole as measured is below the nut's least minor diameter, {}: a tap would jam. Open it out with the {} drill first.",
                print::mm(plan.geometry.minor_internal, 3),
                plan.tapping.planned().drill.label
            ),
        );
    } else if percent < hole::THIN_THREAD {
        found.say(
            Place::Head,
            Level::Caution,
            format!("The hole as measured leaves only {leaves} of thread."),
        );
    } else {
        found.say(
            Place::Choice,
            Level::Note,
            format!("The hole as measured leaves {leaves} of thread."),
        );
    }
}

/// Sheet thinner than its drill is wide, where it has nothing thick clamped to it: the tapped part on its
/// own, the upper when it is opened out.
fn thin_part(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    let is_thin = |thickness: Option<Length>, drill: Length| {
        thickness.is_some_and(|it| it < drill && !exceeds(it, SHEET))
    };
    let text = "Thin sheet climbs the drill and spins: clamp it flat on scrap, and use a sheet drill or step up.";
    let lower = match spec.hole {
        Hole::Through => spec.depth.or(spec.part_thickness),
        Hole::Blind => None,
    };
    let together = spec.over.filter(|over| over.hole == UpperHole::Tapping);
    match (together, plan.clearance.drill) {
        (None, _) if is_thin(lower, plan.tapping.planned().drill.diameter) => {
            found.say(Place::Head, Level::Danger, text);
        }
        (Some(over), Some(clearance)) if is_thin(over.thickness, clearance.diameter) => {
            found.say(Place::At(Action::OpenOut, Part::Upper), Level::Danger, text);
        }
        _ => {}
    }
}

fn wall(plan: &HolePlan<'_>, found: &mut Found) {
    let Some(wall) = plan.depths.wall.filter(|wall| *wall < plan.depths.least_wall) else { return };
    found.say(
        Place::Head,
        Level::Caution,
        format!(
            "Only {} is left under the point of the drill: grind it flatter, shorten the thread, or drill through.",
            print::mm(wall, 2)
        ),
    );
}

fn deep(plan: &HolePlan<'_>, found: &mut Found) {
    let Some(diameters) = plan.depths.diameters else { return };
    let deep = print::fixed(diameters, 1);
    let text = match how_deep(diameters) {
        Some(Deep::VeryDeep) => {
            let otherwise = match plan.spec.hole {
                Hole::Through => "drill from both ends",
                Hole::Blind => "take a larger thread or less of it",
            };
            format!(
                "A hole {deep} diameters deep wanders and packs: clear it at every step, or {otherwise}."
            )
        }
        Some(Deep::Deep) => format!(
            "The hole is {deep} diameters deep: clear it at every step, with the lips sharp and even."
        ),
        None => return,
    };
    // A thread too long is said at the head, and cures a deep hole with it.
    let place = if too_long(plan).is_some() { Place::Drilling } else { Place::Head };
    found.say(place, Level::Caution, text);
}

/// The length of a thread that is more than a tap turned by hand need cut.
fn too_long(plan: &HolePlan<'_>) -> Option<Length> {
    let most = plan.geometry.major * LONG_THREAD;
    plan.depths.full_thread.filter(|length| plan.spec.tap == Tap::Hand && exceeds(*length, most))
}

/// More thread than a tap turned by hand need cut.
fn long_thread(plan: &HolePlan<'_>, found: &mut Found) {
    let Some(length) = too_long(plan) else { return };
    let major = plan.geometry.major;
    let from = match plan.spec.hole {
        Hole::Through => "open the rest to clearance",
        Hole::Blind => "drill less deep, or open the mouth to clearance",
    };
    found.say(
        Place::Head,
        Level::Caution,
        format!(
            "{} diameters of thread hold no more than two, and risk the tap: thread {}; {from}.",
            print::fixed(in_mm(length) / in_mm(major), 1),
            print::mm(major * 2.0, 1)
        ),
    );
}

fn small_tap(plan: &HolePlan<'_>, found: &mut Found) {
    let material = plan.spec.material;
    let is_hard = material.group == Group::Tough || material.work_hardens;
    if plan.geometry.major >= SMALL_TAP || !is_hard {
        return;
    }
    let easier = match plan.tapping.easier.filter(|_| plan.tapping.get.is_none()) {
        Some(easier) => format!("; {} if in doubt", easier.drill.label),
        None => String::new(),
    };
    found.say(
        Place::Head,
        Level::Caution,
        format!("A small tap in {}: a sharp one, square, backed off often{easier}.", material.name),
    );
}
