//! What can hurt the person, said once and used by every material it belongs to.
//!
//! What goes with every job – clamps, eyes, gloves, swarf – is the plan's to say, not a material's.

use super::Advice;
use super::sources::{GREY_IRON_SDS, HSE_LEAD, LEADED_SDS, STAINLESS_SDS};
use super::sources::{HSE_FLUIDS, POLYMER_FUME, practice, read};

pub(super) const IRON_DUST: Advice = practice(
    "The dust is fine and abrasive: keep it out of the lungs, take it up with a vacuum cleaner or a damp brush, and wear a mask when grinding or filing much.",
);

pub(super) const LEAD: Advice = practice(
    "It holds lead: wash your hands before food or drink, and do not sweep the swarf dry.",
);

pub(super) const MAY_HOLD_LEAD: Advice = practice(
    "Some of it holds lead: wash your hands before food or drink, and do not sweep the swarf dry.",
);

pub(super) const BERYLLIUM: Advice = practice(
    "Unmarked springy copper or bronze may be beryllium copper, whose dust harms the lungs for good: leave it alone.",
);

pub(super) const GRAB: Advice = practice(
    "It can pull the drill in at break-through and spin or lift the work: clamp it, and hold nothing in the hand.",
);

pub(super) const FLUID: Advice = read(
    "Cutting fluid on the skin can cause dermatitis, and its mist asthma: keep both down and wash after work.",
    HSE_FLUIDS,
);

pub(super) const PARAFFIN: Advice = practice(
    "Paraffin burns: keep it from flames and hot swarf, and put oily rags in a closed tin.",
);

pub(super) const LONG_SWARF: Advice = practice(
    "The swarf comes off in long sharp strings: stop the spindle, then clear them with a hook or brush, never with the fingers.",
);

pub(super) const ALUMINIUM_DUST: Advice = practice(
    "Fine aluminium dust burns fiercely: do not let it gather, and never grind it on the wheel that grinds steel.",
);

pub(super) const PTFE_FUME: Advice = read(
    "Overheated, it gives off a fume that brings on a fever like influenza: keep it cool and well ventilated.",
    POLYMER_FUME,
);

pub(super) const PTFE_SMOKING: Advice = practice(
    "Hotter still, the fume is poisonous: never burn the swarf, do not smoke near it, and wash your hands.",
);

pub(super) const ACETAL_FUME: Advice = practice(
    "Overheated or burnt, it gives off toxic formaldehyde fume: keep the drill sharp and cool, and never burn the swarf.",
);

pub(super) const NYLON_FUME: Advice = practice(
    "Overheated, it melts and gives off an irritating fume: keep the drill sharp and cool, and never burn the swarf.",
);

// Iron and steel.

pub(super) const LEAD_TAKEN_IN: Advice = read(
    "Lead harms when its dust or fume is breathed in, or when it is swallowed from unwashed hands.",
    HSE_LEAD,
);

pub(super) const LEADED_STEEL_HEATED: Advice = read(
    "Burning, grinding, brazing or welding can set free the lead in leaded steel.",
    LEADED_SDS,
);

pub(super) const SAND_IN_CASTING: Advice = read(
    "Grinding a casting with sand left in it can raise dust that holds crystalline silica: clean the sand out before you grind.",
    GREY_IRON_SDS,
);

pub(super) const STAINLESS_FUME: Advice = read(
    "Dust and fume from grinding, sawing or welding stainless steel irritate the eyes and the lungs: keep them down and ventilate.",
    STAINLESS_SDS,
);

pub(super) const QUENCH: Advice =
    practice("Quenching spits and oil flares: long tongs, a deep bath, eyes covered.");

pub(super) const HARD_PIECES: Advice = practice(
    "Hardened steel, and a drill or tap that breaks in it, flies in sharp pieces: cover the eyes.",
);

pub(super) const SPRINGS_BACK: Advice = practice(
    "Wire and coiled strip lash out when cut or let go: hold both ends and cover the eyes.",
);

pub(super) const SCALE: Advice =
    practice("Scale flies off in sharp flakes when it is chipped or filed: cover the eyes.");

pub(super) const GALVANISED: Advice = practice(
    "Galvanised fittings give off zinc fume when they are heated red: take the zinc off first, or do not heat them.",
);

// Copper and its alloys.

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
