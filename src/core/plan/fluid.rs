//! What is put on a drill that goes through two materials at once.

use super::{Part, drilling};
use crate::tables::drills::Drill;
use crate::tables::materials::{Family, Fluid, Material, Work};

use super::HoleSpec;
use super::drilling::Metals;

/// What harms both in different ways leaves nothing to put on.
const NOTHING: &str = "Drill it dry, in short pecks: oil harms the one and water the other.";

/// Steel wants oil, and magnesium bears one kind.
const MINERAL_OIL: &str = "Use neat mineral oil, which serves both; never a water-mix.";

/// Whether a drill through it wants oil.
const fn wants_oil(material: &Material) -> bool {
    matches!(material.family, Family::Steel | Family::Stainless | Family::Nickel)
}

/// The fluids a material must not meet.
fn shunned(material: &'static Material) -> impl Iterator<Item = Fluid> {
    let all = material.cautions.iter().chain(material.dangers);
    all.filter_map(|caution| match caution.work {
        Work::Shuns(fluid) => Some(fluid),
        _ => None,
    })
}

/// The lubricant of a drill through both: the tougher's, unless a fluid harms one of them.
pub(super) fn for_both(
    spec: &HoleSpec,
    drill: &'static Drill,
    both: [&'static Material; 2],
) -> Option<&'static str> {
    let own = |metals| drilling::step(spec, Part::Both, drill, metals, None).lubricant;
    let [upper, lower] = both;
    match both.map(|material| shunned(material).next()) {
        [None, None] => own(Metals::both(upper, lower)),
        [Some(Fluid::WaterMix), None] if wants_oil(lower) => Some(MINERAL_OIL),
        [None, Some(Fluid::WaterMix)] if wants_oil(upper) => Some(MINERAL_OIL),
        [Some(_), None] => own(Metals::one(upper)),
        [None, Some(_)] => own(Metals::one(lower)),
        [Some(one), Some(other)] if one == other => own(Metals::both(upper, lower)),
        [Some(_), Some(_)] => Some(NOTHING),
    }
}
