//! Whether a blind tapped hole can be made in its part, and what would make it possible.
//!
//! The depths are [`depth`]'s, the same as a plan's; here they are judged against the part, with the
//! tap's pointed end counted in or out. Leaves out which drill, and what the metal asks of it.

use crate::calc::depth::{self, BlindDepths, BlindHole, LastTap};
use crate::units::{Angle, Length, SAME_LENGTH, degrees, falls_short, in_degrees, mm};

/// The end of the last tap.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum TapEnd {
    /// Flat, or its point ground off.
    #[default]
    Flat,
    /// A male centre stands out of it, as on most taps up to 3/8 in.
    MaleCentre,
}

/// One blind hole, as asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Question {
    /// The thread and the tools.
    pub hole: BlindHole,
    /// The end of the last tap.
    pub tap_end: TapEnd,
    /// Full thread wanted.
    pub full_thread: Length,
    /// Thickness of the part, where known.
    pub part_thickness: Option<Length>,
}

/// Its depths, and what the part makes of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The parts of the depth.
    pub depths: BlindDepths,
    /// Part: what the male centre of this tap takes; nothing where its end is flat.
    pub for_centre: Length,
    /// From the surface: to the end of the drill's full diameter, the male centre counted.
    pub full_diameter: Length,
    /// From the surface: to the tip of the drill's point, likewise.
    pub to_point: Length,
    /// The least wall worth leaving under the point.
    pub least_wall: Length,
    /// How it stands in the part, where its thickness is known.
    pub in_part: Option<InPart>,
}

/// A blind hole in a part of known thickness.
#[derive(Clone, Debug, PartialEq)]
pub struct InPart {
    /// Its thickness.
    pub thickness: Length,
    /// Metal left under the point. Negative: the drill comes through.
    pub wall: Length,
    /// Whether it can be made.
    pub verdict: Verdict,
    /// The most full thread with these tools that leaves the least wall; none where there is none.
    pub most_full_thread: Option<Length>,
    /// What would make it possible, the cheapest first; empty where it is possible.
    pub ways: Vec<Way>,
}

/// Whether a hole can be made blind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// With the least wall or more left.
    Possible,
    /// With less wall than is worth leaving.
    ThinWall,
    /// The drill comes through.
    ComesThrough,
}

/// A change that gains depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// The plug tap run down last.
    PlugTap,
    /// The male centre ground off the tap.
    GrindCentre,
    /// A drill of this point angle; 180° is flat.
    Point(Angle),
    /// All of these together, with a flat bottom.
    Together,
}

/// A change, and what it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// What is changed.
    pub change: Change,
    /// Metal left under the point then. Negative: the drill still comes through.
    pub wall: Length,
    /// It leaves the least wall or more by itself.
    pub is_enough: bool,
    /// The most full thread then; none where there is none.
    pub most_full_thread: Option<Length>,
}

/// The point angle of the drills sold for tough metal.
fn split_point() -> Angle {
    degrees(135.0)
}

/// The point angle of a flat-bottomed hole: a D-bit, a slot drill, or a drill ground flat.
fn flat() -> Angle {
    degrees(180.0)
}

