//! Depths in the tapped part, and whether they fit it.

use super::{Depths, Error, Hole, HoleSpec};
use crate::calc::depth::{self, BlindHole, LastTap};
use crate::calc::thread_form::Geometry;
use crate::units::{Length, in_mm};

/// Without a depth, a blind thread is this many diameters long. Common practice, no source.
const USUAL_DIAMETERS: f64 = 1.5;
/// The least wall worth leaving under a blind hole, in drill diameters. Common practice, no source.
const LEAST_WALL: f64 = 0.5;

/// The length of thread the plan works with: as asked, or the usual one for a blind hole.
pub(super) fn thread_length(spec: &HoleSpec, geometry: &Geometry) -> Option<Length> {
    match (spec.depth, spec.hole) {
        (Some(depth), _) => Some(depth),
        (None, Hole::Blind) => Some(geometry.major * USUAL_DIAMETERS),
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
    Ok(Depths {
        full_thread,
        drill_full_diameter: full_diameter,
        drill_to_point: to_point,
        wall: wall(spec, &hole, full_thread, to_point)?,
        least_wall: drill * LEAST_WALL,
        tap_lead: blind.tap_lead,
        male_centre: blind.male_centre,
        swarf_room: blind.swarf_room,
        diameters: full_diameter.map(|depth| in_mm(depth + over) / in_mm(drill)),
    })
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
    let most = depth::most_full_thread(hole, part_thickness, hole.drill * LEAST_WALL)
        .filter(|most| *most >= hole.pitch);
    Err(Error::PartTooThin { asked, needed, part_thickness, most })
}
