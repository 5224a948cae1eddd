//! How a material wants to be fed where the speed is not the one it would take. One rule, so that no two
//! pages and no two steps differ.

use super::{Family, Material};

/// What a tool that rubs does to the material.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rubbing {
    /// It hardens under it.
    Hardens,
    /// Its chips can light.
    Lights,
    /// It melts or smears.
    Melts,
    /// It pulls the tool in: the feed is held back, not pushed.
    Grabs,
    /// It only blunts the tool.
    Blunts,
}

impl Material {
    /// What a tool that rubs does to it.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub const fn rubbing(&self) -> Rubbing {
        match self.family {
            Family::Magnesium => Rubbing::Lights,
            Family::Titanium => Rubbing::Hardens,
            _ if self.work_hardens => Rubbing::Hardens,
            Family::Plastic => Rubbing::Melts,
            _ if self.grabs => Rubbing::Grabs,
            _ => Rubbing::Blunts,
        }
    }

    /// What it is called inside a sentence: no plastic is a metal.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self.family {
            Family::Plastic => "plastic",
            _ => "metal",
        }
    }

    /// How to feed a tool that turns more slowly than it would take.
    #[must_use]
    pub const fn feed_when_slow(&self) -> &'static str {
        match self.rubbing() {
            Rubbing::Hardens => {
                "The feed a turn stays the same, so it goes in more slowly: keep it firm and steady and never let it rub, for this metal hardens under a tool that rubs."
            }
            Rubbing::Lights => {
                "The feed a turn stays the same, so it goes in more slowly: keep it cutting and draw back at once at the end, for a tool left rubbing can light the chips."
            }
            Rubbing::Melts => {
                "The feed a turn stays the same, so it goes in more slowly: keep it cutting and clear it often, for a tool left rubbing melts the hole."
            }
            Rubbing::Grabs => {
                "The feed a turn stays the same, so it goes in more slowly: hold the tool back as it breaks through, for this metal pulls it in."
            }
            Rubbing::Blunts => {
                "The feed a turn stays the same, so it goes in more slowly: do not push harder to make up the time."
            }
        }
    }

    /// The same in a hole that is stopped, where nothing breaks through.
    #[must_use]
    pub const fn feed_when_slow_in_blind(&self) -> &'static str {
        match self.rubbing() {
            Rubbing::Grabs => {
                "The feed a turn stays the same, so it goes in more slowly: hold the tool back, for this metal pulls it in."
            }
            _ => self.feed_when_slow(),
        }
    }

    /// What becomes of a cut that is faster than it would take.
    #[must_use]
    pub const fn harm_when_fast(&self) -> &'static str {
        match self.rubbing() {
            Rubbing::Hardens => "The edge burns and the hole hardens.",
            Rubbing::Lights => "The chips can light.",
            Rubbing::Melts => "The hole melts and closes on the drill.",
            Rubbing::Grabs | Rubbing::Blunts => "The edge overheats and goes blunt.",
        }
    }

    /// How to feed a drill by feel, or a tool that has no feed in print.
    #[must_use]
    pub const fn feed_by_feel(&self) -> &'static str {
        match self.rubbing() {
            Rubbing::Hardens | Rubbing::Lights => {
                "By feel: keep a chip coming, never let it rub, and draw back at once to clear."
            }
            Rubbing::Melts => "By feel: keep a chip coming, and draw back often to clear and cool.",
            Rubbing::Grabs => {
                "By feel: keep a chip coming and hold it back from pulling in; draw back to clear."
            }
            Rubbing::Blunts => "By feel: keep a chip coming, and draw back often to clear.",
        }
    }
}
