//! The heads that a card is made for.

/// The head of the screw.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum HeadOf {
    /// The usual hexagon.
    #[default]
    Hexagon,
    /// That of the next smaller screw.
    SmallHexagon,
    /// The one before the standard changed it.
    OldHexagon,
    /// Countersunk.
    Countersunk,
    /// Cheese.
    Cheese,
    /// With a hexagon socket.
    Cap,
}

impl HeadOf {
    /// The head in words: `hexagon head`.
    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Hexagon => "hexagon head",
            Self::SmallHexagon => "hexagon one size smaller",
            Self::OldHexagon => "older hexagon",
            Self::Countersunk => "countersunk head",
            Self::Cheese => "cheese head",
            Self::Cap => "cap head",
        }
    }
}
