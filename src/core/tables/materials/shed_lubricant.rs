//! What goes on the drill and on the tap, in the words of the shed: the plan and the calculators say it.
//! The handbook's mixture is the material's own row, and stands on its page beside it.

use super::sources::practice;
use super::{Advice, Chips, Family, Material};

const DRY: Advice = practice("Dry.");
const SMEAR: Advice = practice("A smear of cutting oil.");
const SMEAR_ON_TAP: Advice = practice("A smear of cutting oil on the tap.");
const DRY_OR_SMEAR: Advice = practice("Dry, or a smear of cutting oil on the tap.");
const CUTTING_OIL: Advice = practice("Cutting oil, brushed on.");
const PLENTY: Advice = practice("Plenty of cutting oil.");
const PARAFFIN: Advice = practice("Paraffin or white spirit; keep it from any flame.");
const LITTLE_PARAFFIN: Advice = practice("A little paraffin; keep it from any flame.");
const DROP_OF_OIL: Advice = practice("A drop of oil.");
const COMPOUND: Advice = practice("A proper tapping compound.");
const MINERAL_OIL: Advice =
    practice("A drop of mineral oil on the tap, never anything with water.");
const DRY_NO_WATER: Advice = practice("Dry, and never anything with water.");
const DRY_OR_WATER: Advice = practice("Dry, or plain water; no oil, no spirit.");
const SOAPY: Advice = practice("Soapy water; no oil, no spirit.");
const NONE: Advice = practice("None makes it safe: leave it alone.");

impl Material {
    /// What to put on the drill.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub const fn on_the_drill(&self) -> Advice {
        if self.refused.is_some() {
            return NONE;
        }
        match self.family {
            Family::CastIron | Family::WhiteMetal => DRY,
            Family::Brass | Family::Bronze => match self.chips {
                Chips::Short => DRY,
                Chips::Long => SMEAR,
            },
            Family::Copper => DROP_OF_OIL,
            Family::Steel => CUTTING_OIL,
            Family::Stainless | Family::Nickel | Family::Titanium => PLENTY,
            Family::Aluminium => PARAFFIN,
            Family::Zinc => LITTLE_PARAFFIN,
            Family::Magnesium => DRY_NO_WATER,
            Family::Plastic if self.oil_crazes() => DRY_OR_WATER,
            Family::Plastic => DRY,
        }
    }

    /// What to put on the tap.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub const fn on_the_tap(&self) -> Advice {
        if self.refused.is_some() {
            return NONE;
        }
        match self.family {
            Family::CastIron => match self.chips {
                Chips::Short => DRY_OR_SMEAR,
                Chips::Long => SMEAR_ON_TAP,
            },
            Family::Brass | Family::Bronze => SMEAR_ON_TAP,
            Family::Copper | Family::WhiteMetal => DROP_OF_OIL,
            Family::Steel => CUTTING_OIL,
            Family::Stainless | Family::Nickel | Family::Titanium => COMPOUND,
            Family::Aluminium => PARAFFIN,
            Family::Zinc => LITTLE_PARAFFIN,
            Family::Magnesium => MINERAL_OIL,
            Family::Plastic if self.oil_crazes() => SOAPY,
            Family::Plastic => DRY,
        }
    }

    /// Whether oil or spirit cracks it.
    const fn oil_crazes(&self) -> bool {
        matches!(self.slug.as_bytes(), b"acrylic" | b"polycarbonate")
    }
}
