//! The question: what is done, with what, in which metal, on which machine.

use crate::calc::depth::usual_point_angle;
use crate::calc::machines::Machines;
use crate::calc::thread_form::geometry;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::{Angle, Length};

/// What is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Work {
    /// Drilling.
    #[default]
    Drilling,
    /// Reaming in a machine.
    Reaming,
    /// Tapping: by hand, and what is in print for a machine.
    Tapping,
    /// Sinking the mouth of a hole for a head.
    Countersinking,
    /// Spotting for a drill.
    Spotting,
}

impl Work {
    /// Every one.
    pub const ALL: [Self; 5] =
        [Self::Drilling, Self::Reaming, Self::Tapping, Self::Countersinking, Self::Spotting];

    /// The word used in addresses and JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Drilling => "drilling",
            Self::Reaming => "reaming",
            Self::Tapping => "tapping",
            Self::Countersinking => "countersinking",
            Self::Spotting => "spotting",
        }
    }

    /// The tool inside a sentence.
    #[must_use]
    pub const fn tool(self) -> &'static str {
        match self {
            Self::Drilling => "drill",
            Self::Reaming => "reamer",
            Self::Tapping => "tap",
            Self::Countersinking => "countersink",
            Self::Spotting => "spotting drill",
        }
    }
}

/// What turns, or what it is for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tool {
    /// A drill of the series; when spotting, the drill that follows.
    Drill(&'static Drill),
    /// A tap for a thread held here.
    Tap(&'static Thread),
    /// A countersink for a screw of a thread held here.
    Screw(&'static Thread),
    /// A tool of this diameter; of a countersink, the head's.
    Size(Length),
}

impl Tool {
    /// Its diameter: a tap's and a screw's is the thread's major.
    #[must_use]
    pub fn diameter(self) -> Length {
        match self {
            Self::Drill(drill) => drill.diameter,
            Self::Tap(thread) | Self::Screw(thread) => geometry(thread).major,
            Self::Size(size) => size,
        }
    }
}

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The metal.
    pub material: &'static Material,
    /// What is done.
    pub work: Work,
    /// What turns, or what it is for.
    pub tool: Tool,
    /// What the tool is made of.
    pub tool_steel: ToolSteel,
    /// The machines at hand.
    pub machines: Machines,
    /// How deep: to the drill's full diameter, the reamer's end, the last full thread.
    pub depth: Option<Length>,
    /// The point of the drill.
    pub point_angle: Angle,
    /// The head of the screw, as measured.
    pub head: Option<Length>,
    /// The hole that is sunk.
    pub hole: Option<Length>,
    /// The countersink's angle.
    pub countersink_angle: Option<Angle>,
    /// The drills at hand, for the hole to leave for a reamer.
    pub at_hand: Vec<&'static Drill>,
}

impl Question {
    /// The usual question: high-speed steel, a 118° drill, nothing known of the machine, no drill at hand.
    #[must_use]
    pub fn new(material: &'static Material, work: Work, tool: Tool) -> Self {
        Self {
            material,
            work,
            tool,
            tool_steel: ToolSteel::default(),
            machines: Machines::default(),
            depth: None,
            point_angle: usual_point_angle(),
            head: None,
            hole: None,
            countersink_angle: None,
            at_hand: Vec::new(),
        }
    }
}
