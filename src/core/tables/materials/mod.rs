//! The metals and plastics of the workshop: what they are, how they cut, what to watch for.
//!
//! Rows stand in one file a family; the speeds and feeds they point to, each as its source prints
//! it, in files of their own.

mod alloy_steel;
mod aluminium;
pub mod asked;
mod brass;
mod bronze;
mod carbon_steel;
mod cast_aluminium;
mod cast_steel;
mod caution;
mod copper;
mod copper_sentences;
mod dangers;
#[rustfmt::skip]
mod drilling_speeds;
mod ductile_iron;
mod feeding;
pub mod feeds;
mod ferrous;
mod folded;
mod gunmetal;
mod iron;
mod kinds;
mod leaded_brass;
mod martensitic_stainless;
mod nickel_titanium;
mod plastics;
mod property;
pub mod read;
#[rustfmt::skip]
mod reaming_speeds;
pub mod scrap;
mod shed_lubricant;
mod sheet_plastics;
mod soft_metals;
mod sources;
mod stainless;
mod statements;
mod steel;
pub mod stock;
mod tapping;
#[rustfmt::skip]
mod tapping_speeds;
pub mod telling;
mod tool_steel;

use std::fmt;

use crate::tables::source::Source;
use crate::units::{INCH_MM, Velocity, metres_per_minute};

pub use caution::{Caution, Fluid, Work};
pub use feeding::Rubbing;
pub use feeds::FeedRange;
pub use property::{HardnessScale, MachinabilityBasis, Measure, Property, Span};
pub use statements::{Statement, Topic};
pub use tapping::{BrokenTap, FormingTap};

/// How much thread a metal asks for, and how it treats a tap: one line of the aim table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// Free-cutting brass, plastics, aluminium.
    EasyCutting,
    /// Grey cast iron, gunmetal, leaded bronze.
    IronAndGunmetal,
    /// Free-cutting mild steel.
    FreeCuttingSteel,
    /// Bright mild and medium carbon steel, phosphor bronze, free-cutting stainless.
    MildSteelAndPhosphorBronze,
    /// Copper, silver steel, gauge plate, alloy steel, other stainless, nickel alloys, titanium.
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
                "bright mild and medium carbon steel, phosphor bronze, free-cutting stainless"
            }
            Self::Tough => "copper, tool steel, other stainless and tough metals",
        })
    }
}

/// What family of metal it is, where a rule turns on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Grey, spheroidal graphite and malleable iron.
    CastIron,
    /// Brass.
    Brass,
    /// Gunmetal and bronze.
    Bronze,
    /// Copper.
    Copper,
    /// Carbon, alloy and free-cutting steel.
    Steel,
    /// Stainless steel.
    Stainless,
    /// Nickel alloys.
    Nickel,
    /// Titanium and its alloys.
    Titanium,
    /// Aluminium and its alloys.
    Aluminium,
    /// Magnesium alloys.
    Magnesium,
    /// Zinc die-casting alloys.
    Zinc,
    /// White metal for bearings.
    WhiteMetal,
    /// Plastics.
    Plastic,
}

impl fmt::Display for Family {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::CastIron => "cast iron",
            Self::Brass => "brass and nickel silver",
            Self::Bronze => "bronze and gunmetal",
            Self::Copper => "copper",
            Self::Steel => "steel",
            Self::Stainless => "stainless steel",
            Self::Nickel => "nickel alloys",
            Self::Titanium => "titanium",
            Self::Aluminium => "aluminium",
            Self::Magnesium => "magnesium",
            Self::Zinc => "zinc",
            Self::WhiteMetal => "white metal",
            Self::Plastic => "plastics",
        })
    }
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

/// Whether steam or pressure is a likely use of a tapped hole in it, so that the inspector's line
/// belongs on the plan.
///
/// # Source
/// Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PressureWork {
    /// It turns up in cylinders, boilers, valves and steam fittings.
    Plausible,
    /// It does not, as a rule.
    Unlikely,
}

