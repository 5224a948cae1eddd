//! How metals resist a drill, and what its chisel edge and its wear add, as the handbook prints them.

use crate::tables::materials::{Family, Material};
use crate::tables::source::Source;
use crate::units::{Stress, newtons_per_mm2};

/// How a metal resists a drill: the handbook's Kd, the same number in inch and metric formulas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resistance {
    /// For torque.
    pub torque: f64,
    /// For thrust.
    pub thrust: f64,
    /// The metal in the handbook's words.
    pub printed_as: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// What the chisel edge across the web adds, by its length over the diameter of the drill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chisel {
    /// Length of the chisel edge over the diameter.
    pub ratio: f64,
    /// The handbook's A, on the torque.
    pub torque: f64,
    /// Its B, on the thrust of the lips.
    pub thrust: f64,
    /// Its J, of the web's own thrust.
    pub web: f64,
}

/// What is said of an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wear {
    /// The handbook's W.
    pub factor: f64,
    /// The edge in words.
    pub printed_as: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// Where the chisel edge's factors were read.
pub const CHISEL_SOURCE: Source =
    Source::published("Machinery's Handbook 31st ed. p. 1152, table 7");
const RECALLED: Source = Source::memory(
    "Machinery's Handbook, work material factors and tool wear factors for drilling",
);

/// The usual twist drill: its chisel edge is 0.18 of its diameter.
pub const USUAL_CHISEL: Chisel = chisel(0.18, 1.085, 1.355, 0.030);

const fn chisel(ratio: f64, torque: f64, thrust: f64, web: f64) -> Chisel {
    Chisel { ratio, torque, thrust, web }
}

const fn kd(both: f64, printed_as: &'static str) -> Resistance {
    Resistance { torque: both, thrust: both, printed_as, source: RECALLED }
}

const fn apart(torque: f64, thrust: f64, printed_as: &'static str) -> Resistance {
    Resistance { thrust, ..kd(torque, printed_as) }
}

const FREE_CUTTING: Resistance = kd(12_000.0, "resulphurised free-machining mild steel, AISI 1117");
const STEEL_200: Resistance = kd(24_000.0, "steel of 200 HB");
const STEEL_300: Resistance = kd(31_000.0, "steel of 300 HB");
const CAST_IRON: Resistance = kd(14_000.0, "cast iron of 150 HB");
const ALUMINIUM: Resistance = kd(7_000.0, "most aluminium alloys");
const MAGNESIUM: Resistance = kd(4_000.0, "most magnesium alloys");
const BRASS: Resistance = kd(14_000.0, "most brasses");
const LEADED_BRASS: Resistance = kd(7_000.0, "leaded brass");
const STAINLESS: Resistance = apart(24_000.0, 35_000.0, "austenitic stainless steel, 316");
const TITANIUM: Resistance = apart(18_000.0, 29_000.0, "titanium Ti-6Al-4V of 40 HRC");

/// Every resistance held.
pub static RESISTANCES: [Resistance; 10] = [
    FREE_CUTTING,
    STEEL_200,
    STEEL_300,
    CAST_IRON,
    ALUMINIUM,
    MAGNESIUM,
    BRASS,
    LEADED_BRASS,
    STAINLESS,
    TITANIUM,
];

/// Every wear held, the sharpest first.
pub static WEAR: [Wear; 3] = [
    Wear { factor: 1.0, printed_as: "sharp drill", source: RECALLED },
    Wear { factor: 1.3, printed_as: "normal drilling", source: RECALLED },
    Wear { factor: 1.5, printed_as: "hard-to-machine material, very dull drill", source: RECALLED },
];

