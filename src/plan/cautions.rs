//! What to look out for in one plan: the hole, the tap, the metal, the person.

use std::borrow::Cow;

use super::drilling::{self, Metals};
use super::{Depths, Hole, HolePlan, HoleSpec, Level, Tap, TapSteel, UpperHole, Warning};
use crate::calc::depth::{Deep, how_deep};
use crate::calc::speed_choice::Reach;
use crate::calc::tapping::{Candidate, Choice, Remark};
use crate::tables::drills::Drill;
use crate::tables::materials::{Advice, Group, Material, PressureWork};
use crate::tables::threads::read::Hand;
use crate::units::{in_rpm, mm, print};

/// Below this at the likely size the thread is doubtful, percent.
const THIN_THREAD: f64 = 45.0;

/// Every warning of a plan, worst first; equal levels stay in the order of the work.
pub(super) fn warnings(plan: &HolePlan<'_>) -> Vec<Warning> {
    let mut found = Vec::new();
    choice(&plan.tapping, &mut found);
    size(plan, &mut found);
    depth(plan.spec, &plan.depths, &mut found);
    tap(plan, &mut found);
    upper(plan, &mut found);
    metals(plan.spec, &mut found);
    machine(plan, &mut found);
    person(plan.spec, &mut found);
    found.sort_by_key(|warning| std::cmp::Reverse(warning.level));
    found
}

fn say(found: &mut Vec<Warning>, level: Level, text: impl Into<Cow<'static, str>>) {
    found.push(Warning { level, text: text.into() });
}

/// A drill with its size and engagement in words: `No. 36 (2.705 mm), 69.9 %`.
fn named(candidate: &Candidate) -> String {
    let size = print::mm(candidate.drill.diameter, 3);
    let engagement = print::percent(candidate.engagement_percent);
    if candidate.drill.label == size {
        format!("{size}, {engagement}")
    } else {
        format!("{} ({size}), {engagement}", candidate.drill.label)
    }
}

fn choice(choice: &Choice, found: &mut Vec<Warning>) {
    let chosen = &choice.chosen;
    match (chosen.within_standard, choice.largest_hole) {
        (Some(false), Some(limit)) => say(
            found,
            Level::Note,
            format!(
                "{} is beyond the largest hole of {} ({}): usual in small model work, outside the standard.",
                chosen.drill.label,
                limit.standard,
                print::mm(limit.diameter, 3)
            ),
        ),
        (None, _) => say(
            found,
            Level::Note,
            "We hold no source for this standard's largest hole, so the drill is chosen by engagement alone.",
        ),
        _ => {}
    }
    for remark in &choice.remarks {
        match *remark {
            Remark::NoneWithinStandard => say(
                found,
                Level::Caution,
                "No drill at hand keeps to the standard's largest hole: this is the nearest to the aim.",
            ),
            Remark::BelowMinor => say(
                found,
                Level::Caution,
                "This drill is below the nut's least minor diameter: the tap will cut at its root and may jam or break.",
            ),
            Remark::FarFromAim { by } => say(found, Level::Note, far_from_aim(choice, by)),
            Remark::BetterElsewhere(better) => say(
                found,
                Level::Note,
                format!(
                    "A drill not at hand comes nearer the aim of {}: {}. With yours, {}.",
                    print::percent(choice.aim_percent),
                    named(&better),
                    if chosen.engagement_percent > better.engagement_percent {
                        "the tap works harder for a little more thread"
                    } else {
                        "some thread is given up for an easier tap"
                    },
                ),
            ),
        }
    }
}

/// Why the drill is so far from the aim, and what that means at the tap.
fn far_from_aim(choice: &Choice, by: f64) -> String {
    let aim = print::fixed(choice.aim_percent, 0);
    let left = print::percent(choice.chosen.engagement_percent);
    match choice.largest_hole {
        Some(limit) if by > 0.0 => format!(
            "{left} is more than the {aim} % aimed for: the largest hole of {} is {}, and the drill is held to it. The tap works harder.",
            limit.standard,
            print::mm(limit.diameter, 3)
        ),
        _ if by > 0.0 => {
            format!("{left} is more than the {aim} % aimed for: the tap works harder.")
        }
        _ => format!("{left} is less than the {aim} % aimed for: some thread is given up."),
    }
}

