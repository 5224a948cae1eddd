//! What can hurt the person, said once and used by every material it belongs to.
//!
//! What goes with every job – clamps, eyes, gloves, swarf – is the plan's to say, not a material's.

use super::Advice;
use super::sources::{HSE_FLUIDS, HSE_LEAD, OSHA_BERYLLIUM, POLYMER_FUME, practice, read};

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

// Copper and its alloys.

pub(super) const LEAD_BY_HAND: Advice = read(
    "Lead gets in with food, drink or smoke taken with unwashed hands and face, and stays in the body for years.",
    HSE_LEAD,
);

pub(super) const BERYLLIUM_DISEASE: Advice = read(
    "Breathing beryllium dust or fume may cause a chronic lung disease that can kill, and lung cancer.",
    OSHA_BERYLLIUM,
);

pub(super) const BERYLLIUM_UNKNOWN: Advice = practice(
    "Treat unknown springy copper or bronze as this until it is proved otherwise, and do not work it to find out.",
);

pub(super) const ZINC_FUME: Advice = practice(
    "Heated to melting, as when silver soldering goes too far, it gives off zinc fume that brings on a fever: ventilate.",
);

pub(super) const NICKEL_SKIN: Advice = practice(
    "It holds nickel, which brings a rash to skin that is sensitive to it: wash, and keep the swarf off the skin.",
);

pub(super) const FINE_DUST: Advice = practice(
    "Ground or filed much, its dust should not be breathed: take it up with a vacuum cleaner or a damp cloth.",
);

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
