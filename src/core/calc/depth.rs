//! How deep to drill so that enough full threads are left.
//!
//! Depths are axial. What lies beyond the last full thread is the tap's lead, one pitch to spare,
//! and the drill's point. Whether the wall left under the point is enough, the plan decides.

use std::fmt;

use crate::tables::drills::SAME_SIZE;
use crate::tables::materials::Group;
use crate::tables::source::Source;
use crate::units::{Angle, Length, degrees, inch, mm};

/// The last tap run down the hole, by its British name.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum LastTap {
    /// The taper tap.
    Taper,
    /// The second tap; American lists call it plug.
    Second,
    /// The plug tap; American lists call it bottoming.
    #[default]
    Plug,
}

impl LastTap {
    /// Every tap, in the order they are run down.
    pub const ALL: [Self; 3] = [Self::Taper, Self::Second, Self::Plug];

    /// The word used in addresses: `plug`.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Taper => "taper",
            Self::Second => "second",
            Self::Plug => "plug",
        }
    }

    /// The tap of an address word.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|tap| tap.slug() == slug)
    }

    /// The tap's lead: how many of its threads are cut away to let it start.
    #[must_use]
    pub const fn lead(self) -> Lead {
        let (fewest, most, cite) = match self {
            Self::Taper => (8.0, 10.0, "training page 'Threads, taps and tapping', taper tap"),
            Self::Second => (3.0, 5.0, "training page 'Threads, taps and tapping', second tap"),
            Self::Plug => (1.0, 2.0, "ANSI bottoming chamfer, a tap maker's catalogue p. Y89"),
        };
        Lead { fewest, most, source: Source::published(cite) }
    }
}

impl fmt::Display for LastTap {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.slug())
    }
}

/// The lead of a tap in threads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lead {
    /// The shortest lead of its kind.
    pub fewest: f64,
    /// The longest, which depths are worked out with.
    pub most: f64,
    /// Where it comes from.
    pub source: Source,
}

/// The tools of one blind tapped hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlindHole {
    /// Major diameter of the thread.
    pub major: Length,
    /// Pitch of the thread.
    pub pitch: Length,
    /// Tapping drill.
    pub drill: Length,
    /// Point angle of the drill, 60° to 180°; see [`usual_point_angle`].
    pub point_angle: Angle,
    /// The last tap run down.
    pub last_tap: LastTap,
}

/// The depths of one blind tapped hole, each from the surface or as a part of the whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlindDepths {
    /// Full threads wanted.
    pub full_thread: Length,
    /// Part: the last tap's lead.
    pub tap_lead: Length,
    /// Part: one pitch to spare.
    pub spare: Length,
    /// From the surface: to this depth the hole has the drill's full diameter.
    pub drill_full_diameter: Length,
    /// Part: the drill's point.
    pub point: Length,
    /// From the surface: to the tip of the point.
    pub drill_to_point: Length,
    /// Part, not counted above: a tap up to 3/8 in with a pointed end wants up to this much more,
    /// or its point ground off.
    pub male_centre: Option<Length>,
    /// Part, not counted above: room for swarf before a straight-flute hand tap.
    pub swarf_room: Length,
}

/// The point angle of a jobber drill, 118°.
#[must_use]
pub fn usual_point_angle() -> Angle {
    degrees(118.0)
}

/// The least and the most point angle a drill is ground to here; 180° is flat.
#[must_use]
pub fn point_angle_range() -> (Angle, Angle) {
    (degrees(60.0), degrees(180.0))
}

/// Length of a drill's point, chisel edge left out: (d/2)/tan(A/2).
///
/// # Units
/// An angle outside [`point_angle_range`] counts as the end of the range it is nearest to.
///
/// # Source
/// Trigonometry; a tap maker prints 0.3 d for the usual drill.
///
/// # Examples
/// ```
/// use holewright_core::{calc::depth::point_length, units::{degrees, inch, mm, print}};
/// assert_eq!(print::mm(point_length(mm(1.0), degrees(118.0)), 4), "0.3004 mm");
/// assert_eq!(print::mm(point_length(mm(1.0), degrees(135.0)), 4), "0.2071 mm");
/// assert_eq!(print::inch(point_length(inch(0.406), degrees(135.0)), 4), "0.0841 in");
/// assert_eq!(print::mm(point_length(mm(1.0), degrees(180.0)), 4), "0 mm");
/// ```
#[must_use]
pub fn point_length(diameter: Length, point_angle: Angle) -> Length {
    let (least, most) = point_angle_range();
    let half = point_angle.max(least).min(most) / 2.0;
    diameter / 2.0 / libm::tan(half.value)
}

