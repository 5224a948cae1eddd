//! The steps after the drill: chamfers, burrs, the seat of the head, the screw, the next hole.
//!
//! # Source
//! Common practice, no source.

use std::borrow::Cow;

use super::drilling::{Metals, countersink_setting, hand_step};
use super::hold::{self, Mouth};
use super::question::Steps;
use super::{Action, Head, Hole, Operation, Part};
use crate::tables::threads::Form;
use crate::units::{Length, print};

/// The mouth that the tap goes into, and in a through hole the one it comes out of.
pub(super) fn chamfers(steps: &Steps<'_>) -> Vec<Operation> {
    let (near, far) = match hold::mouth(steps) {
        Mouth::Chamfer(wide) => chamfered(steps, wide),
        Mouth::Edge => edges_broken(),
    };
    let far_side = (steps.spec.hole == Hole::Through).then_some(far);
    std::iter::once(near).chain(far_side).collect()
}

fn chamfered(steps: &Steps<'_>, wide: Length) -> (Operation, Operation) {
    let size = print::mm(wide, 1);
    let cut = |text: String, why: &'static str| Operation {
        diameter: Some(wide),
        speed: countersink_setting(steps.spec, Metals::one(steps.spec.material), wide),
        text: Cow::Owned(text),
        ..hand_step(Action::Chamfer, Part::Lower, "countersink, 90°", "", why)
    };
    let near = cut(
        format!(
            "Chamfer the mouth to about {size}, just over the major diameter; if it chatters, turn the countersink by hand."
        ),
        "Before tapping: it guides the tap in and keeps the first thread from being pulled up above the face.",
    );
    let far = cut(
        format!("Turn the part over and chamfer the far side to about {size} too."),
        "The drill left a burr there, and the last thread would be pushed out beyond the face.",
    );
    (near, far)
}

/// Where a chamfer would take away threads that are wanted.
fn edges_broken() -> (Operation, Operation) {
    let cut = |text: &'static str, why: &'static str| {
        hand_step(Action::Chamfer, Part::Lower, "countersink turned by hand", text, why)
    };
    (
        cut(
            "Only break the edge of the mouth; cut no chamfer.",
            "There is little thread here, and a chamfer to the major diameter would take some of it away.",
        ),
        cut(
            "Turn the part over and only break the edge of the far side too.",
            "The burr must go, and no more: what a chamfer takes, the thread loses.",
        ),
    )
}

/// Chips out of a blind hole before the tap.
pub(super) fn clear_chips() -> Operation {
    hand_step(
        Action::Deburr,
        Part::Lower,
        "pick and brush",
        "Clear every chip out of the hole.",
        "A chip under the tap jams it short of the depth, or breaks it.",
    )
}

/// Each part after the two were drilled together.
pub(super) fn deburr_each() -> [Operation; 2] {
    let of = |part, text, why| {
        hand_step(Action::Deburr, part, "scraper or large drill turned by hand, brush", text, why)
    };
    [
        of(
            Part::Upper,
            "Scrape the burr off the joint face and the far mouth of the upper part.",
            "A burr holds the joint open.",
        ),
        of(
            Part::Lower,
            "Scrape the burr off the joint face of the lower part and clear every chip out of the hole.",
            "A burr holds the joint open; a chip under the tap breaks it.",
        ),
    ]
}

/// The clearance hole's edges; the mouth that a seat was cut in has none left.
pub(super) fn break_edges(steps: &Steps<'_>) -> Operation {
    let (text, why) = match steps.spec.head {
        Some(Head::Countersunk | Head::Cheese) => (
            "Break the edge of the clearance hole lightly, on the joint face alone.",
            "The joint closes; the head's side was cut with its seat.",
        ),
        Some(Head::Hexagon) | None => (
            "Break both edges of the clearance hole lightly.",
            "The head seats flat and the joint closes.",
        ),
    };
    hand_step(Action::Chamfer, Part::Upper, "countersink", text, why)
}

/// The seat of the head in the upper part, where one is asked for.
pub(super) fn seat(steps: &Steps<'_>) -> Option<Operation> {
    let (tool, text, why) = match steps.spec.head? {
        Head::Countersunk => (
            // Both from memory: British and metric heads 90°, Unified ones 82°.
            match steps.spec.thread.form() {
                Form::Unified => "countersink, 82°, as the head is",
                _ => "countersink, 90°, as the head is",
            },
            "Countersink at the slowest speed that cuts clean. Stop short, try the screw, and creep up until the head lies flush.",
            "The clearance hole guides the countersink's nose; cut first, it would have nothing to follow.",
        ),
        Head::Cheese => (
            "counterbore with a pilot that fits the clearance hole",
            "Measure the head. Counterbore a little wider than it and as deep as it is high, at a slow speed.",
            "The pilot keeps the seat square to the hole and on its centre.",
        ),
        Head::Hexagon => (
            "spotface or counterbore with a pilot that fits the clearance hole",
            "Where the face is rough, cast or not square, spotface it just wider than the corners of the head, or its washer, and only until it cleans up all round.",
            "A head that bears on one corner bends the screw.",
        ),
    };
    Some(hand_step(Action::Seat, Part::Upper, tool, text, why))
}

pub(super) fn try_screw(steps: &Steps<'_>, part: Part) -> Operation {
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

/// How a pattern goes on from the first hole.
pub(super) fn next_hole() -> Operation {
    hand_step(
        Action::NextHole,
        Part::Both,
        "the first screw",
        "In a pattern, leave this screw in, tight, before the next hole is drilled: take the opposite one second, screw that too, then the rest.",
        "Parts that creep between holes never go together again.",
    )
}
