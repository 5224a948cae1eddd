//! How metals resist a tap, as two tap makers print it, each for its own formula.
//!
//! The two tables are not to be mixed: a figure of one belongs to no formula of the other.

use crate::tables::materials::{Family, Material};
use crate::tables::source::{Grade, Source};
use crate::units::{Stress, newtons_per_mm2};

/// How a metal resists a hand tap: the figure, and the column of corrections it is used with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TappingForce {
    /// The specific cutting force.
    pub force: Stress,
    /// Which corrections it is used with.
    pub column: Column,
    /// The metal in the maker's own mark.
    pub printed_as: &'static str,
    /// Where it was read.
    pub source: Source,
}

/// The columns of the maker's corrections.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// Steel.
    Steel,
    /// Cast iron and aluminium.
    IronOrAluminium,
    /// Brass.
    Brass,
}

/// The figure a metal goes by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resists {
    /// The maker's row.
    pub row: &'static TappingForce,
    /// The maker prints none for this metal, and the nearest is taken.
    pub is_borrowed: bool,
}

/// How a metal resists a tap by the rougher formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoughForce {
    /// The specific cutting force.
    pub force: Stress,
    /// The metal in the maker's own words.
    pub printed_as: &'static str,
    /// Where it was read.
    pub source: Source,
}

/// A correction for the hand tap that follows the taper tap: the British second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// The metals it is for.
    pub column: Column,
    /// Coarse threads.
    pub coarse: f64,
    /// Fine threads.
    pub fine: f64,
}

const CITE: &str = "a tap maker's catalogue, 2021, p. 640, tapping torque";
/// Where the maker's formula, its forces and its corrections were read.
pub const SOURCE: Source = Source::published(CITE);
/// The figure of grey iron, which was read in sums made with it and not in the maker's own column.
const SECOND_HAND: Source = Source { cite: CITE, grade: Grade::SecondHand };
/// Where the rougher formula and its forces were read.
pub const ROUGH_SOURCE: Source = Source::published("a thread tool maker's calculations, torque");
/// Where the nearest figure is taken.
pub const BORROWED_SOURCE: Source =
    Source::common_practice("the figure of the nearest metal is taken where the maker prints none");

const fn row(force: f64, column: Column, printed_as: &'static str, source: Source) -> TappingForce {
    TappingForce { force: newtons_per_mm2(force), column, printed_as, source }
}

static STRUCTURAL: TappingForce = row(3700.0, Column::Steel, "St44-2", SOURCE);
static LOW_CARBON: TappingForce = row(3600.0, Column::Steel, "Ck15", SOURCE);
static MEDIUM_CARBON: TappingForce = row(3900.0, Column::Steel, "Ck45", SOURCE);
static HIGH_CARBON: TappingForce = row(4000.0, Column::Steel, "Ck60", SOURCE);
static STAINLESS: TappingForce = row(4200.0, Column::Steel, "X6CrNi18-10", SOURCE);
static TOOL_STEEL: TappingForce = row(5300.0, Column::Steel, "C105W2", SOURCE);
static GREY_IRON: TappingForce = row(2900.0, Column::IronOrAluminium, "GG-25", SECOND_HAND);
static BRASS: TappingForce = row(2300.0, Column::Brass, "CuZn40", SOURCE);
static ALUMINIUM: TappingForce = row(1300.0, Column::IronOrAluminium, "G-AlSi8Cu3", SOURCE);

/// Every figure held for the maker's formula.
pub fn all() -> impl Iterator<Item = &'static TappingForce> {
    [
        &STRUCTURAL,
        &LOW_CARBON,
        &MEDIUM_CARBON,
        &HIGH_CARBON,
        &STAINLESS,
        &TOOL_STEEL,
        &GREY_IRON,
        &BRASS,
        &ALUMINIUM,
    ]
    .into_iter()
}

static CORRECTIONS: [Correction; 3] = [
    Correction { column: Column::Steel, coarse: 1.35, fine: 1.15 },
    Correction { column: Column::IronOrAluminium, coarse: 1.25, fine: 1.08 },
    Correction { column: Column::Brass, coarse: 1.60, fine: 1.12 },
];

impl Column {
    /// The correction for a second tap, fine or coarse.
    ///
    /// # Source
    /// The maker's table 2, hand taps with a lead of five threads.
    #[must_use]
    pub fn correction(self, is_fine: bool) -> f64 {
        let held = CORRECTIONS.iter().find(|row| row.column == self);
        held.map_or(1.0, |row| if is_fine { row.fine } else { row.coarse })
    }
}

