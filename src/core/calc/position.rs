//! Whether two parts go together when the centres of their holes are off, and what can be done if not.
//!
//! Errors are radial: how far a centre lies from where it should. A positional tolerance on diameter is
//! twice that. The sum is for the worst case, each centre off the full amount and away from the other.

use crate::calc::clearance::{float, hole_for_errors};
use crate::units::{Angle, Length, falls_short, mm};

/// What the screw passes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Case {
    /// A clearance hole, into a tapped part.
    Fixed,
    /// A clearance hole in both parts.
    Floating {
        /// The hole in the lower part.
        lower: Length,
    },
}

/// What says where the parts lie.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Register {
    /// A pattern of holes: each has to meet its mate.
    #[default]
    Pattern,
    /// One hole, and something else holds the parts in register: a spigot, an edge, a dowel.
    Located,
    /// One hole, and the parts are free to shift until it meets.
    Free,
}

/// A screwed joint as it is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// What the screw passes.
    pub case: Case,
    /// What says where the parts lie.
    pub register: Register,
    /// The screw's diameter.
    pub screw: Length,
    /// The clearance hole in the upper part.
    pub hole: Length,
    /// How far the clearance hole's centre may be off.
    pub upper_error: Length,
    /// How far the centre of the hole below may be off.
    pub lower_error: Length,
    /// How far the screw's axis leans over the thickness of the upper part: see [`lean`].
    pub lean: Length,
}

/// What comes of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// How far the axes can be apart at the worst.
    pub off: Length,
    /// How far they may be apart.
    pub room: Length,
    /// The screw goes in at the worst.
    pub goes_together: bool,
    /// The clearance hole in the upper part that would just do.
    pub hole_needed: Length,
    /// How far each centre may be off in these holes, shared alike; none where it does not matter.
    pub each_may_be_off: Option<Length>,
}

/// How far an axis that leans passes aside over a thickness.
///
/// # Source
/// Geometry.
///
/// # Examples
/// ```
/// use holewright_core::{calc::position::lean, units::{degrees, mm, print}};
/// assert_eq!(print::mm(lean(mm(10.0), degrees(1.0)), 3), "0.175 mm");
/// ```
#[must_use]
pub fn lean(thickness: Length, angle: Angle) -> Length {
    thickness * libm::tan(angle.value)
}

/// The joint at its worst.
///
/// # Source
/// ASME Y14.5 appendix B: fixed fastener H = F + T1 + T2, floating fastener H = F + T for each part. The lean
/// counts as one more error, by geometry.
///
/// # Examples
/// A 3.5 mm screw in a 3.94 mm hole allows 0.22 mm on diameter in each part where the lower is tapped (the
/// same appendix; its 3.94 and 3.5 are from memory: unconfirmed), 0.11 mm to one side.
/// ```
/// use holewright_core::calc::position::{Case, Joint, Register, position};
/// use holewright_core::units::{mm, print};
/// let joint = Joint {
///     case: Case::Fixed,
///     register: Register::Pattern,
///     screw: mm(3.5),
///     hole: mm(3.94),
///     upper_error: mm(0.11),
///     lower_error: mm(0.11),
///     lean: mm(0.0),
/// };
/// let found = position(&joint);
/// assert!(found.goes_together);
/// assert_eq!(print::mm(found.each_may_be_off.unwrap() * 2.0, 4), "0.22 mm");
/// assert_eq!(print::mm(found.hole_needed, 4), "3.94 mm");
/// let both = Joint { case: Case::Floating { lower: mm(3.94) }, ..joint };
/// assert_eq!(print::mm(position(&both).each_may_be_off.unwrap() * 2.0, 4), "0.44 mm");
/// ```
#[must_use]
pub fn position(joint: &Joint) -> Position {
    let none = mm(0.0);
    let off = match joint.register {
        Register::Pattern | Register::Located => joint.upper_error + joint.lower_error + joint.lean,
        // Shifted until the screw stands as far out at one face as at the other.
        Register::Free => joint.lean / 2.0,
    };
    let room_of = |hole| float(hole, joint.screw) / 2.0;
    let room_below = match joint.case {
        Case::Fixed => none,
        Case::Floating { lower } => room_of(lower),
    };
    let room = room_of(joint.hole) + room_below;
    let passes = |hole| !falls_short(hole, joint.screw);
    let passes_below = match joint.case {
        Case::Fixed => true,
        Case::Floating { lower } => passes(lower),
    };
    let left_to_upper = (off - room_below).max(none);
    Position {
        off,
        room,
        goes_together: passes(joint.hole) && passes_below && !falls_short(room, off),
        hole_needed: hole_for_errors(joint.screw, left_to_upper, none),
        each_may_be_off: (joint.register != Register::Free)
            .then(|| ((room - joint.lean) / 2.0).max(none)),
    }
}

/// The hole that would just do in both parts of a floating joint, where they are to be alike.
///
/// # Source
/// ASME Y14.5 appendix B, floating fastener: H = F + T.
///
/// # Examples
/// ```
/// use holewright_core::{calc::position::hole_alike, units::{mm, print}};
/// assert_eq!(print::mm(hole_alike(mm(3.5), mm(0.44)), 4), "3.94 mm");
/// ```
#[must_use]
pub fn hole_alike(screw: Length, off: Length) -> Length {
    screw + off
}

/// The largest clearance hole that a head still covers with some rim: one and four tenths of the screw. The
/// smallest heads, cheese and cap, are one and a half to one and three quarters of it across.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn largest_under_head(screw: Length) -> Length {
    screw * 1.4
}

/// How far the hole that is out has gone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Only marked or popped.
    Marked,
    /// Begun: a cone narrower than the drill.
    Cone,
    /// Drilled to its diameter, or tapped.
    #[default]
    Drilled,
}

/// What the screw has to do.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Duty {
    /// It holds a part down.
    #[default]
    Holds,
    /// Its hole says where the part lies.
    Locates,
    /// The part stands under steam, water or pressure.
    Pressure,
}

/// What can be done about a hole that is out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Remedy {
    /// Nothing before the inspector has seen it.
    AskInspector,
    /// Mark it again.
    MarkAgain,
    /// Draw the cone over.
    DrawOver,
    /// Open the clearance hole.
    Open,
    /// Make the clearance hole long.
    Elongate,
    /// Larger holes for the screws, and dowels to locate.
    Dowel,
    /// Plug it and drill again.
    Plug,
}

/// What can be done about a hole that is out, the cheapest first.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ```
/// use holewright_core::calc::position::{Duty, Remedy, Stage, remedies};
/// let drilled = |duty| remedies(Stage::Drilled, duty);
/// assert_eq!(drilled(Duty::Holds), [Remedy::Open, Remedy::Elongate, Remedy::Plug]);
/// assert_eq!(drilled(Duty::Pressure), [Remedy::AskInspector]);
/// ```
#[must_use]
pub const fn remedies(stage: Stage, duty: Duty) -> &'static [Remedy] {
    use Remedy::{AskInspector, Dowel, DrawOver, Elongate, MarkAgain, Open, Plug};
    match (stage, duty) {
        (Stage::Marked, _) => &[MarkAgain],
        // Drawing a cone over cuts metal too.
        (Stage::Cone, Duty::Pressure) => &[AskInspector, DrawOver],
        (Stage::Cone, Duty::Holds | Duty::Locates) => &[DrawOver],
        (Stage::Drilled, Duty::Holds) => &[Open, Elongate, Plug],
        (Stage::Drilled, Duty::Locates) => &[Dowel, Plug],
        (Stage::Drilled, Duty::Pressure) => &[AskInspector],
    }
}
