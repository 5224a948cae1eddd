//! The metals and plastics of the workshop: what they are, how they cut, what to watch for.

pub mod read;

use std::fmt;

use crate::tables::source::Source;
use crate::units::Velocity;

/// How much thread a metal asks for, and how it treats a tap: one line of the aim table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// Free-cutting brass, plastics, aluminium.
    EasyCutting,
    /// Grey cast iron, gunmetal, leaded bronze.
    IronAndGunmetal,
    /// Free-cutting mild steel.
    FreeCuttingSteel,
    /// Bright mild and medium carbon steel, phosphor bronze.
    MildSteelAndPhosphorBronze,
    /// Copper, silver steel, gauge plate, alloy steel, stainless, nickel alloys, titanium.
    Tough,
}

impl Group {
    /// The name used in addresses and JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::EasyCutting => "easy-cutting",
            Self::IronAndGunmetal => "iron-and-gunmetal",
            Self::FreeCuttingSteel => "free-cutting-steel",
            Self::MildSteelAndPhosphorBronze => "mild-steel-and-phosphor-bronze",
            Self::Tough => "tough",
        }
    }
}

impl fmt::Display for Group {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::EasyCutting => "free-cutting brass, aluminium and plastics",
            Self::IronAndGunmetal => "grey cast iron, gunmetal and leaded bronze",
            Self::FreeCuttingSteel => "free-cutting mild steel",
            Self::MildSteelAndPhosphorBronze => {
                "bright mild and medium carbon steel, phosphor bronze"
            }
            Self::Tough => "copper, tool steel, stainless and other tough metals",
        })
    }
}

/// What family of metal it is, where a rule turns on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Grey iron.
    CastIron,
    /// Brass.
    Brass,
    /// Gunmetal and bronze.
    Bronze,
    /// Copper.
    Copper,
    /// Carbon and free-cutting steel.
    Steel,
    /// Stainless steel.
    Stainless,
    /// Aluminium and its alloys.
    Aluminium,
    /// Plastics.
    Plastic,
}

/// Chips that break, or strings that wind up in the flutes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chips {
    /// Grey iron, free-cutting brass, gunmetal, leaded bronze.
    Short,
    /// The rest.
    Long,
}

/// Words with their source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Advice {
    /// A sentence, complete with its full stop.
    pub text: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// A range of surface speeds with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedRange {
    /// Slowest.
    pub low: Velocity,
    /// Fastest; equal to `low` where the source prints one figure.
    pub high: Velocity,
    /// Where it comes from.
    pub source: Source,
}

/// One material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// The address part: `gunmetal`.
    pub slug: &'static str,
    /// The name a drawing uses.
    pub name: &'static str,
    /// Other address parts that mean it.
    pub aliases: &'static [&'static str],
    /// Old and new designations.
    pub designations: &'static [&'static str],
    /// Engagement group.
    pub group: Group,
    /// Family.
    pub family: Family,
    /// Chips.
    pub chips: Chips,
    /// It pulls a drill in; lips are dubbed.
    pub grabs: bool,
    /// It hardens under a rubbing drill.
    pub work_hardens: bool,
    /// A hole in it closes in after drilling.
    pub closes_in: bool,
    /// Drilling speeds with a high-speed steel drill, the one the plan uses first.
    pub drilling: &'static [SpeedRange],
    /// Tapping speeds under power, the one the plan uses first.
    pub tapping: &'static [SpeedRange],
    /// What to put on the drill.
    pub drilling_lubricant: Advice,
    /// What to put on the tap.
    pub tapping_lubricant: Advice,
    /// How it behaves under drill and tap.
    pub behaviour: &'static [Advice],
    /// What can hurt the work.
    pub cautions: &'static [Advice],
    /// What can hurt the person: dust, fume, fire, lead.
    pub dangers: &'static [Advice],
}

/// Every material, by name.
#[must_use]
pub fn all() -> &'static [Material] {
    &[]
}

/// The material at this address; aliases count.
#[must_use]
pub fn find(slug: &str) -> Option<&'static Material> {
    all().iter().find(|material| material.slug == slug || material.aliases.contains(&slug))
}
