//! What can hurt the person, said once and used by every material it belongs to.
//!
//! What goes with every job – clamps, eyes, gloves, swarf – is said by the plan, not by a material.

use super::sources::{
    ARIA, BORSODCHEM, DGUV_MAGNESIUM, GREY_IRON_SDS, HSE_FLUIDS, HSE_LEAD, HSE_LEAD_LEAFLET,
    LEADED_SDS, OSHA_BERYLLIUM, POLYMER_FUME, PVC_DATA_SHEET, STAINLESS_SDS, TECHNICAL_ORDER,
    practice, read,
};
use super::{Advice, Caution, Fluid, Work};

pub(super) const IRON_DUST: Caution = Work::Dust.says(practice(
    "The dust is fine and abrasive: keep it out of the lungs, take it up with a vacuum cleaner or a damp brush, and wear a mask when grinding or filing much.",
));

pub(super) const LEAD: Caution = Work::Lead.says(practice(
    "The swarf holds lead: wash your hands before food or drink, and do not sweep the swarf dry.",
));

pub(super) const MAY_HOLD_LEAD: Caution = Work::Lead.says(practice(
    "Some holds lead: wash your hands before food or drink, and do not sweep the swarf dry.",
));

pub(super) const BERYLLIUM: Caution = Work::Stock.says(practice(
    "Unmarked springy copper or bronze may be beryllium copper, whose dust harms the lungs for good: leave it alone.",
));

pub(super) const GRAB: Caution = Work::BreakThrough.says(practice(
    "It can pull the drill in at break-through and spin or lift the work: clamp it, and hold nothing in the hand.",
));

pub(super) const FLUID: Caution = Work::Fluid.says(read(
    "Cutting fluid on the skin can cause dermatitis, and its mist asthma: keep both down and wash after work.",
    HSE_FLUIDS,
));

pub(super) const PARAFFIN: Caution = Work::Paraffin.says(practice(
    "Paraffin burns: keep it from flames and hot swarf, and put oily rags in a closed tin.",
));

pub(super) const LONG_SWARF: Caution = Work::Swarf.says(practice(
    "The swarf comes off in long sharp strings: stop the spindle, then clear them with a hook or brush, never with the fingers.",
));

pub(super) const ALUMINIUM_DUST: Caution = Work::Grinding.says(practice(
    "Fine aluminium dust burns fiercely: do not let it gather, and never grind it on the wheel that grinds steel.",
));

pub(super) const PTFE_FUME: Caution = Work::Fume.says(read(
    "Overheated, it gives off a fume that brings on a fever like influenza: keep it cool and well ventilated.",
    POLYMER_FUME,
));

pub(super) const PTFE_SMOKING: Caution = Work::Background.says(practice(
    "Hotter still, the fume is poisonous: never burn the swarf, do not smoke near it, and wash your hands.",
));

pub(super) const ACETAL_FUME: Caution = Work::Fume.says(practice(
    "Overheated or burnt, it gives off toxic formaldehyde fume: keep the drill sharp and cool, and never burn the swarf.",
));

pub(super) const NYLON_FUME: Caution = Work::Fume.says(practice(
    "Overheated, it melts and gives off an irritating fume: keep the drill sharp and cool, and never burn the swarf.",
));

// Iron and steel.

pub(super) const LEAD_TAKEN_IN: Caution = Work::Background.says(read(
    "Lead harms when its dust or fume is breathed in, or when it is swallowed from unwashed hands.",
    HSE_LEAD,
));

pub(super) const LEADED_STEEL_HEATED: Caution = Work::Heat.says(read(
    "Burning, grinding, brazing or welding can set free the lead in leaded steel.",
    LEADED_SDS,
));

pub(super) const SAND_IN_CASTING: Caution = Work::Grinding.says(read(
    "Grinding a casting with sand left in it can raise dust that holds crystalline silica: clean the sand out before you grind.",
    GREY_IRON_SDS,
));

pub(super) const STAINLESS_FUME: Caution = Work::Grinding.says(read(
    "Dust and fume from grinding, sawing or welding stainless steel irritate the eyes and the lungs: keep them down and ventilate.",
    STAINLESS_SDS,
));

pub(super) const QUENCH: Caution = Work::Heat
    .says(practice("Quenching spits and oil flares: long tongs, a deep bath, eyes covered."));

pub(super) const HARD_PIECES: Caution = Work::Reckoned.says(practice(
    "Hardened steel, and a drill or tap that breaks in it, flies in sharp pieces: cover the eyes.",
));

pub(super) const SPRINGS_BACK: Caution = Work::OtherCuts.says(practice(
    "Wire and coiled strip lash out when cut or let go: hold both ends and cover the eyes.",
));

pub(super) const SCALE: Caution = Work::MarkingOut
    .says(practice("Scale flies off in sharp flakes when it is chipped or filed: cover the eyes."));

pub(super) const GALVANISED: Caution = Work::Heat.says(practice(
    "Galvanised fittings give off zinc fume when they are heated red: take the zinc off first, or do not heat them.",
));

