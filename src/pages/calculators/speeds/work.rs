//! What is done, with what.

use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills::Drill;
use holewright_core::tables::threads::Thread;
use holewright_core::units::Length;

/// What is done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Work {
    /// Drilling.
    #[default]
    Drilling,
    /// Reaming in a machine.
    Reaming,
    /// Tapping under power.
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