/// The figure a metal goes by; none for plastics and white metal, which no maker prints.
///
/// # Source
/// The maker's table; which of its rows stands nearest to a metal it does not name is common practice.
///
/// # Examples
/// ```
/// use holewright_core::tables::{materials::find, tapping_force::resists};
/// let of = |slug| resists(find(slug).unwrap()).map(|found| (found.row.printed_as, found.is_borrowed));
/// assert_eq!(of("medium-carbon-steel"), Some(("Ck45", false)));
/// assert_eq!(of("gunmetal"), Some(("CuZn40", true)));
/// assert_eq!(of("nylon"), None);
/// ```
#[must_use]
pub fn resists(material: &Material) -> Option<Resists> {
    let printed = |row| Some(Resists { row, is_borrowed: false });
    let borrowed = |row| Some(Resists { row, is_borrowed: true });
    match (material.family, material.slug) {
        (Family::Steel, "bright-mild-steel") => printed(&LOW_CARBON),
        (Family::Steel, "black-mild-steel") => printed(&STRUCTURAL),
        (Family::Steel, "medium-carbon-steel") => printed(&MEDIUM_CARBON),
        (Family::Steel, "silver-steel") => printed(&TOOL_STEEL),
        (Family::Steel, "free-cutting-mild-steel" | "leaded-free-cutting-steel") => {
            borrowed(&LOW_CARBON)
        }
        (Family::Steel, "cast-steel") => borrowed(&STRUCTURAL),
        (Family::Steel, "case-hardening-steel") => borrowed(&MEDIUM_CARBON),
        (Family::Steel, "spring-steel") => borrowed(&HIGH_CARBON),
        (Family::Steel, _) => borrowed(&TOOL_STEEL),
        (Family::Stainless, "stainless-304") => printed(&STAINLESS),
        (Family::Stainless | Family::Nickel | Family::Titanium, _) => borrowed(&STAINLESS),
        (Family::CastIron, "grey-cast-iron" | "continuous-cast-iron") => printed(&GREY_IRON),
        (Family::CastIron, _) => borrowed(&GREY_IRON),
        (Family::Brass, _) => printed(&BRASS),
        (Family::Bronze | Family::Copper, _) => borrowed(&BRASS),
        (Family::Aluminium, "cast-aluminium" | "cast-aluminium-lm25") => printed(&ALUMINIUM),
        (Family::Aluminium | Family::Magnesium | Family::Zinc, _) => borrowed(&ALUMINIUM),
        (Family::WhiteMetal | Family::Plastic, _) => None,
    }
}

const fn rough(force: f64, printed_as: &'static str) -> RoughForce {
    RoughForce { force: newtons_per_mm2(force), printed_as, source: ROUGH_SOURCE }
}

static ROUGH_UNALLOYED: RoughForce = rough(2300.0, "Unalloyed construction metal");
static ROUGH_FREE_CUTTING: RoughForce = rough(2300.0, "Free cutting steel");
static ROUGH_STRUCTURAL: RoughForce = rough(2500.0, "Structural steel");
static ROUGH_STAINLESS: RoughForce = rough(3200.0, "Stainless austenitic");
static ROUGH_ALUMINIUM: RoughForce = rough(800.0, "Aluminium alloys long chipping");
static ROUGH_LONG_COPPER: RoughForce = rough(1100.0, "Copper alloys long chipping");
static ROUGH_SHORT_COPPER: RoughForce = rough(720.0, "Copper alloys short chipping");
static ROUGH_GREY_IRON: RoughForce = rough(1250.0, "Grey cast iron");
static ROUGH_ALLOY_IRON: RoughForce = rough(1600.0, "Alloy grey cast iron");
static ROUGH_MALLEABLE: RoughForce = rough(1100.0, "Malleable cast iron");

/// Every figure held for the rougher formula.
pub fn all_rough() -> impl Iterator<Item = &'static RoughForce> {
    [
        &ROUGH_UNALLOYED,
        &ROUGH_FREE_CUTTING,
        &ROUGH_STRUCTURAL,
        &ROUGH_STAINLESS,
        &ROUGH_ALUMINIUM,
        &ROUGH_LONG_COPPER,
        &ROUGH_SHORT_COPPER,
        &ROUGH_GREY_IRON,
        &ROUGH_ALLOY_IRON,
        &ROUGH_MALLEABLE,
    ]
    .into_iter()
}

/// The figure for the rougher formula; none where that maker prints none for the metal's kind.
#[must_use]
pub fn rough_force(material: &Material) -> Option<&'static RoughForce> {
    use crate::tables::materials::Chips;
    let found = match (material.family, material.slug, material.chips) {
        (Family::Steel, "free-cutting-mild-steel" | "leaded-free-cutting-steel", _) => {
            &ROUGH_FREE_CUTTING
        }
        (Family::Steel, "bright-mild-steel" | "black-mild-steel", _) => &ROUGH_UNALLOYED,
        (Family::Steel, _, _) => &ROUGH_STRUCTURAL,
        (Family::Stainless, "stainless-303" | "stainless-304" | "stainless-316", _) => {
            &ROUGH_STAINLESS
        }
        (Family::Aluminium, _, Chips::Long) => &ROUGH_ALUMINIUM,
        (Family::Brass | Family::Bronze | Family::Copper, _, Chips::Long) => &ROUGH_LONG_COPPER,
        (Family::Brass | Family::Bronze | Family::Copper, _, Chips::Short) => &ROUGH_SHORT_COPPER,
        (Family::CastIron, "grey-cast-iron" | "continuous-cast-iron", _) => &ROUGH_GREY_IRON,
        (Family::CastIron, "malleable-iron", _) => &ROUGH_MALLEABLE,
        _ => return None,
    };
    Some(found)
}
