//! Which taps go down the hole, in which order, and how often to back off.

use std::borrow::Cow;

use super::question::Steps;
use super::{Action, Hole, HoleSpec, Operation, Part, Tap, TapSteel, depths, drilling};
use crate::calc::depth::LastTap;
use crate::calc::thread_form::Geometry;
use crate::tables::materials::Group;
use crate::tables::threads::read::Hand;
use crate::units::{Length, in_mm, print};

/// The taps to run down, in order. Common practice, no source.
///
/// A through hole up to 1.5 diameters long in a metal that cuts freely wants the taper tap alone;
/// a longer or tougher one the second after it; a blind hole all three.
fn sequence(
    spec: &HoleSpec,
    geometry: &Geometry,
    thread_length: Option<Length>,
) -> &'static [LastTap] {
    use LastTap::{Plug, Second, Taper};
    let long = thread_length.is_some_and(|length| in_mm(length) > 1.5 * in_mm(geometry.major));
    let hard_going = long || spec.material.group == Group::Tough;
    match (spec.hole, depths::last_tap(spec)) {
        (Hole::Through, Taper) if hard_going && spec.finish.is_none() => &[Taper, Second],
        (_, Taper) => &[Taper],
        (_, Second) => &[Taper, Second],
        (_, Plug) => &[Taper, Second, Plug],
    }
}

/// The tapping operations.
pub(super) fn operations(steps: &Steps<'_>) -> Vec<Operation> {
    let Steps { spec, geometry, .. } = *steps;
    let thread_length = steps.depths.full_thread;
    match spec.tap {
        Tap::Hand => sequence(spec, geometry, thread_length)
            .iter()
            .enumerate()
            .map(|(turn, &tap)| by_hand(steps, tap, turn))
            .collect(),
        Tap::Machine => vec![by_machine(spec, geometry, thread_length)],
        Tap::Forming => vec![by_forming(spec, thread_length)],
    }
}

fn tap_name(spec: &HoleSpec, kind: &str) -> Cow<'static, str> {
    let hand = match spec.hand {
        Hand::Right => "",
        Hand::Left => " left-hand",
    };
    let steel = match spec.tap_steel {
        TapSteel::HighSpeed => "",
        TapSteel::Carbon => ", carbon steel",
    };
    Cow::Owned(format!("{}{hand} {kind}{steel}", spec.thread.designation))
}

/// The tap of a taper thread, by hand.
pub(super) fn taper(spec: &HoleSpec) -> Operation {
    tapping(spec, tap_name(spec, "tap"), None)
}

/// How often to turn back; of clearing a blind hole nothing where it goes through.
pub(super) fn back_off(spec: &HoleSpec) -> Cow<'static, str> {
    let text = spec.material.back_off.text;
    let in_blind = text.split_once(", and clear").filter(|(_, rest)| rest.contains("blind hole"));
    match (spec.hole, in_blind) {
        (Hole::Through, Some((turned, _))) => Cow::Owned(format!("{turned}.")),
        _ => Cow::Borrowed(text),
    }
}

fn tapping(spec: &HoleSpec, tool: Cow<'static, str>, depth: Option<Length>) -> Operation {
    Operation {
        action: Action::Tap,
        part: Part::Lower,
        tool,
        drill: None,
        diameter: None,
        depth,
        speed: None,
        feed: None,
        lubricant: Some(spec.material.on_the_tap().text),
        text: Cow::Borrowed(""),
        why: Cow::Borrowed(""),
        stop: None,
        tip: None,
        lips: None,
        cautions: Vec::new(),
    }
}

/// How far the end of a tap goes: its lead beyond the full thread, in a blind hole no further than the
/// drill left room for.
fn tip(steps: &Steps<'_>, tap: LastTap) -> Option<Length> {
    let lead = steps.geometry.pitch * tap.lead().most;
    let wanted = steps.depths.full_thread? + lead;
    let bottom = match steps.spec.hole {
        Hole::Blind => steps.depths.drill_full_diameter,
        Hole::Through => None,
    };
    let bottom = steps.depths.stop.into_iter().chain(bottom).fold(wanted, Length::min);
    Some(bottom)
}

fn by_hand(steps: &Steps<'_>, tap: LastTap, turn: usize) -> Operation {
    let spec = steps.spec;
    let (kind, why) = match tap {
        LastTap::Taper => {
            ("taper tap", "Its long lead starts square and shares the cut over many teeth.")
        }
        LastTap::Second => {
            ("second tap", "It carries the full thread further down than the taper tap can.")
        }
        LastTap::Plug => ("plug tap", "It brings full thread nearly to the bottom of the hole."),
    };
    let cut = if turn == 0 {
        format!(
            "Start it square, guided by the chuck turned by hand or a guide block, and check with a small square after two turns. {}",
            back_off(spec)
        )
    } else {
        "Clear the swarf, pick up the thread with the fingers, then turn and back off as before."
            .to_owned()
    };
    let end = match spec.hole {
        // The plug tap is full thread to its end: at the depth there is no need of the bottom.
        Hole::Blind if tap == LastTap::Plug => {
            " Stop at the depth, or sooner if it touches; never force it down."
        }
        Hole::Blind => " Stop when it touches; never force it down.",
        Hole::Through => {
            " Run it on until the whole of its lead is through, with room below for it."
        }
    };
    Operation {
        text: Cow::Owned(format!("{cut}{end}")),
        why: Cow::Borrowed(why),
        tip: tip(steps, tap),
        ..tapping(spec, tap_name(spec, kind), None)
    }
}

fn by_machine(spec: &HoleSpec, geometry: &Geometry, thread_length: Option<Length>) -> Operation {
    let (kind, text) = match spec.hole {
        Hole::Through => (
            "spiral-point machine tap",
            "One pass, until the whole of its lead is through: it pushes the swarf on ahead. Use a reversing or floating holder.",
        ),
        Hole::Blind => (
            "spiral-flute machine tap",
            "It draws the swarf out. Set the reverse well short of the bottom; use a floating holder.",
        ),
    };
    Operation {
        speed: drilling::tap_setting(spec, geometry.major),
        feed: Some(geometry.pitch),
        text: Cow::Borrowed(text),
        why: Cow::Owned(format!(
            "The feed is the pitch, {} a turn, and the tap sets it.",
            print::mm(geometry.pitch, 4)
        )),
        ..tapping(spec, tap_name(spec, kind), thread_length)
    }
}

fn by_forming(spec: &HoleSpec, thread_length: Option<Length>) -> Operation {
    Operation {
        lubricant: Some("Cutting oil or tapping compound, and plenty of it."),
        text: Cow::Borrowed(
            "Start it square and turn it steadily; there are no chips to break, so do not back off.",
        ),
        why: Cow::Borrowed(
            "It pushes the metal into the thread, and takes two to three times the torque of a cutting tap.",
        ),
        ..tapping(spec, tap_name(spec, "forming tap"), thread_length)
    }
}