/// Where a mark holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Validity {
    /// A standard in force here, or the mark stockists use today.
    #[default]
    Current,
    /// A standard withdrawn, still found on drawings and bar ends.
    Old,
    /// Another country's standard, the same metal or the nearest.
    Abroad,
}

/// A mark by which standards and stockists know it, old or new, with where that was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Designation {
    /// The mark: `LG2`, `CW614N`, `EN1A`.
    pub mark: &'static str,
    /// Whether it is in force.
    pub validity: Validity,
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
    /// The metal in the source's own words: it may be wider than ours, or only near it.
    pub printed_as: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// One material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// The address part: `gunmetal`.
    pub slug: &'static str,
    /// The name a drawing uses, as it stands inside a sentence: no capital but in `PTFE`.
    pub name: &'static str,
    /// Other address parts that mean it.
    pub aliases: &'static [&'static str],
    /// Other names people type or read; not addresses.
    pub known_as: &'static [&'static str],
    /// Old and new designations.
    pub designations: &'static [Designation],
    /// Where a model engineer meets it.
    pub met_in: &'static [Advice],
    /// Why it is not to be drilled or tapped at all; no plan and no speed is given then.
    pub refused: Option<Advice>,
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
    /// Density, strength, hardness and machinability, by condition.
    pub properties: &'static [Property],
    /// Drilling speeds with a high-speed steel drill, the one the plan uses first.
    pub drilling: &'static [SpeedRange],
    /// Tapping speeds under power: [`Material::tapping_gentlest_first`] says which the plan uses.
    pub tapping: &'static [SpeedRange],
    /// Reaming speeds with a high-speed steel reamer in a machine; may be empty.
    pub reaming: &'static [SpeedRange],
    /// Drilling feeds printed for this metal alone, at a few diameters; may be empty. The plan uses
    /// [`feeds::general`].
    pub feeds: &'static [FeedRange],
    /// What to put on the drill.
    pub drilling_lubricant: Advice,
    /// What to put on the tap.
    pub tapping_lubricant: Advice,
    /// How often to turn a hand tap back.
    pub back_off: Advice,
    /// How to grind the drill for it: lips, point, helix.
    pub drill_advice: &'static [Advice],
    /// Which tap, and how to run it.
    pub tap_advice: &'static [Advice],
    /// Whether a forming tap may be used.
    pub forming_tap: FormingTap,
    /// What may be done about a tap broken in it.
    pub broken_tap: BrokenTap,
    /// Whether steam or pressure is a likely use.
    pub pressure_work: PressureWork,
    /// How it behaves under drill and tap.
    pub behaviour: &'static [Advice],
    /// What it must not be used for.
    pub not_for: &'static [Advice],
    /// What old or unmarked stock passes for it, and how to tell.
    pub salvage: &'static [Advice],
    /// What can hurt the work, and when.
    pub cautions: &'static [Caution],
    /// What can hurt the person, and when: dust, fume, fire, lead.
    pub dangers: &'static [Caution],
}

