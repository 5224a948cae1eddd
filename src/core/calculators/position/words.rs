//! The sentences of the answer.

use super::fields::Found;
use crate::calc::position::{Case, Register, Remedy, hole_alike, largest_under_head, remedies};
use crate::units::{Length, print};

/// `M3 screw in 3.4 mm, centres 0.2 mm off`
pub(super) fn heading(found: &Found) -> String {
    let screw = match found.screw.thread {
        Some(thread) => format!("{} screw", thread.designation),
        None => format!("{} screw", print::mm(found.joint.screw, 3)),
    };
    let off = print::mm(found.joint.upper_error + found.joint.lower_error, 3);
    format!("{screw} in {}, centres {off} off in all", print::mm(found.joint.hole, 3))
}

/// Whether they go together.
pub(super) fn verdict(found: &Found) -> String {
    let position = &found.position;
    if position.goes_together {
        "yes, at the worst".to_owned()
    } else {
        format!("not at the worst: {} short", print::mm(position.off - position.room, 3))
    }
}

/// The drill with its size.
pub(super) fn drill(found: &Found) -> Option<String> {
    let drill = found.drill?;
    let size = print::mm(drill.diameter, 3);
    Some(if drill.label == size { size } else { format!("{} ({size})", drill.label) })
}

/// What the lean takes, where one was given.
pub(super) fn lean(found: &Found) -> Option<Length> {
    (found.joint.lean > Length::default()).then_some(found.joint.lean)
}

/// What to do, the cheapest first.
pub(super) fn what_to_do(found: &Found) -> Vec<String> {
    if found.position.goes_together {
        return Vec::new();
    }
    let offered = remedies(found.stage, found.duty);
    let mut said: Vec<String> = offered.iter().filter_map(|remedy| words(*remedy, found)).collect();
    if said.len() < offered.len() {
        said.insert(0, TOO_LARGE.to_owned());
    }
    said
}

/// Why the hole is not opened.
const TOO_LARGE: &str = "The hole that would do is too large for the screw's head to bear round it, so it is not opened so far.";

fn words(remedy: Remedy, found: &Found) -> Option<String> {
    let words = match remedy {
        Remedy::AskInspector => {
            "Stop. On a part under steam, water or pressure nothing is opened, filed or plugged before the club's boiler inspector has seen it: the national boiler code decides."
        }
        Remedy::MarkAgain => {
            "Pop it again where it belongs: a light dot, checked from both edges, then deepened. Stone the old dot flat, or the drill will find it."
        }
        Remedy::DrawOver => {
            "Draw it over while it is only a cone, narrower than the drill: cut a groove down the side it must move towards with a small round-nosed chisel, drill a touch more, look at the scribed circle, and again until it stands true. Clamp the work for it. Once the full diameter has entered, it cannot be drawn."
        }
        Remedy::Open => return open(found),
        Remedy::Elongate => {
            "File the clearance hole long, towards where it binds and no wider than it is; the head or a washer must cover it."
        }
        Remedy::Dowel => {
            "Open the screw holes, which then only hold, and let two dowels locate: clamp the parts where they belong, then drill and ream both holes through the two together."
        }
        Remedy::Plug => {
            "Last, plug it and drill again: tap the hole out, screw in a plug of the same metal with retaining compound, and face it off flush. Spot the new hole through its mate or with a slot drill, since a drill that meets plug and part together runs to the softer."
        }
    };
    Some(words.to_owned())
}

/// The clearance hole opened, or both of them; none that the screw's head would not cover.
fn open(found: &Found) -> Option<String> {
    let covered = |hole: &Length| *hole <= largest_under_head(found.joint.screw);
    let one = Some(found.position.hole_needed).filter(covered).map(|hole| {
        let with = drill(found).map_or_else(
            || "no drill at hand is right for it: bore or file it".to_owned(),
            |drill| format!("drill {drill}"),
        );
        format!("the clearance hole to {}, {with}", print::mm(hole, 3))
    });
    let both = match found.joint.case {
        Case::Fixed => None,
        Case::Floating { .. } => {
            let alike = Some(hole_alike(found.joint.screw, found.position.off)).filter(covered);
            alike.map(|hole| format!("both holes to {}", print::mm(hole, 3)))
        }
    };
    let holes: Vec<String> = one.into_iter().chain(both).collect();
    let open = (!holes.is_empty()).then(|| holes.join("; or "))?;
    Some(format!("Open {open}. If the head no longer bears all round, put a washer under it."))
}

/// What to see to when the parts are put together.
pub(super) fn notes(found: &Found) -> Vec<String> {
    let mut said = Vec::new();
    let goes = found.position.goes_together;
    match found.joint.register {
        Register::Pattern if goes => said.push(
            "Put all screws in loosely before any is tightened, and witness-mark which way round the part goes.",
        ),
        Register::Pattern => said.push(
            "The sum is for the worst case. The parts as they are may still go on in one of several ways round: try each before cutting, and mark the one that goes. That is no fault where it does not show.",
        ),
        Register::Located if goes => {
            said.push("Seat the parts against what locates them before the screw is tightened.");
        }
        Register::Located => said.push(
            "What locates the parts may be what is out: measure it too before the hole is touched.",
        ),
        Register::Free => said.push(
            "One hole alone, with nothing else to say where the parts lie, always meets its mate: only a lean can stop the screw.",
        ),
    }
    if found.joint.lean > Length::default() {
        said.push(
            "A leaning tapped hole bends its screw however large the clearance is: a spherical washer or a spotface square to the thread lets the head seat.",
        );
    }
    said.into_iter().map(str::to_owned).collect()
}
