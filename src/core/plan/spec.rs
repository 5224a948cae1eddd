//! What is asked: one hole, complete and typed.

use crate::calc::aim::Aim;
use crate::calc::clearance::Fit;
use crate::calc::depth::{LastTap, usual_point_angle};
use crate::calc::machines::Machines;
use crate::tables::drills::{self, Drill};
use crate::tables::materials::Material;
use crate::tables::screw_metals::Screw;
use crate::tables::threads::Thread;
use crate::tables::threads::read::Hand;
use crate::units::{Angle, Length};

/// Open at the far end, or not.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Hole {
    /// Right through the part.
    #[default]
    Through,
    /// Stopped: metal is left under it.
    Blind,
}

/// How the tap is driven, or whether it cuts at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Tap {
    /// Straight-flute hand taps.
    #[default]
    Hand,
    /// A machine tap under power.
    Machine,
    /// A forming tap, which displaces metal and wants a larger hole.
    Forming,
}

/// What the tap is made of: carbon steel is brittle but can be dissolved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum TapSteel {
    /// High-speed steel.
    #[default]
    HighSpeed,
    /// Carbon steel.
    Carbon,
}

/// How the upper part of a pair comes to the bench.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum UpperHole {
    /// Undrilled, or drilled at tapping size with the lower part.
    #[default]
    Tapping,
    /// Already drilled to clearance: it is the master.
    Clearance,
}

/// What a depth stop is set in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Scale {
    /// Tenths of a millimetre.
    #[default]
    Metric,
    /// Steps of five thou.
    Inch,
}

/// The head of the screw, as far as its seat turns on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Head {
    /// Countersunk.
    Countersunk,
    /// Cheese, or any other round head let in.
    Cheese,
    /// Hexagon.
    Hexagon,
}

/// The part that is screwed down on top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Over {
    /// Its metal.
    pub material: &'static Material,
    /// Its thickness, where known.
    pub thickness: Option<Length>,
    /// How it comes.
    pub hole: UpperHole,
}

/// One hole, as asked.
#[derive(Clone, Debug, PartialEq)]
pub struct HoleSpec {
    /// The thread.
    pub thread: &'static Thread,
    /// Right or left hand.
    pub hand: Hand,
    /// The metal that is tapped.
    pub material: &'static Material,
    /// Through or blind.
    pub hole: Hole,
    /// Blind: length of full thread wanted. Through: thickness of the part.
    pub depth: Option<Length>,
    /// What the depth stop is set in.
    pub scale: Scale,
    /// A part screwed down on top.
    pub over: Option<Over>,
    /// A thickness given for an upper part whose metal was not named: the plan has one part, and says so.
    pub lone_thickness: Option<Length>,
    /// Fit of the screw in the upper part.
    pub fit: Fit,
    /// The head of the screw, where a seat for it is wanted.
    pub head: Option<Head>,
    /// How far a marked-out centre may be off, radially.
    pub centre_error: Option<Length>,
    /// How the thread is made.
    pub tap: Tap,
    /// Steel of the tap.
    pub tap_steel: TapSteel,
    /// How much thread is wanted.
    pub aim: Aim,
    /// The drills at hand, by size.
    pub at_hand: AtHand,
    /// The machines at hand; none where nothing was said of any.
    pub machines: Machines,
    /// Thickness of the tapped part, for the wall under a blind hole.
    pub part_thickness: Option<Length>,
    /// The screw, where what the thread carries is wanted.
    pub screw: Option<Screw>,
    /// The last tap run down.
    pub finish: Option<LastTap>,
    /// Included angle of the drill's point.
    pub point_angle: Angle,
    /// A hole already drilled, as measured.
    pub measured_hole: Option<Length>,
}

/// Which drills may be chosen from.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum AtHand {
    /// Every drill of every series.
    #[default]
    All,
    /// These, by size: what `series` or `owned` leaves.
    Only(Vec<&'static Drill>),
}

impl AtHand {
    /// The drills, smallest first.
    pub fn drills(&self) -> Box<dyn Iterator<Item = &'static Drill> + '_> {
        match self {
            Self::All => Box::new(drills::all().iter()),
            Self::Only(drills) => Box::new(drills.iter().copied()),
        }
    }
}

impl HoleSpec {
    /// The usual hole: through, right hand, hand taps of high-speed steel, a 118° drill, every drill at hand.
    #[must_use]
    pub fn new(thread: &'static Thread, material: &'static Material) -> Self {
        Self {
            thread,
            hand: Hand::Right,
            material,
            hole: Hole::default(),
            depth: None,
            scale: Scale::default(),
            over: None,
            lone_thickness: None,
            fit: Fit::default(),
            head: None,
            centre_error: None,
            tap: Tap::default(),
            tap_steel: TapSteel::default(),
            aim: Aim::default(),
            at_hand: AtHand::default(),
            machines: Machines::default(),
            part_thickness: None,
            screw: None,
            finish: None,
            point_angle: usual_point_angle(),
            measured_hole: None,
        }
    }
}
