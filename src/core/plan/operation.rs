//! One step at the bench.

use std::borrow::Cow;

use crate::calc::setting::Setting;
use crate::tables::drills::Drill;
use crate::units::Length;

/// Which part a step is done on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// The part screwed down.
    Upper,
    /// The tapped part; in a one-part plan, the part.
    Lower,
    /// Both, held together.
    Both,
}

/// What is done, as one word of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Action {
    /// Mark out and check.
    MarkOut,
    /// Start the hole with a short stiff drill.
    Spot,
    /// Mark one part through the other.
    SpotThrough,
    /// Hold two parts in register.
    Register,
    /// Drill.
    Drill,
    /// Part two parts again.
    Separate,
    /// Deburr and clear swarf.
    Deburr,
    /// Chamfer the mouth.
    Chamfer,
    /// Tap.
    Tap,
    /// Open a hole to clearance.
    OpenOut,
    /// Try the screw.
    TryScrew,
}

impl Action {
    /// The word in addresses and JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::MarkOut => "mark-out",
            Self::Spot => "spot",
            Self::SpotThrough => "spot-through",
            Self::Register => "register",
            Self::Drill => "drill",
            Self::Separate => "separate",
            Self::Deburr => "deburr",
            Self::Chamfer => "chamfer",
            Self::Tap => "tap",
            Self::OpenOut => "open-out",
            Self::TryScrew => "try-screw",
        }
    }

    /// The words on the page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::MarkOut => "Mark out",
            Self::Spot => "Spot",
            Self::SpotThrough => "Spot through",
            Self::Register => "Hold in register",
            Self::Drill => "Drill",
            Self::Separate => "Separate",
            Self::Deburr => "Deburr",
            Self::Chamfer => "Chamfer",
            Self::Tap => "Tap",
            Self::OpenOut => "Open out",
            Self::TryScrew => "Try the screw",
        }
    }
}

/// One ordered step: what, on which part, with what, how deep, how fast, and why here.
#[derive(Clone, Debug, PartialEq)]
pub struct Operation {
    /// What is done.
    pub action: Action,
    /// On which part.
    pub part: Part,
    /// With what: "No. 36 drill", "taper tap".
    pub tool: Cow<'static, str>,
    /// The drill, where the tool is one of the series.
    pub drill: Option<&'static Drill>,
    /// Diameter cut.
    pub diameter: Option<Length>,
    /// Depth along the hole, from the face the drill enters.
    pub depth: Option<Length>,
    /// What to set the machine to; none where the spindle does not turn.
    pub speed: Option<Setting>,
    /// Feed per revolution.
    pub feed: Option<Length>,
    /// What to put on it.
    pub lubricant: Option<&'static str>,
    /// What to do.
    pub text: Cow<'static, str>,
    /// Why it is done, and why here in the order.
    pub why: Cow<'static, str>,
}