/// The depths of a blind hole that leave so much full thread.
///
/// # Source
/// Thread, tap chamfer and one pitch: an engineering institute's tip 'Minimum tap depth'.
///
/// # Examples
/// 3/8 in of ¼-20 with a bottoming tap: 0.375 + 0.100 + 0.050 = 0.525 in (the same tip).
/// ```
/// use holewright_core::calc::depth::{blind, usual_point_angle, BlindHole, LastTap};
/// use holewright_core::units::{inch, print};
/// let quarter = BlindHole {
///     major: inch(0.25),
///     pitch: inch(0.05),
///     drill: inch(0.201),
///     point_angle: usual_point_angle(),
///     last_tap: LastTap::Plug,
/// };
/// assert_eq!(print::inch(blind(&quarter, inch(0.375)).drill_full_diameter, 3), "0.525 in");
/// ```
#[must_use]
pub fn blind(hole: &BlindHole, full_thread: Length) -> BlindDepths {
    let tap_lead = hole.pitch * hole.last_tap.lead().most;
    let spare = hole.pitch;
    let point = point_length(hole.drill, hole.point_angle);
    let drill_full_diameter = full_thread + tap_lead + spare;
    BlindDepths {
        full_thread,
        tap_lead,
        spare,
        drill_full_diameter,
        point,
        drill_to_point: drill_full_diameter + point,
        male_centre: (hole.major < inch(0.375) + SAME_SIZE).then(|| hole.major / 2.0),
        swarf_room: hole.major,
    }
}

/// The length of full thread where none was said: one and a half diameters.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::depth::usual_length, units::mm};
/// assert_eq!(usual_length(mm(4.0)), mm(6.0));
/// ```
#[must_use]
pub fn usual_length(major: Length) -> Length {
    major * 1.5
}

/// A thread longer than this many diameters is taken for a mistake in typing.
pub const LONGEST_DIAMETERS: f64 = 60.0;

/// The least wall worth leaving under the point: half the drill's diameter.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::depth::least_wall, units::mm};
/// assert_eq!(least_wall(mm(3.0)), mm(1.5));
/// ```
#[must_use]
pub fn least_wall(drill: Length) -> Length {
    drill * 0.5
}

/// The metal left under the point. Negative: the drill comes through.
#[must_use]
pub fn wall(part_thickness: Length, drill_to_point: Length) -> Length {
    part_thickness - drill_to_point
}

/// The most full thread a part can hold, blind, with so much wall left under the point.
///
/// `None` when it can hold none: the lead, the spare pitch, the point and the wall use it all up.
///
/// # Examples
/// 3/16 in of thread in a 3/16 in part cannot be made blind, with any tap.
/// ```
/// use holewright_core::calc::depth::{most_full_thread, usual_point_angle, BlindHole, LastTap};
/// use holewright_core::units::{inch, mm, print};
/// let five_ba = BlindHole {
///     major: mm(3.2),
///     pitch: mm(0.59),
///     drill: mm(2.65),
///     point_angle: usual_point_angle(),
///     last_tap: LastTap::Plug,
/// };
/// let thickness = inch(0.1875);
/// assert_eq!(print::mm(most_full_thread(&five_ba, thickness, mm(1.0)).unwrap(), 2), "1.2 mm");
/// let taper = BlindHole { last_tap: LastTap::Taper, ..five_ba };
/// assert_eq!(most_full_thread(&taper, thickness, mm(1.0)), None);
/// ```
#[must_use]
pub fn most_full_thread(
    hole: &BlindHole,
    part_thickness: Length,
    wall_left: Length,
) -> Option<Length> {
    let most = part_thickness - wall_left - blind(hole, mm(0.0)).drill_to_point;
    (most > mm(0.0)).then_some(most)
}

/// How far to go before the drill is withdrawn to clear its flutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peck {
    /// The first withdrawal.
    pub first: Length,
    /// Each further step.
    pub then: Length,
    /// Common practice.
    pub source: Source,
}

/// A hole so deep for its diameter that it asks for care.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deep {
    /// Over five diameters.
    Deep,
    /// Over ten diameters.
    VeryDeep,
}

/// Whether a hole is deep for its diameter: over 5, over 10.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::calc::depth::{Deep, how_deep};
/// let found = [5.0, 5.1, 10.1].map(how_deep);
/// assert_eq!(found, [None, Some(Deep::Deep), Some(Deep::VeryDeep)]);
/// ```
#[must_use]
pub fn how_deep(diameters: f64) -> Option<Deep> {
    if diameters > 10.0 {
        Some(Deep::VeryDeep)
    } else if diameters > 5.0 {
        Some(Deep::Deep)
    } else {
        None
    }
}

/// The pecks for a drill in a metal: 3 d and then 1 d, less in tough metal.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::{calc::depth::peck, tables::materials::Group, units::mm};
/// let stops: Vec<_> = peck(mm(2.0), Group::IronAndGunmetal).stops(mm(9.0)).collect();
/// assert_eq!(stops, [mm(6.0), mm(8.0), mm(9.0)]);
/// assert_eq!(peck(mm(2.0), Group::Tough).first, mm(4.0));
/// ```
#[must_use]
pub fn peck(diameter: Length, group: Group) -> Peck {
    let (first, then) = if group == Group::Tough { (2.0, 0.5) } else { (3.0, 1.0) };
    Peck {
        first: diameter * first,
        then: diameter * then,
        source: Source::common_practice("first 3 d, then 1 d; in tough metal 2 d and ½ d"),
    }
}

impl Peck {
    /// The depths from the surface at which to withdraw, the last being the full depth.
    pub fn stops(self, depth: Length) -> impl Iterator<Item = Length> {
        let step = self.then;
        std::iter::successors(Some(self.first), move |stop| (step > mm(0.0)).then(|| *stop + step))
            .take_while(move |stop| *stop < depth)
            .chain(std::iter::once(depth))
    }
}
