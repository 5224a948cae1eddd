//! The cast bronzes with lead in them: the two gunmetals and leaded bronze for bearings.
//!
//! The phosphor and aluminium bronzes are in `bronze`.

use super::caution::Work;
use super::copper_sentences::{
    BLOWHOLE, BRONZE_TAPPING, CASTING_SKIN, DUB_BRASS, SOLUBLE_OIL, STRAIGHT_FLUTES,
    UNDER_PRESSURE, UNKNOWN_STOCK, WHICH_BRONZE,
};
use super::property::{at_least, exactly};
use super::sources::{
    CASTINGS_C83600, CDA_GUNMETAL, FINKELSTEIN_CC495K, FITSCHER, KEMPER, KMM_CC492K, KMM_CC496K,
    PW_FOUNDRY, mark, practice, read, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, HardnessScale, MachinabilityBasis,
    Material, PressureWork, Property, dangers,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const BACK_OFF_ONCE: Advice =
    practice("Its chips are short: turn back once a turn, and clear a blind hole often.");
const CUTS_FREELY: Advice =
    practice("It cuts freely to short chips, and small holes are often drilled dry.");
const MAY_GRAB: Advice = recalled("It may grab the drill as it breaks through: dub the lips.");
const BEST_CLASS: Advice = read("The foundry puts it in machinability class 1, the best.", KEMPER);
const CAST_OR_BAR: Advice = practice(
    "Cast stick may be soft at the core or drawn in the middle: bore it before you trust the size.",
);

pub(super) const GUNMETAL: Material = Material {
    slug: "gunmetal",
    name: "gunmetal",
    aliases: &["leaded-gunmetal"],
    known_as: &["gun metal", "red bronze", "85-5-5-5", "gunmetal casting"],
    designations: &[
        mark("LG2", CDA_GUNMETAL).old(),
        mark("CC491K", KEMPER),
        mark("CuSn5Zn5Pb5-C", KEMPER),
        mark("G-CuSn5ZnPb", KEMPER).old(),
        mark("2.1096.01", KEMPER).old(),
        mark("C83600", KEMPER).abroad(),
    ],
    met_in: &[
        practice(
            "Castings for cylinders, steam chests, glands, pump bodies, axleboxes and wheels, and cast stick.",
        ),
        practice("The usual metal of boiler bushes and steam fittings, where the drawing says so."),
        read(
            "The foundry names valve housings for water and steam, pump bodies and thin-walled castings.",
            KEMPER,
        ),
    ],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::Bronze,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.7), "", KEMPER),
        Property::tensile(exactly(250.0), "continuous and centrifugal casting", FITSCHER),
        Property::proof(exactly(110.0), "continuous and centrifugal casting", FITSCHER),
        Property::elongation(exactly(13.0), "continuous and centrifugal casting", FITSCHER),
        Property::hardness(HardnessScale::Brinell, exactly(65.0), "continuous and centrifugal casting", FITSCHER),
        Property::tensile(exactly(200.0), "sand casting", KEMPER),
        Property::proof(exactly(90.0), "sand casting", KEMPER),
        Property::elongation(exactly(13.0), "sand casting", KEMPER),
        Property::hardness(HardnessScale::Brinell, exactly(60.0), "sand casting", KEMPER),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(84.0), "C83600", CASTINGS_C83600),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRONZE, drilling::JET_BRASS_BRONZE],
    tapping: &[
        tapping::CHART_CAST_BRONZE,
        tapping::LAVALLEE_BRONZE,
        tapping::CLARKSON_BRASS_BRONZE,
        tapping::SUPPLIER_BRONZE,
    ],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: BACK_OFF_ONCE,
    drill_advice: &[MAY_GRAB, DUB_BRASS],
    tap_advice: &[STRAIGHT_FLUTES],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[CUTS_FREELY, MAY_GRAB, BEST_CLASS],
    not_for: &[UNDER_PRESSURE, practice("Not for a part that must bend or spring: it breaks.")],
    salvage: &[
        practice(
            "Old valves, cocks, taps and pump parts of red colour; brass under the scale is yellow, gunmetal pink to red.",
        ),
        practice(
            "A valve body may be sound and its thin skin full of scale or solder: break one and look at the grain.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[Work::MarkingOut.says(CASTING_SKIN), Work::Tapping.says(BLOWHOLE)],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_BY_HAND,
        dangers::GRAB,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};

pub(super) const GUNMETAL_LG4: Material = Material {
    slug: "gunmetal-lg4",
    name: "gunmetal LG4",
    aliases: &[],
    known_as: &["87-7-3-3", "high tin gunmetal"],
    designations: &[
        mark("LG4", KMM_CC492K).old(),
        mark("CC492K", KEMPER),
        mark("CuSn7Zn2Pb3-C", KEMPER),
        mark("G-CuSn6ZnNi", KEMPER).old(),
        mark("2.1093.01", KEMPER).old(),
        mark("C92400", KMM_CC492K).abroad(),
    ],
    met_in: &[
        practice(
            "Cast stick and castings for bushes, valve bodies, pump parts and glands that want more than LG2 bears.",
        ),
        read(
            "Foundries name bearings, piston pin bushes, valve seat rings and guide bushes.",
            KMM_CC492K,
        ),
    ],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::Bronze,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.7), "", KEMPER),
        Property::tensile(exactly(230.0), "sand casting", KEMPER),
        Property::proof(exactly(130.0), "sand casting", KEMPER),
        Property::elongation(exactly(14.0), "sand casting", KEMPER),
        Property::hardness(HardnessScale::Brinell, exactly(65.0), "sand casting", KEMPER),
        Property::tensile(at_least(270.0), "continuous casting", KMM_CC492K),
        Property::proof(at_least(130.0), "continuous casting", KMM_CC492K),
        Property::elongation(at_least(12.0), "continuous casting", KMM_CC492K),
        Property::hardness(HardnessScale::Brinell, at_least(70.0), "continuous casting", KMM_CC492K),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRONZE, drilling::JET_BRASS_BRONZE],
    tapping: &[
        tapping::CHART_CAST_BRONZE,
        tapping::LAVALLEE_BRONZE,
        tapping::CLARKSON_BRASS_BRONZE,
        tapping::SUPPLIER_BRONZE,
    ],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: BACK_OFF_ONCE,
    drill_advice: &[MAY_GRAB, DUB_BRASS],
    tap_advice: &[STRAIGHT_FLUTES],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It cuts as LG2 does, a little harder for the tin in it."),
        MAY_GRAB,
        BEST_CLASS,
    ],
    not_for: &[UNDER_PRESSURE, practice("Not for a part that must bend or spring: it breaks.")],
    salvage: &[
        practice("Nobody tells LG4 from LG2 by eye: if the drawing asks for it, buy it marked."),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::MarkingOut.says(CASTING_SKIN),
        Work::Tapping.says(BLOWHOLE),
        Work::OtherCuts.says(CAST_OR_BAR),
    ],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_BY_HAND,
        dangers::GRAB,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};

