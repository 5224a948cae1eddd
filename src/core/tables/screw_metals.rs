//! What screws are made of: property classes as they are marked on heads, and what is turned from bar.

use crate::tables::materials::{Family, Material, Measure, Property, Span};
use crate::tables::source::{Grade, Source};
use crate::units::{Stress, newtons_per_mm2};

/// A property class.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PropertyClass {
    /// The mark on the head: `8.8`, `A2-70`.
    pub mark: &'static str,
    /// Its name inside a sentence.
    pub name: &'static str,
    /// Tensile strength by the mark.
    pub tensile: Stress,
    /// What a screw must bear without stretching for good; none where none is held.
    pub proof: Option<Stress>,
    /// Where it comes from.
    pub source: Source,
}

/// A screw, as far as it bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Its class or its metal, inside a sentence.
    pub name: &'static str,
    /// Its tensile strength.
    pub tensile: Strength,
    /// What it must bear without stretching for good, where its class has that.
    pub proof: Option<Stress>,
}

impl PropertyClass {
    /// A screw of the class.
    #[must_use]
    pub const fn screw(&self) -> Screw {
        let tensile = Strength { stress: self.tensile, condition: "", source: self.source };
        Screw { name: self.name, tensile, proof: self.proof }
    }
}

/// A strength with what it was read for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// The figure.
    pub stress: Stress,
    /// The condition it was read for.
    pub condition: &'static str,
    /// Where it comes from.
    pub source: Source,
}

const ISO_898: Source =
    Source::published("ISO 898-1, by the mark; proof stress from the proof loads in print");
const ISO_3506: Source = Source::memory("ISO 3506-1, tensile strength by the mark");

const fn steel(mark: &'static str, name: &'static str, tensile: f64, proof: f64) -> PropertyClass {
    PropertyClass {
        mark,
        name,
        tensile: newtons_per_mm2(tensile),
        proof: Some(newtons_per_mm2(proof)),
        source: ISO_898,
    }
}

const fn stainless(mark: &'static str, name: &'static str, tensile: f64) -> PropertyClass {
    PropertyClass { mark, name, tensile: newtons_per_mm2(tensile), proof: None, source: ISO_3506 }
}

static CLASSES: [PropertyClass; 12] = [
    steel("4.6", "class 4.6", 400.0, 225.0),
    steel("4.8", "class 4.8", 400.0, 310.0),
    steel("5.6", "class 5.6", 500.0, 280.0),
    steel("5.8", "class 5.8", 500.0, 380.0),
    steel("6.8", "class 6.8", 600.0, 440.0),
    steel("8.8", "class 8.8", 800.0, 580.0),
    steel("9.8", "class 9.8", 900.0, 650.0),
    steel("10.9", "class 10.9", 1000.0, 830.0),
    steel("12.9", "class 12.9", 1200.0, 970.0),
    stainless("A2-50", "stainless A2-50", 500.0),
    stainless("A2-70", "stainless A2-70", 700.0),
    stainless("A4-80", "stainless A4-80", 800.0),
];

/// Every property class held.
#[must_use]
pub fn classes() -> &'static [PropertyClass] {
    &CLASSES
}

/// The class of a mark, however its marks are written: `8.8`, `A2 70`.
///
/// # Examples
/// ```
/// use holewright_core::tables::screw_metals::class;
/// assert_eq!(class("8.8").map(|found| found.mark), Some("8.8"));
/// assert_eq!(class("class 10.9").map(|found| found.mark), Some("10.9"));
/// assert_eq!(class("a2 70").map(|found| found.mark), Some("A2-70"));
/// assert_eq!(class("brass"), None);
/// ```
#[must_use]
pub fn class(text: &str) -> Option<&'static PropertyClass> {
    let plain = |text: &str| -> String {
        let kept = text.chars().filter(|letter| letter.is_ascii_alphanumeric() || *letter == '.');
        kept.collect::<String>().to_ascii_lowercase()
    };
    let text = plain(text);
    let text = text.strip_prefix("class").or(text.strip_prefix("grade")).unwrap_or(&text);
    CLASSES.iter().find(|class| plain(class.mark) == text)
}

/// The least tensile strength in print for a metal, of all its conditions; none where some condition has
/// a greatest figure alone, for then the least is not known: soft spring steel.
///
/// # Examples
/// Gunmetal is weakest sand cast.
/// ```
/// use holewright_core::{tables::{materials::find, screw_metals::least_tensile}, units::in_newtons_per_mm2};
/// let least = least_tensile(find("gunmetal").unwrap()).unwrap();
/// assert_eq!((in_newtons_per_mm2(least.stress).round(), least.condition), (200.0, "sand casting"));
/// ```
#[must_use]
pub fn least_tensile(material: &Material) -> Option<Strength> {
    let held = |property: &Property| match property.measure {
        Measure::TensileStrength(
            Span::Exactly(stress) | Span::Between(stress, _) | Span::AtLeast(stress),
        ) => Some(Strength { stress, condition: property.condition, source: property.source }),
        _ => None,
    };
    let is_open = |row: &Property| matches!(row.measure, Measure::TensileStrength(Span::AtMost(_)));
    if material.properties.iter().any(is_open) {
        return None;
    }
    let all = material.properties.iter().filter_map(held);
    all.min_by(|a, b| a.stress.value.total_cmp(&b.stress.value))
}

/// The part of its tensile strength at which a metal shears; none of a plastic or white metal, which creep.
///
/// # Source
/// Six tenths: common practice, no source; a handbook takes one half for its own length of engagement.
/// Cast iron is nearer the whole: from memory, unconfirmed.
#[must_use]
pub const fn shear_part(material: &Material) -> Option<(f64, Source)> {
    match material.family {
        Family::Plastic | Family::WhiteMetal => None,
        Family::CastIron => Some((1.0, CAST_IRON)),
        _ => Some((STEEL_PART, SIX_TENTHS)),
    }
}

/// The part of its tensile strength at which a screw's thread shears.
pub const STEEL_PART: f64 = 0.6;
/// Where [`STEEL_PART`] comes from.
pub const SIX_TENTHS: Source =
    Source::common_practice("a metal shears at about six tenths of its tensile strength");
const CAST_IRON: Source =
    Source { cite: "cast iron shears at about its whole tensile strength", grade: Grade::Memory };

/// The stress at which a metal's thread shears, by the least tensile strength in print for it.
#[must_use]
pub fn least_shear(material: &Material) -> Option<Strength> {
    let (part, _) = shear_part(material)?;
    least_tensile(material).map(|found| Strength { stress: found.stress * part, ..found })
}
