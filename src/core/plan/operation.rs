//! One step at the bench.

use std::borrow::Cow;

use super::Warning;
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
    /// Take two parts apart again.
    Separate,
    /// Deburr and clear swarf.
    Deburr,
    /// Chamfer the mouth.
    Chamfer,
    /// Tap.
    Tap,
    /// Open a hole to clearance.
    OpenOut,
    /// Make the seat for the screw's head.
    Seat,
    /// Try the screw.
    TryScrew,
    /// Go on to the next hole of a pattern.
    NextHole,
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
            Self::Seat => "seat",
            Self::TryScrew => "try-screw",
            Self::NextHole => "next-hole",
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
            Self::Seat => "Seat the head",
            Self::TryScrew => "Try the screw",
            Self::NextHole => "The next hole",
        }
    }
}

/// The lips of a drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Lips {
    /// A small flat on each, so that the drill does not dig in.
    Dubbed,
    /// As sharp as they come.
    Keen,
}

impl Lips {
    /// The word in JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Dubbed => "dubbed",
            Self::Keen => "keen",
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
    /// The depth as a stop is set; none where the hole has no stop.
    pub stop: Option<Length>,
    /// The depth that the end of a hand tap reaches: in a through hole it comes out beyond the far face.
    pub tip: Option<Length>,
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
    /// How the drill's lips are ground, where the metal asks for one way.
    pub lips: Option<Lips>,
    /// What to watch for in this step, worst first.
    pub cautions: Vec<Warning>,
}

/// No more cautions stand open at a step.
const MOST_AT_STEP: usize = 2;

impl Operation {
    /// Whether no more cautions stand open here.
    pub(super) const fn is_full(&self) -> bool {
        self.cautions.len() >= MOST_AT_STEP
    }

    /// The cautions that stand open at the step, and the milder ones that are folded away with its why.
    #[must_use]
    pub fn open_and_folded(&self) -> (&[Warning], &[Warning]) {
        self.cautions.split_at_checked(MOST_AT_STEP).unwrap_or((&self.cautions, &[]))
    }
}
