//! What to watch for in the hole: the drill that was chosen, the size it cuts, the part it goes through.

use super::{Found, Place, say};
use crate::calc::clearance;
use crate::calc::limits::LargestHole;
use crate::calc::tapping::{Candidate, DrillChoice, Remark};
use crate::plan::{Action, Head, HolePlan, Level, Part, UpperHole, Warning};
use crate::units::{exceeds, in_mm, mm, print};

/// Below this as measured the thread is doubtful, percent.
pub(super) const THIN_THREAD: f64 = 45.0;

/// More thread than this is hard on a hand tap, percent. Common practice, no source.
const HARD: f64 = 83.0;

/// What must be left under a head that is let in, of the screw's diameter. Common practice, no source.
const LEFT_UNDER_A_HEAD: f64 = 0.25;

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
        let text =
            format!("No drill at hand will do: get {}. {}", named(&get), choice.nearest_in_words());
        say(found, Level::Caution, text);
        // The rest is of a drill that is not used.
        return;
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
    let is_hard = chosen.engagement_percent > HARD;
    let is_far = choice.is_far_from_aim();
    let better = choice.remarks.iter().find_map(|remark| match remark {
        Remark::BetterElsewhere(better) => Some(better),
        _ => None,
    });
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
            Remark::FarFromAim { by } => {
                // Hard on the tap: what the person must know before the first cut.
                let level = if is_hard { Level::Caution } else { Level::Note };
                say(found, level, far_from_aim(choice, by, better));
            }
            Remark::BetterElsewhere(better) if !is_far => say(
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
            // Said with how far the drill is from the aim.
            Remark::BetterElsewhere(_) => {}
            // Said above, and with the likely size.
            Remark::BeyondForEase | Remark::LikelyThin | Remark::HeldByLikely { .. } => {}
        }
    }
}

/// By how much the drill passes the standard's largest hole, and why it may.
fn beyond(choice: &DrillChoice, limit: &LargestHole) -> String {
    let drill = choice.chosen.drill;
    // Of the figures as they are printed, so that the difference is theirs.
    let [size, largest] =
        [drill.diameter, limit.diameter].map(|length| print::round(in_mm(length), 3));
    let by = print::mm(mm(size - largest), 3);
    let why = if choice.is_beyond_by_need() {
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

/// Why the drill is so far from the aim, what that means at the tap, and what would do better.
fn far_from_aim(choice: &DrillChoice, by: f64, better: Option<&Candidate>) -> String {
    let aim = print::fixed(choice.aim_percent, 0);
    let left = print::percent(choice.chosen.engagement_percent);
    let get = better.map_or_else(String::new, |better| format!(" Better: get {}.", named(better)));
    let more = match choice.largest_hole {
        _ if by <= 0.0 => {
            return format!(
                "{left} is less than the {aim} % aimed for: some thread is given up.{get}"
            );
        }
        _ if choice.is_beyond_by_need() => {
            "what keeps to the standard is too tight, and this lies beyond it. The tap works harder"
                .to_owned()
        }
        _ if better.is_none() && choice.least_likely_percent().is_some() => {
            "a larger drill is likely to leave too little. The tap works harder".to_owned()
        }
        Some(limit) if better.is_none() && choice.chosen.within_standard == Some(true) => format!(
            "{} allows no hole over {}. The tap works harder",
            limit.standard,
            print::mm(limit.diameter, 3)
        ),
        _ => "the tap works harder".to_owned(),
    };
    format!("{left} is more than the {aim} % aimed for: {more}.{get}")
}

/// What bites at the drill: a hole that comes out large, or closes in, or lies where two parts part.
pub(super) fn cautions(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    if plan.tapping.get.is_none() && plan.tapping.remarks.contains(&Remark::LikelyThin) {
        found.say(
            Place::Drilling,
            Level::Caution,
            format!(
                "If the drill cuts as large as drills usually do (about {}), only about {} % of thread is left: measure a trial hole first.",
                print::mm(plan.hole.likely, 2),
                print::fixed(plan.hole.likely_engagement_percent, 0)
            ),
        );
    }
    if spec.material.closes_in {
        found.say(
            Place::Drilling,
            Level::Note,
            format!(
                "{} closes in behind the drill: drill and tap a trial hole in scrap first.",
                print::sentence(spec.material.name)
            ),
        );
    }
    centres(plan, found);
    upper(plan, found);
    let_in(plan, found);
}

/// Whether the float of the screw takes up what two marked-out centres may be off.
fn centres(plan: &HolePlan<'_>, found: &mut Found) {
    let spec = plan.spec;
    // Two parts that are drilled together, or one through the other, share their centres.
    let (Some(error), None) = (spec.centre_error, spec.over) else { return };
    let wanted = clearance::hole_for_errors(plan.geometry.major, error, error);
    let fit = plan.clearance.drill.map_or(plan.clearance.hole.hole, |drill| drill.diameter);
    let (off, wanted_words) = (print::mm(error, 2), print::mm(wanted, 2));
    let fit_words = print::mm(fit, 2);
    let (level, text) = if fit < wanted {
        (
            Level::Caution,
            format!(
                "With this centre and its mate each up to {off} off, the mate wants {wanted_words} to pass the screw, more than the {fit_words} of the {} fit: open it out, or drill the two together.",
                spec.fit
            ),
        )
    } else {
        (
            Level::Note,
            format!(
                "With this centre and its mate each up to {off} off, the {fit_words} of the {} fit still passes the screw: {wanted_words} would.",
                spec.fit
            ),
        )
    };
    found.say(Place::At(Action::MarkOut, Part::Lower), level, text);
}

/// A head that is let in further than its part is thick. Heights are common practice, no source.
fn let_in(plan: &HolePlan<'_>, found: &mut Found) {
    let Some((head, thickness)) =
        plan.spec.head.zip(plan.spec.over.and_then(|over| over.thickness))
    else {
        return;
    };
    let (named, high) = match head {
        Head::Cheese => ("A cheese head", 0.7),
        Head::Countersunk => ("A countersunk head", 0.5),
        // It lies on the face.
        Head::Hexagon => return,
    };
    let high = plan.geometry.major * high;
    if exceeds(thickness, high + plan.geometry.major * LEFT_UNDER_A_HEAD) {
        return;
    }
    found.say(
        Place::At(Action::Seat, Part::Upper),
        Level::Caution,
        format!(
            "{named} of this size is about {} high, and the part {}: let in, it leaves too little to hold by. Leave it proud, or take a thicker part or a smaller screw.",
            print::mm(high, 1),
            print::mm(thickness, 1)
        ),
    );
}

fn upper(plan: &HolePlan<'_>, found: &mut Found) {
    let Some(over) = plan.spec.over else { return };
    if plan.clearance.drill.is_none() {
        let place = match over.hole {
            UpperHole::Tapping => Place::At(Action::OpenOut, Part::Upper),
            UpperHole::Clearance => Place::At(Action::SpotThrough, Part::Lower),
        };
        found.say(
            place,
            Level::Caution,
            format!(
                "No drill at hand is right for the screw to pass: the hole wants {} or a little over.",
                print::mm(plan.clearance.hole.hole, 3)
            ),
        );
    }
    let thick = over
        .thickness
        .is_some_and(|thickness| thickness > plan.tapping.planned().drill.diameter * 4.0);
    if over.hole == UpperHole::Tapping && thick {
        found.say(
            Place::At(Action::Register, Part::Both),
            Level::Caution,
            "The upper part is over four drill diameters thick: the tapping drill may wander in it. Think of drilling it to clearance first and spotting the lower part through it.",
        );
    }
}
