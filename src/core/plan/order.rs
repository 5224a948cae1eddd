//! The order of the steps: one part, two parts drilled together, or spotted through a master.
//!
//! # Source
//! Common practice, no source.

use std::borrow::Cow;

use super::drilling::{Metals, countersink_setting, hand_step, step};
use super::{Action, Clearance, Depths, Hole, HoleSpec, Operation, Over, Part, UpperHole, taps};
use crate::calc::depth;
use crate::calc::spotting;
use crate::calc::thread_form::Geometry;
use crate::tables::drills::Drill;
use crate::units::{Length, mm, print};

/// What the order is made from.
pub(super) struct Steps<'a> {
    pub(super) spec: &'a HoleSpec,
    pub(super) geometry: &'a Geometry,
    pub(super) tapping: &'static Drill,
    pub(super) clearance: &'a Clearance,
    pub(super) depths: &'a Depths,
}

/// A drill wider than this wants a pilot about as wide as its web. Common practice, no source.
const PILOT_FROM: Length = mm(8.0);

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
    let metals = Metals::one(steps.spec.material);
    let mut order = vec![
        hand_step(
            Action::MarkOut,
            Part::Lower,
            "scriber and dot punch",
            "Mark out from the datum and pop lightly. Check with dividers and a glass, draw the pop over if it is out, then pop to size.",
            "A centre can be moved while it is a dot; a hole cannot.",
        ),
        spot(Part::Lower),
    ];
    order.extend(pilot(steps, Part::Lower, metals, steps.depths.drill_full_diameter));
    order.push(drill_lower(steps, metals));
    order.extend(chamfer_and_tap(steps));
    order.push(try_screw(steps, Part::Lower));
    order
}

fn drilled_together(steps: &Steps<'_>, over: Over) -> Vec<Operation> {
    let spec = steps.spec;
    let metals = Metals::both(over.material, spec.material);
    let whole =
        steps.depths.drill_full_diameter.zip(over.thickness).map(|(lower, upper)| lower + upper);
    let mut order = vec![
        hand_step(
            Action::MarkOut,
            Part::Upper,
            "scriber and dot punch",
            "Mark out the upper part from its datum, pop lightly, and check the layout against the mating part before going further.",
            "One layout serves both parts, so it is checked once against the second.",
        ),
        spot(Part::Upper),
        register(),
    ];
    order.extend(pilot(steps, Part::Both, metals, whole));
    order.push(Operation {
        text: drilling_text(steps, metals, whole, "Drill through the upper part into the lower in one pass"),
        why: "The upper part is its own jig: the two holes share one axis. It stays at tapping size until the lower part is tapped.".into(),
        ..step(spec, Part::Both, steps.tapping, metals, whole)
    });
    order.push(hand_step(
        Action::Separate,
        Part::Both,
        "none",
        "Take the parts apart, keeping the witness marks.",
        "The lower part is tapped with nothing in the way.",
    ));
    order.push(hand_step(
        Action::Deburr,
        Part::Both,
        "scraper or large drill turned by hand, brush",
        "Deburr both joint faces and clear every chip out of the hole with a pick or brush.",
        "A burr holds the joint open; a chip under the tap breaks it.",
    ));
    order.extend(chamfer_and_tap(steps));
    order.push(open_out(steps, over));
    order.push(hand_step(
        Action::Chamfer,
        Part::Upper,
        "countersink",
        "Break both edges of the clearance hole lightly.",
        "The head seats flat and the joint closes.",
    ));
    order.push(try_screw(steps, Part::Both));
    order
}

fn spotted_through(steps: &Steps<'_>, over: Over) -> Vec<Operation> {
    let spec = steps.spec;
    let lower = Metals::one(spec.material);
    let mut order = vec![register()];
    let spotting = hand_step(
        Action::SpotThrough,
        Part::Lower,
        "transfer punch, or a drill that fits the clearance hole",
        "Through the upper part's clearance hole, mark the lower with a transfer punch or just the point of a drill that fits the hole closely.",
        "The upper part is the master; only a tool that fits its hole finds its centre.",
    );
    order.push(match steps.clearance.drill {
        Some(drill) => Operation {
            tool: Cow::Owned(format!(
                "transfer punch, or {} drill if it fits the hole closely",
                drill.label
            )),
            drill: Some(drill),
            diameter: Some(drill.diameter),
            depth: over.thickness,
            ..spotting
        },
        None => spotting,
    });
    order.push(hand_step(
        Action::Separate,
        Part::Both,
        "none",
        "Take the upper part off, keeping the witness marks.",
        "The smaller drill must not be led by the larger hole.",
    ));
    order.extend(pilot(steps, Part::Lower, lower, steps.depths.drill_full_diameter));
    order.push(drill_lower(steps, lower));
    order.extend(chamfer_and_tap(steps));
    order.push(try_screw(steps, Part::Both));
    order
}

fn spot(part: Part) -> Operation {
    hand_step(
        Action::Spot,
        part,
        "spotting drill, or a small centre drill",
        "Spot the pop mark just wide enough to take the web of the next drill, and look at it before drilling on.",
        "A short stiff drill starts where it is put; a long one wanders.",
    )
}

