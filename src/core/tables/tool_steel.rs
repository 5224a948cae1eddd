//! What a tool's own steel does to its speed.

use crate::tables::source::Source;

/// What the cutting edge is made of. The published speeds are for high-speed steel.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum ToolSteel {
    /// High-speed steel.
    #[default]
    HighSpeed,
    /// Carbon steel: it loses its temper at a low heat.
    Carbon,
}

/// Read as "high-speed steel can be operated at twice the RPM of carbon steel".
const HALF: Source = Source::published("a shop course, Twist drill: materials");

impl ToolSteel {
    /// The part of the high-speed steel speed it may have.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::tables::tool_steel::ToolSteel;
    /// assert_eq!(ToolSteel::HighSpeed.speed_factor(), 1.0);
    /// assert_eq!(ToolSteel::Carbon.speed_factor(), 0.5);
    /// ```
    #[must_use]
    pub const fn speed_factor(self) -> f64 {
        match self {
            Self::HighSpeed => 1.0,
            Self::Carbon => 0.5,
        }
    }

    /// Where the factor comes from; none for the steel the speeds are printed for.
    #[must_use]
    pub const fn source(self) -> Option<Source> {
        match self {
            Self::HighSpeed => None,
            Self::Carbon => Some(HALF),
        }
    }

    /// The word used in addresses and JSON: `hss`.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::HighSpeed => "hss",
            Self::Carbon => "carbon",
        }
    }

    /// The name inside a sentence.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::HighSpeed => "high-speed steel",
            Self::Carbon => "carbon steel",
        }
    }
}