// Copper and its alloys.

pub(super) const LEAD_BY_HAND: Caution = Work::Background.says(read(
    "Lead gets in with food, drink or smoke taken with unwashed hands and face, and stays in the body for years.",
    HSE_LEAD_LEAFLET,
));

pub(super) const BERYLLIUM_DISEASE: Caution = Work::Stock.says(read(
    "Breathing beryllium dust or fume may cause a chronic lung disease that can kill, and lung cancer.",
    OSHA_BERYLLIUM,
));

pub(super) const BERYLLIUM_UNKNOWN: Caution = Work::Stock.says(practice(
    "Treat unknown springy copper or bronze as this until it is proved otherwise, and do not work it to find out.",
));

pub(super) const ZINC_FUME: Caution = Work::Heat.says(practice(
    "Heated to melting, as when silver soldering goes too far, it gives off zinc fume that brings on a fever: ventilate.",
));

pub(super) const NICKEL_SKIN: Caution = Work::Hands.says(practice(
    "It holds nickel, which brings a rash to skin that is sensitive to it: wash, and keep the swarf off the skin.",
));

pub(super) const FINE_DUST: Caution = Work::Grinding.says(practice(
    "Ground or filed much, its dust should not be breathed: take it up with a vacuum cleaner or a damp cloth.",
));

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

/// What any of these materials must not be used for.
pub(super) const PRESSURE: Advice = practice(
    "Not for a boiler or any other pressure part on your own judgement: the national boiler code and the club's boiler inspector decide, before cutting.",
);

pub(super) const MAGNESIUM_WATER: Caution = Work::Fire.says(read(
    "Water and the common liquid or foam extinguishers make burning magnesium burn harder and may set off an explosion: never use them on it.",
    TECHNICAL_ORDER,
));

pub(super) const MAGNESIUM_SMOTHER: Caution = Work::Fire.says(read(
    "Before you start, have dry sand, clean rust-free iron chips or a metal-fire powder within reach: burning swarf is covered, never soaked.",
    TECHNICAL_ORDER,
));

pub(super) const MAGNESIUM_RUB: Caution = Work::Fire.says(read(
    "A blunt tool, a very fine feed or a tool left rubbing can light the chips: use sharp tools, feed well, and draw back at once.",
    TECHNICAL_ORDER,
));

pub(super) const MAGNESIUM_SWARF: Caution = Work::Fire.says(read(
    "Let no swarf gather on the machine or in your clothes; keep it dry in a clean, marked, covered metal tin.",
    TECHNICAL_ORDER,
));

pub(super) const MAGNESIUM_WATER_MIX: Caution = Work::Shuns(Fluid::WaterMix).says(read(
    "A water-mix fluid makes hydrogen with it, and chips wetted with one may catch fire of themselves: use none, and allow no flame or smoking.",
    DGUV_MAGNESIUM,
));

pub(super) const TITANIUM_FIRE: Caution = Work::Background.says(read(
    "Titanium swarf burns: in one works a spark lit a crate of it, a water extinguisher was the wrong one, and sand smothered it.",
    ARIA,
));

pub(super) const TITANIUM_SWARF: Caution = Work::Fire.says(practice(
    "Its swarf burns: keep little of it, in a closed metal tin away from sparks, with dry sand to hand and no water.",
));

pub(super) const ZINC_BURNT: Caution = Work::Heat.says(practice(
    "Overheated or burnt, zinc gives off a white fume that brings on a fever: do not melt, braze or burn it indoors.",
));

pub(super) const LEAD_FUME: Caution = Work::Heat.says(practice(
    "Melted, white metal may give off lead fume, and it spits if ladle or mould is damp: ventilate well, warm them first, and shield face and hands.",
));

pub(super) const PLASTIC_FUME: Caution = Work::Fume.says(practice(
    "Overheated, it gives off an irritating fume: keep the drill sharp and cool, air the room, and never burn the swarf.",
));

pub(super) const PVC_FUME: Caution = Work::Fume.says(read(
    "Overheated, it gives off hydrogen chloride and carbon monoxide: keep the drill sharp and cool, air the room, and never burn the swarf.",
    PVC_DATA_SHEET,
));

pub(super) const PVC_HEAT: Caution = Work::Background
    .says(read("Above 120 °C it breaks down and gives off hydrogen chloride gas.", BORSODCHEM));

pub(super) const SPLINTERS: Caution = Work::BreakThrough.says(practice(
    "It can burst into sharp splinters as the drill breaks through: clamp it on a scrap board and cover your eyes.",
));

pub(super) const PHENOLIC_DUST: Caution = Work::Dust.says(practice(
    "The dust irritates lungs and skin: draw it off as you cut, wear a dust mask, and wash afterwards.",
));

pub(super) const OLD_LAMINATE: Caution = Work::Stock.says(practice(
    "Some old laminates and insulating boards were made with asbestos: if you do not know what a piece is, leave it alone.",
));
