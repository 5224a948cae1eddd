//! What can hurt the work or the person, and in what work: a plan says only what it does.

use super::Advice;

/// The work that a caution or a danger concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Work {
    /// Laying it out, and what is looked at before.
    MarkingOut,
    /// The pop or the spot that the drill starts in.
    Popping,
    /// Drilling it.
    Drilling,
    /// The drill coming out at the far side.
    BreakThrough,
    /// Opening out a hole that is there.
    OpeningOut,
    /// The hole that the screw passes through.
    Clearing,
    /// Drilling a hole so wide that the drill is worked up to.
    WideDrilling,
    /// Whether a thread cut in it holds.
    Threads,
    /// Tapping it.
    Tapping,
    /// The edges of the hole.
    Edges,
    /// The screw in the finished thread.
    Screwing,
    /// Its chips or dust can burn while they are made.
    Fire,
    /// What it gives off where it gets hot in a cut, to be breathed in.
    Fume,
    /// What may be put on it, in a cut that it has to itself.
    Lubrication,
    /// A fluid that must not come near it, whatever else is in the cut.
    Shuns(Fluid),
    /// Paraffin, where that is used.
    Paraffin,
    /// Any wet cut.
    Fluid,
    /// The swarf it makes.
    Swarf,
    /// What stays on the hands.
    Hands,
    /// Lead in the swarf, which comes into the body from the hands.
    Lead,
    /// Dust that drilling it makes.
    Dust,
    /// What a piece may turn out to be.
    Stock,
    /// How it is held.
    Holding,
    /// A plan works out from its own figures whether it applies, and says so in its own words: thin
    /// sheet, the drill's lips, a small tap, a drill that dwells, breaking through, pressure.
    Reckoned,
    /// What is decided before there is a hole to plan.
    Design,
    /// What becomes of the part later.
    Service,
    /// Hardening, soldering, welding, melting.
    Heat,
    /// Grinding, filing, sawing.
    Grinding,
    /// Turning, milling, bending.
    OtherCuts,
    /// More about what is said already, for the reader of the material's page.
    Background,
}

impl Work {
    /// Whether it burns or poisons: what every page says that reckons something for the material.
    #[must_use]
    pub const fn burns_or_poisons(self) -> bool {
        matches!(
            self,
            Self::Fire | Self::Fume | Self::Shuns(_) | Self::Dust | Self::Stock | Self::Lead
        )
    }

    /// Whether it is done, or met, wherever a hole is cut: what a page on one cut says.
    #[must_use]
    pub const fn is_of_any_cut(self) -> bool {
        match self {
            Self::Drilling
            | Self::BreakThrough
            | Self::Holding
            | Self::Fire
            | Self::Fume
            | Self::Shuns(_)
            | Self::Fluid
            | Self::Swarf
            | Self::Hands
            | Self::Lead
            | Self::Dust
            | Self::Stock => true,
            Self::MarkingOut
            | Self::Popping
            | Self::OpeningOut
            | Self::Clearing
            | Self::WideDrilling
            | Self::Threads
            | Self::Tapping
            | Self::Edges
            | Self::Screwing
            | Self::Lubrication
            | Self::Paraffin
            | Self::Reckoned
            | Self::Design
            | Self::Service
            | Self::Heat
            | Self::Grinding
            | Self::OtherCuts
            | Self::Background => false,
        }
    }
}

/// What is put on a cut, as far as it can do harm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fluid {
    /// Water, soluble oil.
    WaterMix,
    /// Oil, spirit, solvents.
    Oil,
}

/// A caution or a danger with the work it concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// When it matters.
    pub work: Work,
    /// What to do or watch for.
    pub advice: Advice,
}

impl Work {
    /// A caution for this work.
    pub(super) const fn says(self, advice: Advice) -> Caution {
        Caution { work: self, advice }
    }
}
