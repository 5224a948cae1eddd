//! The sentences of the answer.

use super::fields::Found;
use crate::calc::blind_hole::{Change, InPart, TapEnd, Verdict, Way};
use crate::units::{Length, in_degrees, in_mm, mm, print};

/// `5 BA, 8 mm of full thread, blind`
pub(super) fn heading(found: &Found) -> String {
    let long = print::mm(found.question.full_thread, 2);
    let asked = format!("{}, {long} of full thread, blind", found.thread.designation);
    match &found.answer.in_part {
        None => asked,
        Some(part) => format!("{asked} in {}", print::mm(part.thickness, 2)),
    }
}

/// Whether it can be made, in a few words.
pub(super) fn verdict(found: &Found) -> Option<String> {
    let part = found.answer.in_part.as_ref()?;
    Some(match part.verdict {
        Verdict::Possible => "possible".to_owned(),
        Verdict::ThinWall => {
            format!("only just: the wall is thinner than {}", print::mm(found.answer.least_wall, 2))
        }
        Verdict::ComesThrough => format!("not possible: {}", comes_through(part.wall)),
    })
}

/// How far the drill comes through.
fn comes_through(wall: Length) -> String {
    format!("the drill comes through by {}", print::mm(-wall, 2))
}

/// What the male centre takes, where one was said to be there.
pub(super) fn for_centre(found: &Found) -> Option<Length> {
    (found.question.tap_end == TapEnd::MaleCentre).then_some(found.answer.for_centre)
}

/// The tapping drill with its size: `No. 36 (2.705 mm)`.
pub(super) fn drill(found: &Found) -> String {
    let size = print::mm(found.drill.size, 3);
    match found.drill.drill {
        Some(drill) if drill.label != size => format!("{} ({size})", drill.label),
        _ => size,
    }
}

/// What would make it possible.
pub(super) fn ways(found: &Found) -> Vec<String> {
    let Some(part) = &found.answer.in_part else { return Vec::new() };
    if part.verdict == Verdict::Possible {
        return Vec::new();
    }
    let mut ways: Vec<String> = part.ways.iter().map(way).collect();
    ways.push(fewer_threads(found, part));
    ways.push(
        "Drill right through, if the far side may be open: never into a port, a steam or water space, or anything else under pressure."
            .to_owned(),
    );
    ways
}

fn way(way: &Way) -> String {
    let what = match way.change {
        Change::PlugTap => "Run the plug (bottoming) tap down last".to_owned(),
        Change::GrindCentre => "Grind the male centre off the tap".to_owned(),
        Change::Point(angle) if in_degrees(angle) > 179.0 => {
            "Flatten the bottom with a D-bit, a slot drill or a drill ground flat".to_owned()
        }
        Change::Point(angle) => {
            format!("Drill with a point of {}°", print::trimmed(in_degrees(angle), 0))
        }
        Change::Together => "The plug tap with a flat end, in a hole with a flat bottom".to_owned(),
    };
    let left = if way.is_enough {
        format!("that leaves {} under it, which is enough", print::mm(way.wall, 2))
    } else if way.wall > mm(0.0) {
        format!("that leaves {}, which is still thin", print::mm(way.wall, 2))
    } else {
        format!("still {}", comes_through(way.wall))
    };
    format!("{what}: {left}.")
}

/// A shorter thread, and with it a shorter screw.
fn fewer_threads(found: &Found, part: &InPart) -> String {
    let best = part.ways.iter().filter_map(|way| way.most_full_thread);
    let best = best.max_by(|a, b| in_mm(*a).total_cmp(&in_mm(*b)));
    match (part.most_full_thread, best) {
        (Some(most), _) => {
            let shorter = print::mm(rounded_up(found.question.full_thread - most), 2);
            format!(
                "Be content with {} with these tools, and shorten the screw by {shorter}; or take a finer thread.",
                of_thread(found, most)
            )
        }
        (None, Some(most)) => format!(
            "With these tools it holds no full thread; with the best of the changes above, {}. A smaller or a finer thread needs less.",
            of_thread(found, most)
        ),
        (None, None) => {
            "With any tap and drill it holds no full thread: take a smaller or a finer thread, or thicken the part."
                .to_owned()
        }
    }
}

/// `4.2 mm of full thread (7 threads)`, both rounded down: what is offered must be possible.
fn of_thread(found: &Found, most: Length) -> String {
    let threads = (in_mm(most) / in_mm(found.question.hole.pitch)).floor();
    let length = mm((in_mm(most) * 100.0).floor() / 100.0);
    let turns = if threads < 2.0 { "turn" } else { "turns" };
    format!("{} of full thread ({} {turns})", print::mm(length, 2), print::trimmed(threads, 0))
}

/// To whole hundredths of a millimetre, upwards.
fn rounded_up(length: Length) -> Length {
    mm((in_mm(length) * 100.0).ceil() / 100.0)
}

/// What to see to with any stopped hole.
pub(super) fn before_tapping(found: &Found) -> Vec<String> {
    let mut said = vec![
        "Set the depth stop with the tip of the drill just touching the face, for the depth to the point; with its full diameter level with the face, for the other."
            .to_owned(),
        "Lift the swarf out with a pick, a dab of grease on a wire, or a rinse, and tap again. No air line: the chips come back into the eyes."
            .to_owned(),
    ];
    if let (Some(centre), TapEnd::Flat) = (found.answer.depths.male_centre, found.question.tap_end)
    {
        said.push(format!(
            "Look at the end of the tap: a male centre still on it wants up to {} more.",
            print::mm(centre, 2)
        ));
    }
    if found.answer.in_part.is_some() {
        said.push(
            "A wall that stands against steam, water or pressure is no matter of this sum: the drawing, the national boiler code and the club's inspector say how thick it must be."
                .to_owned(),
        );
    }
    said
}