fn register() -> Operation {
    hand_step(
        Action::Register,
        Part::Both,
        "clamps, spigot or a bar through the bores",
        "Hold the two in register by a spigot, a bar through the bores or clamps, and witness-mark which way round they go. In a pattern: drill one hole, put a screw or pin in it, then the opposite one and pin that, then the rest.",
        "Parts that creep between holes never go together again; the witness mark brings them back the same way.",
    )
}

/// A pilot for a wide drill: the drill at hand nearest a quarter of its diameter.
fn pilot(
    steps: &Steps<'_>,
    part: Part,
    metals: Metals,
    depth: Option<Length>,
) -> Option<Operation> {
    let wide = steps.tapping.diameter;
    if wide < PILOT_FROM {
        return None;
    }
    let web = spotting::web(wide);
    let off = |drill: &Drill| (drill.diameter - web).value.abs();
    let drill = steps.spec.at_hand.drills().min_by(|a, b| off(a).total_cmp(&off(b)))?;
    if drill.diameter >= wide * 0.6 {
        return None;
    }
    Some(Operation {
        text: "Pilot to the same depth as the drill that follows; clear it often.".into(),
        why: "A pilot about as wide as the web takes the load off the drill's point.".into(),
        ..step(steps.spec, part, drill, metals, depth)
    })
}

fn drill_lower(steps: &Steps<'_>, metals: Metals) -> Operation {
    let depth = steps.depths.drill_full_diameter;
    Operation {
        text: drilling_text(steps, metals, depth, "Drill at tapping size"),
        why: match steps.spec.hole {
            Hole::Blind => "The stop leaves room for the tap's lead and one thread under the last full one.".into(),
            Hole::Through => "This size decides the thread: measure the hole if the drill is not known to cut to size.".into(),
        },
        ..step(steps.spec, Part::Lower, steps.tapping, metals, depth)
    }
}

fn drilling_text(
    steps: &Steps<'_>,
    metals: Metals,
    depth: Option<Length>,
    opening: &str,
) -> Cow<'static, str> {
    let stop = match (steps.spec.hole, depth) {
        (Hole::Blind, Some(depth)) => {
            format!("; set the stop to {} at the full diameter of the drill", print::mm(depth, 2))
        }
        (Hole::Blind, None) => {
            "; set the stop to the upper part's thickness more than the lower part's depth"
                .to_owned()
        }
        (Hole::Through, _) => "; ease off the feed as it breaks through".to_owned(),
    };
    let peck = peck_words(steps.tapping.diameter, metals, depth);
    let lips = if metals.grab() {
        " Dub the drill's lips (a small flat on each edge): this metal grabs."
    } else {
        ""
    };
    Cow::Owned(format!("{opening}{stop}.{peck}{lips}"))
}

/// When to withdraw and clear, where the hole is deep enough to need it.
fn peck_words(diameter: Length, metals: Metals, depth: Option<Length>) -> String {
    let peck = depth::peck(diameter, metals.group());
    if depth.is_some_and(|depth| depth <= peck.first) {
        return String::new();
    }
    let [first, then] = [peck.first, peck.then].map(|length| print::mm(length, 1));
    format!(" Clear the swarf after {first}, then every {then}.")
}

fn chamfer_and_tap(steps: &Steps<'_>) -> Vec<Operation> {
    let chamfer = spotting::chamfer(steps.geometry.major);
    let mut order = vec![Operation {
        diameter: Some(chamfer),
        speed: countersink_setting(steps.spec, Metals::one(steps.spec.material), chamfer),
        text: Cow::Owned(format!(
            "Chamfer the mouth to about {}, just over the major diameter.",
            print::mm(chamfer, 1)
        )),
        ..hand_step(
            Action::Chamfer,
            Part::Lower,
            "countersink, 90°",
            "",
            "Before tapping: it guides the tap in and keeps the first thread from being pulled up above the face.",
        )
    }];
    if steps.spec.hole == Hole::Blind && steps.spec.over.is_none() {
        order.push(hand_step(
            Action::Deburr,
            Part::Lower,
            "pick and brush",
            "Clear every chip out of the hole; never with an air line.",
            "A chip under the tap jams it short of the depth, or breaks it.",
        ));
    }
    order.extend(taps::operations(steps.spec, steps.geometry, steps.depths.full_thread));
    order
}

fn open_out(steps: &Steps<'_>, over: Over) -> Operation {
    let metals = Metals::one(over.material);
    let lips = if metals.grab() {
        " Dub the drill's lips and hold the part down: this metal grabs a drill that opens a hole."
    } else {
        ""
    };
    let text = Cow::Owned(format!(
        "Clamp the upper part on its own and open the hole to clearance.{lips}"
    ));
    let why = "Only now: at tapping size the upper part was the jig for the lower.".into();
    match steps.clearance.drill {
        Some(drill) => Operation {
            action: Action::OpenOut,
            text,
            why,
            ..step(steps.spec, Part::Upper, drill, metals, over.thickness)
        },
        None => Operation {
            diameter: Some(steps.clearance.hole.hole),
            depth: over.thickness,
            text,
            why,
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

fn try_screw(steps: &Steps<'_>, part: Part) -> Operation {
    let text = match steps.spec.over {
        Some(_) => {
            "Clean both parts, put them together by the witness marks and try the screw with the fingers."
        }
        None => {
            "Clean the hole and try the screw with the fingers; it should go to depth without shake."
        }
    };
    hand_step(
        Action::TryScrew,
        part,
        "the screw it is for",
        text,
        "A tight thread is eased while the set-up still stands.",
    )
}
