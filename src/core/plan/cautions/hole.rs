//! What to look out for in the hole: the drill that was chosen, the size it cuts, how deep it goes.

use super::say;
use crate::calc::depth::{Deep, how_deep};
use crate::calc::limits::LargestHole;
use crate::calc::tapping::{Candidate, DrillChoice, Remark};
use crate::plan::{Depths, Hole, HolePlan, HoleSpec, Level, Tap, Warning};
use crate::units::print;

/// Below this as measured the thread is doubtful, percent.
const THIN_THREAD: f64 = 45.0;

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

pub(super) fn choice(choice: &DrillChoice, found: &mut Vec<Warning>) {
    let chosen = &choice.chosen;
    if let Some(get) = choice.get {
        let likely = if choice.remarks.contains(&Remark::LikelyThin) {
            let likely = print::percent(chosen.likely_engagement_percent);
            format!(", about {likely} at the size it is likely to cut")
        } else {
            ", more than a hand tap should be asked to cut".to_owned()
        };
        let text = format!(
            "No drill at hand will do: get {}. The nearest at hand, {}, would leave {}{likely}.",
            named(&get),
            chosen.drill.label,
            print::percent(chosen.engagement_percent),
        );
        say(found, Level::Caution, text);
    }
    match choice.largest_hole {
        None => say(
            found,
            Level::Note,
            "No standard limit is held for this thread's hole, so the drill is chosen by engagement alone.",
        ),
        Some(limit) if chosen.within_standard == Some(false) => {
            say(found, Level::Note, beyond(choice, &limit));
        }
        Some(_) => {}
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
            // Said above, and with the likely size.
            Remark::BeyondForEase | Remark::LikelyThin => {}
        }
    }
}

/// By how much the drill passes the standard's largest hole, and why it may.
fn beyond(choice: &DrillChoice, limit: &LargestHole) -> String {
    let drill = choice.chosen.drill;
    let by = print::mm(drill.diameter - limit.diameter, 3);
    let why = if choice.remarks.contains(&Remark::BeyondForEase) {
        "every drill at hand within it leaves over 83 %, which is hard on the tap"
    } else {
        "usual in small model work, outside the standard"
    };
    format!(
        "{} is {by} beyond the largest hole of {} ({}): {why}.",
        drill.label,
        limit.standard,
        print::mm(limit.diameter, 3)
    )
}

/// Why the drill is so far from the aim, and what that means at the tap.
fn far_from_aim(choice: &DrillChoice, by: f64) -> String {
    let aim = print::fixed(choice.aim_percent, 0);
    let left = print::percent(choice.chosen.engagement_percent);
    match choice.largest_hole {
        _ if by <= 0.0 => {
            format!("{left} is less than the {aim} % aimed for: some thread is given up.")
        }
        Some(limit) if choice.chosen.within_standard == Some(true) => format!(
            "{left} is more than the {aim} % aimed for: the largest hole of {} is {}, and the drill is held to it. The tap works harder.",
            limit.standard,
            print::mm(limit.diameter, 3)
        ),
        _ => format!("{left} is more than the {aim} % aimed for: the tap works harder."),
    }
}

pub(super) fn size(plan: &HolePlan<'_>, found: &mut Vec<Warning>) {
    let spec = plan.spec;
    if plan.tapping.remarks.contains(&Remark::LikelyThin) {
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

pub(super) fn depth(spec: &HoleSpec, depths: &Depths, found: &mut Vec<Warning>) {
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

/// What deeper drilling would gain.
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
