//! Depths in the tapped part, and whether they fit it.

use super::{Depths, Error, Hole, HoleSpec, Scale};
use crate::calc::depth::{self, BlindHole, LastTap, Peck};
use crate::calc::thread_form::Geometry;
use crate::units::{Length, in_inch, in_mm, inch, mm, print};

/// The length of thread the plan works with: as asked, or the usual one for a blind hole.
pub(super) fn thread_length(spec: &HoleSpec, geometry: &Geometry) -> Option<Length> {
    match (spec.depth, spec.hole) {
        (Some(depth), _) => Some(depth),
        (None, Hole::Blind) => Some(depth::usual_length(geometry.major)),
        (None, Hole::Through) => None,
    }
}

/// The last tap run down: as asked, or plug in a blind hole and taper in a through one.
pub(super) fn last_tap(spec: &HoleSpec) -> LastTap {
    spec.finish.unwrap_or(match spec.hole {
        Hole::Blind => LastTap::Plug,
        Hole::Through => LastTap::Taper,
    })
}

/// Works out the depths for a hole of this diameter.
///
/// # Errors
/// [`Error::PartTooThin`] where a blind hole would break through.
pub(super) fn depths(spec: &HoleSpec, geometry: &Geometry, drill: Length) -> Result<Depths, Error> {
    let hole = BlindHole {
        major: geometry.major,
        pitch: geometry.pitch,
        drill,
        point_angle: spec.point_angle,
        last_tap: last_tap(spec),
    };
    let full_thread = thread_length(spec, geometry);
    let blind = depth::blind(&hole, full_thread.unwrap_or_default());
    let full_diameter = full_thread.map(|length| match spec.hole {
        Hole::Blind => blind.drill_full_diameter,
        Hole::Through => length,
    });
    let to_point = full_diameter.map(|depth| depth + blind.point);
    let over = spec.over.and_then(|over| over.thickness).unwrap_or_default();
    let wall = wall(spec, &hole, full_thread, to_point)?;
    let least_wall = depth::least_wall(drill);
    let blind_depth = full_diameter.filter(|_| spec.hole == Hole::Blind);
    let up = blind_depth.map(|depth| settable(depth, spec.scale, false));
    let cost = up.zip(blind_depth).map_or(Length::default(), |(up, exact)| up - exact);
    let stop_is_short = wall.is_some_and(|wall| wall - cost < least_wall);
    Ok(Depths {
        full_thread,
        drill_full_diameter: full_diameter,
        stop: blind_depth.map(|depth| settable(depth, spec.scale, stop_is_short)),
        stop_is_short,
        drill_to_point: to_point,
        wall,
        least_wall,
        tap_lead: blind.tap_lead,
        male_centre: blind.male_centre,
        swarf_room: blind.swarf_room,
        diameters: full_diameter.map(|depth| in_mm(depth + over) / in_mm(drill)),
    })
}

/// A step of the scale that a depth stop is set by: 0.1 mm, or 5 thou.
const fn step(scale: Scale) -> Length {
    match scale {
        Scale::Metric => mm(0.1),
        Scale::Inch => inch(0.005),
    }
}

/// A depth as a stop is set: up to the next step, or down where it would eat into the wall.
pub(super) fn settable(exact: Length, scale: Scale, is_short: bool) -> Length {
    /// A depth nearer than this to a step is that step, in steps.
    const ON_A_STEP: f64 = 0.001;
    let steps = in_mm(exact) / in_mm(step(scale));
    let whole = if is_short { (steps + ON_A_STEP).floor() } else { (steps - ON_A_STEP).ceil() };
    match scale {
        Scale::Metric => mm(whole / 10.0),
        Scale::Inch => inch(whole / 200.0),
    }
}

/// A stop in the unit it is set in: `9.8 mm`, `0.385 in`.
pub(super) fn as_set(stop: Length, scale: Scale) -> String {
    match scale {
        Scale::Metric => print::mm(stop, 1),
        Scale::Inch => print::inch(stop, 3),
    }
}

/// Which way the stop was rounded, and why that way; none where it was not.
pub(super) fn rounding(exact: Length, stop: Length, scale: Scale) -> Option<String> {
    let exact_words = match scale {
        Scale::Metric => print::mm(exact, 2),
        Scale::Inch => print::inch(exact, 4),
    };
    let off = in_inch(stop - exact);
    if off > 0.000_01 {
        Some(format!("The sum is {exact_words}: rounded up, so that the thread has its room."))
    } else if off < -0.000_01 {
        Some(format!("The sum is {exact_words}: rounded down, to spare the wall under the point."))
    } else {
        None
    }
}

/// What deeper drilling would gain.
pub(super) fn metal_to_spare(depths: &Depths) -> String {
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

/// The wall under a blind hole, where the part's thickness is known.
fn wall(
    spec: &HoleSpec,
    hole: &BlindHole,
    full_thread: Option<Length>,
    to_point: Option<Length>,
) -> Result<Option<Length>, Error> {
    let (Hole::Blind, Some(part_thickness), Some(asked), Some(needed)) =
        (spec.hole, spec.part_thickness, full_thread, to_point)
    else {
        return Ok(None);
    };
    if needed < part_thickness {
        return Ok(Some(depth::wall(part_thickness, needed)));
    }
    let most = depth::most_full_thread(hole, part_thickness, depth::least_wall(hole.drill))
        .filter(|most| *most >= hole.pitch);
    Err(Error::PartTooThin { asked, needed, part_thickness, most })
}

/// When to withdraw and clear, where the hole is deep enough to need it.
pub(super) fn pecks(scale: Scale, peck: &Peck, depth: Option<Length>) -> String {
    // Half a step more is drilled in one go.
    if depth.is_some_and(|depth| depth <= peck.first + peck.then * 0.5) {
        return String::new();
    }
    let [first, then] = [peck.first, peck.then].map(|length| as_set(length, scale));
    format!(" Clear the swarf after {first}, then every {then}.")
}