/// The depths of a blind hole and whether its part holds it.
///
/// # Source
/// Depth: thread, tap chamfer and one pitch (an engineering institute's tip 'Minimum tap depth'); a tap
/// maker adds the length of the male centre. The least wall is common practice, no source.
///
/// # Examples
/// 3/16 in of 2 BA thread in a hole 3/16 in deep cannot be made, with any tap.
/// ```
/// use holewright_core::calc::blind_hole::{Question, TapEnd, Verdict, answer};
/// use holewright_core::calc::depth::{BlindHole, LastTap, usual_point_angle};
/// use holewright_core::units::{inch, mm};
/// let hole = BlindHole {
///     major: mm(4.7),
///     pitch: mm(0.81),
///     drill: mm(4.0),
///     point_angle: usual_point_angle(),
///     last_tap: LastTap::Plug,
/// };
/// let asked = Question {
///     hole,
///     tap_end: TapEnd::Flat,
///     full_thread: inch(0.1875),
///     part_thickness: Some(inch(0.1875)),
/// };
/// assert_eq!(answer(&asked).in_part.unwrap().verdict, Verdict::ComesThrough);
/// ```
#[must_use]
pub fn answer(asked: &Question) -> Answer {
    let depths = depth::blind(&asked.hole, asked.full_thread);
    let for_centre = match asked.tap_end {
        TapEnd::Flat => mm(0.0),
        TapEnd::MaleCentre => asked.hole.major / 2.0,
    };
    let to_point = depths.drill_to_point + for_centre;
    let least_wall = depth::least_wall(asked.hole.drill);
    Answer {
        full_diameter: depths.drill_full_diameter + for_centre,
        to_point,
        least_wall,
        depths,
        for_centre,
        in_part: asked.part_thickness.map(|thickness| {
            let wall = depth::wall(thickness, to_point);
            let verdict = verdict(wall, least_wall);
            InPart {
                thickness,
                wall,
                verdict,
                most_full_thread: most_full_thread(asked, thickness),
                ways: if verdict == Verdict::Possible {
                    Vec::new()
                } else {
                    ways(asked, thickness)
                },
            }
        }),
    }
}

fn verdict(wall: Length, least_wall: Length) -> Verdict {
    if wall + SAME_LENGTH >= least_wall {
        Verdict::Possible
    } else if wall > SAME_LENGTH {
        Verdict::ThinWall
    } else {
        Verdict::ComesThrough
    }
}

/// The most full thread with the least wall left, if that is a turn or more.
fn most_full_thread(asked: &Question, thickness: Length) -> Option<Length> {
    let bare = Question { full_thread: mm(0.0), part_thickness: None, ..*asked };
    let most = thickness - depth::least_wall(asked.hole.drill) - answer(&bare).to_point;
    (most >= asked.hole.pitch).then_some(most)
}

/// The changes that gain something here, the cheapest first; all of them together last, where no one
/// of them is enough and together they gain more.
fn ways(asked: &Question, thickness: Length) -> Vec<Way> {
    let angle = in_degrees(asked.hole.point_angle);
    let single = [
        (asked.hole.last_tap != LastTap::Plug).then_some(Change::PlugTap),
        (asked.tap_end == TapEnd::MaleCentre).then_some(Change::GrindCentre),
        (angle < in_degrees(split_point())).then(|| Change::Point(split_point())),
        (angle < in_degrees(flat()) - 0.5).then(|| Change::Point(flat())),
    ];
    let way = |change| left_by(asked, thickness, change);
    let mut ways: Vec<Way> = single.into_iter().flatten().map(way).collect();
    let together = way(Change::Together);
    let gains = |one: &Way| !one.is_enough && falls_short(one.wall, together.wall);
    if !ways.is_empty() && ways.iter().all(gains) {
        ways.push(together);
    }
    ways
}

fn left_by(asked: &Question, thickness: Length, change: Change) -> Way {
    let changed = changed(asked, change);
    let wall =
        depth::wall(thickness, answer(&Question { part_thickness: None, ..changed }).to_point);
    let least_wall = depth::least_wall(asked.hole.drill);
    Way {
        change,
        wall,
        is_enough: verdict(wall, least_wall) == Verdict::Possible,
        most_full_thread: most_full_thread(&changed, thickness),
    }
}

/// The same hole after a change.
#[must_use]
pub fn changed(asked: &Question, change: Change) -> Question {
    let with_tap = |last_tap| Question { hole: BlindHole { last_tap, ..asked.hole }, ..*asked };
    let with_point =
        |point_angle| Question { hole: BlindHole { point_angle, ..asked.hole }, ..*asked };
    match change {
        Change::PlugTap => with_tap(LastTap::Plug),
        Change::GrindCentre => Question { tap_end: TapEnd::Flat, ..*asked },
        Change::Point(angle) => with_point(angle),
        Change::Together => {
            let plug = BlindHole { last_tap: LastTap::Plug, point_angle: flat(), ..asked.hole };
            Question { hole: plug, tap_end: TapEnd::Flat, ..*asked }
        }
    }
}