fn size(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    if plan.hole.likely_engagement_percent < THIN_THREAD && spec.tap != Tap::Forming {
        say(
            found,
            Level::Caution,
            format!(
                "If the drill cuts as large as drills usually do (about {}), only about {} % of thread is left: measure a trial hole first.",
                print::mm(plan.hole.likely, 2),
                print::fixed(plan.hole.likely_engagement_percent, 0)
            ),
        );
    }
    if let Some(percent) = plan.hole.measured_engagement_percent {
        let level = if percent < THIN_THREAD { Level::Caution } else { Level::Note };
        say(
            found,
            level,
            format!("The hole as measured leaves {} of thread.", print::percent(percent)),
        );
    }
    if spec.material.closes_in {
        say(
            found,
            Level::Note,
            format!(
                "{} closes in behind the drill: drill and tap a trial hole in scrap first.",
                print::sentence(spec.material.name)
            ),
        );
    }
}

fn depth(spec: &HoleSpec, depths: &Depths, found: &mut Vec<Warning>) {
    if spec.hole == Hole::Blind && spec.depth.is_none() {
        let length = depths.full_thread.map_or_else(String::new, |length| print::mm(length, 2));
        say(
            found,
            Level::Note,
            format!("No depth was given: {length} of full thread, 1½ diameters, is taken."),
        );
    }
    let deep = depths.diameters.and_then(|diameters| how_deep(diameters).zip(Some(diameters)));
    match deep {
        Some((Deep::VeryDeep, diameters)) => say(
            found,
            Level::Caution,
            format!(
                "Strong caution: the drilled hole is {} diameters deep. It will wander and pack; clear after every half diameter, and think of drilling from both ends, a larger thread or less of it.",
                print::fixed(diameters, 1)
            ),
        ),
        Some((Deep::Deep, diameters)) => say(
            found,
            Level::Caution,
            format!(
                "The drilled hole is {} diameters deep: clear the swarf often and keep the lips sharp and even.",
                print::fixed(diameters, 1)
            ),
        ),
        None => {}
    }
    if let Some(wall) = depths.wall.filter(|wall| *wall < depths.least_wall) {
        say(
            found,
            Level::Caution,
            format!(
                "Only {} of metal is left under the point of the drill: grind the point flatter, shorten the thread, or drill through.",
                print::mm(wall, 2)
            ),
        );
    }
    if spec.hole == Hole::Blind && spec.tap == Tap::Hand {
        say(found, Level::Note, metal_to_spare(depths));
    }
}

/// What deeper drilling would buy.
fn metal_to_spare(depths: &Depths) -> String {
    let swarf = print::mm(depths.swarf_room, 1);
    let centre = depths.male_centre.map_or_else(String::new, |centre| {
        format!(
            "up to {} more lets a tap with a pointed male centre reach the bottom (or grind the point off the plug tap), and ",
            print::mm(centre, 1)
        )
    });
    format!(
        "If there is metal to spare, drill deeper: {centre}up to {swarf} more gives the swarf of a straight-flute tap somewhere to go."
    )
}

fn tap(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    if plan.geometry.major < mm(3.0)
        && (spec.material.group == Group::Tough || spec.material.work_hardens)
    {
        say(
            found,
            Level::Caution,
            format!(
                "A small tap in {}: use a sharp tap held square, back off often, and take the easier drill if in doubt.",
                spec.material.name
            ),
        );
    }
    if spec.hand == Hand::Left {
        say(found, Level::Note, "Left hand: taps, dies and screw must all be left-hand.");
    }
    if spec.tap == Tap::Forming {
        say(
            found,
            Level::Caution,
            "A forming tap takes two to three times the torque of a cutting tap; the drill given here is for forming only, never for a cutting tap.",
        );
    }
    if spec.tap_steel == TapSteel::Carbon {
        say(found, Level::Caution, carbon_tap(spec));
    }
}

/// A carbon steel tap is brittle; whether it can be dissolved out is the metal's to say.
fn carbon_tap(spec: &HoleSpec) -> String {
    let rescue: Vec<&str> =
        spec.material.broken_tap.advice().iter().map(|advice| advice.text).collect();
    format!("A carbon steel tap snaps without warning. If it does: {}", rescue.join(" "))
}

fn upper(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    if plan.spec.lone_thickness.is_some() {
        say(
            found,
            Level::Note,
            "A thickness was given for an upper part, but not its metal: this plan is for one part.",
        );
    }
    let Some(over) = plan.spec.over else { return };
    if plan.clearance.drill.is_none() {
        say(
            found,
            Level::Caution,
            format!(
                "No drill at hand clears the screw: the hole wants {} or a little over.",
                print::mm(plan.clearance.hole.hole, 3)
            ),
        );
    }
    let thick = over
        .thickness
        .is_some_and(|thickness| thickness > plan.tapping.chosen.drill.diameter * 4.0);
    if over.hole == UpperHole::Tapping && thick {
        say(
            found,
            Level::Caution,
            "The upper part is over four drill diameters thick: the tapping drill may wander in it. Think of drilling it to clearance first and spotting the lower part through it.",
        );
    }
    if over.thickness.is_none() {
        say(
            found,
            Level::Note,
            "The upper part's thickness was not given, so the depth stop cannot be worked out for both parts together.",
        );
    }
}