pub(super) const LEADED_BRONZE: Material = Material {
    slug: "leaded-bronze",
    name: "leaded bronze",
    aliases: &[],
    known_as: &["leaded bearing bronze", "bearing bronze", "lead bronze", "80-10-10"],
    designations: &[
        mark("LB2", FINKELSTEIN_CC495K).old(),
        mark("CC495K", FINKELSTEIN_CC495K),
        mark("CuSn10Pb10-C", FINKELSTEIN_CC495K),
        mark("LB1", KMM_CC496K).old(),
        mark("CC496K", KMM_CC496K),
        mark("CuSn7Pb15-C", KMM_CC496K),
        recalled_mark("CC493K"),
        mark("SAE 64", FINKELSTEIN_CC495K).abroad(),
        recalled_mark("SAE 660").abroad(),
        mark("C93700", PW_FOUNDRY).abroad(),
        mark("C93200", PW_FOUNDRY).abroad(),
    ],
    met_in: &[
        practice(
            "Cast stick and tube for plain bearings, big ends, axleboxes, thrust washers and slides.",
        ),
        practice("The bearing to choose where the shaft is soft and the oil not always there."),
    ],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::Bronze,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.86), "CC495K", FINKELSTEIN_CC495K),
        Property::tensile(at_least(220.0), "CC495K, continuous casting", FINKELSTEIN_CC495K),
        Property::proof(at_least(110.0), "CC495K, continuous casting", FINKELSTEIN_CC495K),
        Property::elongation(at_least(8.0), "CC495K, continuous casting", FINKELSTEIN_CC495K),
        Property::hardness(HardnessScale::Brinell, at_least(70.0), "CC495K, continuous casting", FINKELSTEIN_CC495K),
        Property::tensile(at_least(200.0), "CC496K, continuous casting", KMM_CC496K),
        Property::proof(at_least(90.0), "CC496K, continuous casting", KMM_CC496K),
        Property::hardness(HardnessScale::Brinell, at_least(65.0), "CC496K, continuous casting", KMM_CC496K),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(80.0), "CC495K", FINKELSTEIN_CC495K),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRONZE, drilling::JET_BRASS_BRONZE],
    tapping: &[
        tapping::CHART_CAST_BRONZE,
        tapping::LAVALLEE_BRONZE,
        tapping::CLARKSON_BRASS_BRONZE,
        tapping::SUPPLIER_BRONZE,
    ],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: BACK_OFF_ONCE,
    drill_advice: &[
        practice("Stone a small flat on the drill's lips: it is soft and pulls the drill in."),
        DUB_BRASS,
    ],
    tap_advice: &[
        practice("The crests crumble if the thread is cut too full: do not drill small."),
        STRAIGHT_FLUTES,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        CUTS_FREELY,
        practice(
            "It reams to a fine finish; ream last, after the bush is pressed in and has closed.",
        ),
    ],
    not_for: &[
        practice(
            "Not for studs or threads under load: it is weak, put a steel insert or go through with a bolt.",
        ),
        UNDER_PRESSURE,
        practice("Not for silver soldering: the lead sweats out and the bearing is spoilt."),
    ],
    salvage: &[
        practice(
            "Old machine bearings; the fresh cut is greyer and smears where gunmetal cuts clean.",
        ),
        practice("A worn bearing may hold grit and iron in its face: bore it out before reaming."),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::Stock.says(WHICH_BRONZE),
        Work::MarkingOut.says(CASTING_SKIN),
        Work::OtherCuts.says(CAST_OR_BAR),
    ],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_BY_HAND,
        dangers::GRAB,
        dangers::FINE_DUST,
        dangers::FLUID,
    ],
};