static ALL: &[Material] = &[
    iron::GREY_CAST_IRON,
    iron::CONTINUOUS_CAST_IRON,
    ductile_iron::SPHEROIDAL_GRAPHITE_IRON,
    ductile_iron::MALLEABLE_IRON,
    gunmetal::GUNMETAL,
    gunmetal::GUNMETAL_LG4,
    gunmetal::LEADED_BRONZE,
    bronze::PHOSPHOR_BRONZE_CAST,
    bronze::PHOSPHOR_BRONZE_DRAWN,
    bronze::FREE_CUTTING_PHOSPHOR_BRONZE,
    bronze::ALUMINIUM_BRONZE,
    leaded_brass::FREE_CUTTING_BRASS,
    leaded_brass::ENGRAVING_BRASS,
    leaded_brass::DEZINCIFICATION_RESISTANT_BRASS,
    brass::SHEET_BRASS,
    brass::NAVAL_BRASS,
    brass::HIGH_TENSILE_BRASS,
    brass::NICKEL_SILVER,
    copper::COPPER,
    copper::CUPRO_NICKEL,
    copper::BERYLLIUM_COPPER,
    steel::FREE_CUTTING_MILD_STEEL,
    steel::LEADED_FREE_CUTTING_STEEL,
    steel::BRIGHT_MILD_STEEL,
    steel::BLACK_MILD_STEEL,
    carbon_steel::MEDIUM_CARBON_STEEL,
    carbon_steel::CASE_HARDENING_STEEL,
    carbon_steel::SPRING_STEEL,
    cast_steel::CAST_STEEL,
    alloy_steel::EN16,
    alloy_steel::EN19,
    alloy_steel::EN24,
    tool_steel::SILVER_STEEL,
    tool_steel::GAUGE_PLATE,
    stainless::STAINLESS_303,
    stainless::STAINLESS_304,
    stainless::STAINLESS_316,
    martensitic_stainless::STAINLESS_416,
    martensitic_stainless::STAINLESS_431,
    aluminium::ALUMINIUM_6082,
    aluminium::ALUMINIUM_6063,
    aluminium::ALUMINIUM_2011,
    aluminium::ALUMINIUM_2014,
    aluminium::ALUMINIUM_7075,
    cast_aluminium::CAST_ALUMINIUM,
    cast_aluminium::CAST_ALUMINIUM_LM25,
    nickel_titanium::NICKEL_COPPER_400,
    nickel_titanium::TITANIUM_GRADE_2,
    nickel_titanium::TITANIUM_GRADE_5,
    soft_metals::ZINC_DIE_CASTING_ALLOY,
    soft_metals::MAGNESIUM_ALLOY,
    soft_metals::WHITE_METAL,
    plastics::ACETAL,
    plastics::NYLON,
    plastics::PTFE,
    plastics::PEEK,
    sheet_plastics::ACRYLIC,
    sheet_plastics::POLYCARBONATE,
    sheet_plastics::PVC,
    sheet_plastics::LAMINATED_PHENOLIC,
];

/// Every material, in the order the pages list them.
#[must_use]
pub fn all() -> &'static [Material] {
    ALL
}

/// Every material by family: the families in the order their first material has in the list.
#[must_use]
pub fn by_family() -> Vec<(Family, Vec<&'static Material>)> {
    let mut families: Vec<(Family, Vec<&'static Material>)> = Vec::new();
    for material in all() {
        match families.iter_mut().find(|(family, _)| *family == material.family) {
            Some((_, kin)) => kin.push(material),
            None => families.push((material.family, vec![material])),
        }
    }
    families
}

/// The material at this address; aliases count. For what people type, see [`read::read`].
#[must_use]
pub fn find(slug: &str) -> Option<&'static Material> {
    all().iter().find(|material| material.slug == slug || material.aliases.contains(&slug))
}

impl Material {
    /// The page's address.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/materials/{}", self.slug)
    }

    /// Its tapping speeds under power, the gentlest first: the first is the one the plan uses.
    #[must_use]
    pub fn tapping_gentlest_first(&self) -> Vec<&'static SpeedRange> {
        let mut ranges: Vec<&'static SpeedRange> = self.tapping.iter().collect();
        let ends = |range: &SpeedRange| [range.low.value, range.high.value];
        ranges.sort_by(|a, b| {
            let ([a_low, a_high], [b_low, b_high]) = (ends(a), ends(b));
            a_low.total_cmp(&b_low).then(a_high.total_cmp(&b_high))
        });
        ranges
    }
}

impl SpeedRange {
    /// A row printed in feet a minute.
    const fn feet(low: f64, high: f64, printed_as: &'static str, source: Source) -> Self {
        const METRE: f64 = 12.0 * INCH_MM / 1000.0;
        Self::metres(low * METRE, high * METRE, printed_as, source)
    }

    /// A row printed in metres a minute.
    const fn metres(low: f64, high: f64, printed_as: &'static str, source: Source) -> Self {
        Self { low: metres_per_minute(low), high: metres_per_minute(high), printed_as, source }
    }
}