fn metals(spec: &HoleSpec, found: &mut Vec<Warning>) {
    say_by_metal(spec, |material| material.cautions, Level::Caution, found);
    for material in materials(spec).filter(|material| material.work_hardens) {
        say(
            found,
            Level::Caution,
            format!(
                "{} hardens under a rubbing drill: keep it cutting, never dwell.",
                print::sentence(material.name)
            ),
        );
    }
}

/// What the machine's speeds make of the drills and of a tap under power.
fn machine(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    let lower = Metals::one(spec.material);
    let tapping_metals = match spec.over {
        Some(over) if over.hole == UpperHole::Tapping => Metals::both(over.material, spec.material),
        _ => lower,
    };
    let tapping = plan.tapping.chosen.drill;
    drill_speed(spec, tapping, tapping_metals, found);
    if let (Some(over), Some(drill)) = (spec.over, plan.clearance.drill)
        && over.hole == UpperHole::Tapping
    {
        drill_speed(spec, drill, Metals::one(over.material), found);
    }
    if let (Tap::Machine, Some(range)) = (spec.tap, spec.material.tapping.first()) {
        let tap = drilling::setting(range, plan.geometry.major, &spec.spindle);
        if tap.reach == Reach::TooFast {
            say(
                found,
                Level::Caution,
                format!(
                    "The slowest speed at hand, {} rev/min, is too fast for the tap (about {} rev/min): turn it by hand.",
                    print::fixed(in_rpm(tap.speed), 0),
                    print::fixed(in_rpm(tap.wanted), 0)
                ),
            );
        }
    }
}

fn drill_speed(spec: &HoleSpec, drill: &Drill, metals: Metals, found: &mut Vec<Warning>) {
    let Some(set) = drilling::drill_setting(metals, drill.diameter, &spec.spindle) else { return };
    let wanted = print::fixed(in_rpm(set.wanted), 0);
    match set.reach {
        Reach::TooSlow => say(
            found,
            Level::Note,
            format!(
                "The spindle is slower than the {} drill likes (about {wanted} rev/min): feed lightly and clear often.",
                drill.label
            ),
        ),
        Reach::TooFast => {
            let largest = drilling::largest_for(metals, set.speed)
                .map_or_else(String::new, |largest| print::mm(largest, 1));
            say(
                found,
                Level::Caution,
                format!(
                    "The slowest speed at hand, {} rev/min, is too fast for the {} drill (about {wanted} rev/min). The largest drill it suits in {} is {largest}: open the hole out to there and bore, ream or file the rest, or use a slower machine.",
                    print::fixed(in_rpm(set.speed), 0),
                    drill.label,
                    metals.tougher().name,
                ),
            );
        }
        _ => {}
    }
}

fn person(spec: &HoleSpec, found: &mut Vec<Warning>) {
    say(
        found,
        Level::Danger,
        "Eyes: wear glasses; drills and taps snap. Clamp the work. No gloves, loose sleeves or rings near the spindle. Move swarf with a brush, never by hand or with an air line.",
    );
    if spec.tap == Tap::Hand {
        say(
            found,
            Level::Danger,
            "When a tap is guided by the drill chuck, isolate the machine and turn the chuck by hand.",
        );
    }
    say_by_metal(spec, |material| material.dangers, Level::Danger, found);
    if materials(spec).any(|material| material.pressure_work == PressureWork::Plausible) {
        say(
            found,
            Level::Danger,
            "Steam, boilers, pressure: these figures are no design. The national boiler code and the club's boiler inspector decide, before cutting.",
        );
    }
}

fn materials(spec: &HoleSpec) -> impl Iterator<Item = &'static Material> {
    let over = spec.over.map(|over| over.material).filter(|over| over.slug != spec.material.slug);
    std::iter::once(spec.material).chain(over)
}

/// Each metal's advice under its name; what two metals share is said once, under both.
fn say_by_metal(
    spec: &HoleSpec,
    advice: impl Fn(&'static Material) -> &'static [Advice],
    level: Level,
    found: &mut Vec<Warning>,
) {
    let mut said: Vec<&str> = Vec::new();
    for text in materials(spec).flat_map(&advice).map(|advice| advice.text) {
        if said.contains(&text) {
            continue;
        }
        said.push(text);
        let names: Vec<&str> = materials(spec)
            .filter(|material| advice(material).iter().any(|advice| advice.text == text))
            .map(|material| material.name)
            .collect();
        say(
            found,
            level,
            format!("{}: {}", print::sentence(&names.join(" and ")), print::running(text)),
        );
    }
}