/// How a metal resists a drill, by the nearest of the handbook's; none where none is near.
///
/// # Examples
/// ```
/// use holewright_core::tables::{drill_force::resistance, materials::find};
/// let of = |slug| resistance(find(slug).unwrap()).map(|found| found.torque);
/// assert_eq!((of("free-cutting-brass"), of("bright-mild-steel")), (Some(7_000.0), Some(24_000.0)));
/// assert_eq!(of("gunmetal"), None);
/// ```
#[must_use]
pub fn resistance(material: &Material) -> Option<&'static Resistance> {
    let found = match (material.family, material.slug) {
        (Family::Steel, "free-cutting-mild-steel" | "leaded-free-cutting-steel") => &FREE_CUTTING,
        (Family::Steel, "alloy-steel-en16" | "alloy-steel-en19" | "alloy-steel-en24") => &STEEL_300,
        (Family::Steel, _) => &STEEL_200,
        (Family::CastIron, "grey-cast-iron" | "continuous-cast-iron") => &CAST_IRON,
        (Family::Aluminium, _) => &ALUMINIUM,
        (Family::Magnesium, _) => &MAGNESIUM,
        (Family::Brass, "free-cutting-brass" | "engraving-brass") => &LEADED_BRASS,
        (Family::Brass, "sheet-brass" | "naval-brass" | "high-tensile-brass") => &BRASS,
        (Family::Stainless, "stainless-304" | "stainless-316") => &STAINLESS,
        (Family::Titanium, "titanium-grade-5") => &TITANIUM,
        _ => return None,
    };
    Some(found)
}

/// A metal's constant in another maker's drilling formula, which goes by its own table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Constant {
    /// The constant.
    pub value: f64,
    /// The metal in the maker's own words.
    pub printed_as: &'static str,
    /// Its tensile strength as printed, in newtons per square millimetre.
    pub tensile: Stress,
}

/// Where the maker's formula and its constants were read.
pub const ROUGH_SOURCE: Source =
    Source::published("a cutting tool maker's catalogue, 2020-21, drilling formulas");

const fn constant(printed_as: &'static str, tensile: f64, value: f64) -> Constant {
    Constant { value, printed_as, tensile: newtons_per_mm2(tensile) }
}

static CONSTANTS: [Constant; 12] = [
    constant("Cast iron", 210.0, 1.00),
    constant("Cast iron", 280.0, 1.39),
    constant("Cast iron", 350.0, 1.88),
    constant("Aluminium", 250.0, 1.01),
    constant("Free cutting steel SUM32", 620.0, 1.42),
    constant("Mn steel SMn438", 630.0, 1.45),
    constant("Ni-Cr steel SNC236", 690.0, 2.02),
    constant("4115", 630.0, 1.62),
    constant("Cr-Mo SCM430", 770.0, 2.10),
    constant("Cr-Mo SCM440", 940.0, 2.41),
    constant("Cr-V (0.6Cr 0.6Mn 0.12V)", 580.0, 2.08),
    constant("Cr-V (0.8Cr 0.8Mn 0.1V)", 800.0, 2.22),
];

/// Every constant in print.
#[must_use]
pub fn constants() -> &'static [Constant] {
    &CONSTANTS
}

/// The constant of a metal; none where the maker prints none for its kind.
///
/// # Examples
/// ```
/// use holewright_core::tables::{drill_force::rough_constant, materials::find};
/// let of = |slug| rough_constant(find(slug).unwrap()).map(|found| found.value);
/// assert_eq!((of("aluminium-6082"), of("grey-cast-iron"), of("gunmetal")), (Some(1.01), Some(1.0), None));
/// ```
#[must_use]
pub fn rough_constant(material: &Material) -> Option<&'static Constant> {
    let named = match (material.family, material.slug) {
        (Family::CastIron, "grey-cast-iron") => "Cast iron",
        (Family::Aluminium, _) => "Aluminium",
        (Family::Steel, "free-cutting-mild-steel" | "leaded-free-cutting-steel") => {
            "Free cutting steel SUM32"
        }
        (Family::Steel, "alloy-steel-en19") => "Cr-Mo SCM440",
        _ => return None,
    };
    CONSTANTS.iter().find(|constant| constant.printed_as == named)
}
