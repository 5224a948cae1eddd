//! The austenitic stainless steels of the workshop: 303, 304 and 316.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::caution::Work;
use super::ferrous::{PRESSURE_BY_CODE, RECALLED, SHARP_TAP, SPIRAL_POINT, SPLIT_POINT};
use super::property::{Property, at_least, at_most, between, exactly};
use super::sources::{
    AALCO_303, AALCO_303_BAR, AALCO_316L, AALCO_BS_EN, ENGINEERING_TOOLBOX, METAL_SUPPLIES_316,
    TRAFITEC, mark, practice, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const SULPHURISED_OIL: Advice =
    practice("Use sulphurised cutting oil, and plenty of it.");
pub(super) const WASH_OFF: Advice =
    practice("Wash sulphurised oil off before the part is heated or silver-soldered.");
pub(super) const UNKNOWN_BAR: Advice = practice(
    "A salvaged bar sold as stainless may be plain steel and rust in steam: test it, and go by the mark.",
);
const LIGHT_POP: Advice =
    practice("Spot it with a light touch: a heavy centre pop hardens the place to be drilled.");
const NEVER_DWELL: Advice =
    practice("Slow speed, steady firm feed, sharp drill: never let it dwell.");
const NO_MAGNET: Advice = practice(
    "A magnet hardly takes hold of it unless it has been cold worked; plain steel and the 400 grades it grips.",
);
const SEIZES: Advice = practice(
    "Not for screw and nut both of it, run dry: they seize, so grease them or make one of another metal.",
);

pub(super) const STAINLESS_303: Material = Material {
    slug: "stainless-303",
    name: "stainless steel 303",
    aliases: &[],
    known_as: &["303", "free cutting stainless steel", "free machining stainless steel"],
    designations: &[
        mark("1.4305", AALCO_303),
        mark("303S31", AALCO_303).old(),
        mark("EN58M", AALCO_303).old(),
        recalled_mark("303S21").old(),
        mark("S30300", AALCO_303).abroad(),
    ],
    met_in: &[practice(
        "Round and hexagon bar for valve spindles, steam fittings, screws, axles and handrails.",
    )],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(8.03), "", AALCO_303_BAR),
        Property::tensile(between(500.0, 750.0), "bar to 160 mm", AALCO_303_BAR),
        Property::proof(at_least(190.0), "bar to 160 mm", AALCO_303_BAR),
        Property::hardness(Brinell, at_most(230.0), "bar to 160 mm", AALCO_303_BAR),
        Property::hardness(Brinell, at_most(262.0), "ASTM A582", AALCO_303),
        Property::machinability(Steel1212, exactly(78.0), "annealed", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NORSEMAN_STAINLESS,
        drilling::NAVY_STAINLESS,
        drilling::JET_STAINLESS,
        drilling::NOMINAL_STAINLESS,
        drilling::GUIDE_FREE_STAINLESS,
        drilling::PROTO_303_DRAWN,
        drilling::PROTO_303_ANNEALED,
    ],
    tapping: &[
        tapping::CHART_300_STAINLESS,
        tapping::CLARKSON_FREE_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::MH_303,
        tapping::ORDER_FREE_300,
    ],
    reaming: &[reaming::STAINLESS_303_DRAWN, reaming::STAINLESS_303_ANNEALED],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice(
        "Half a turn on, then back until the chip breaks; once started, do not rest in the cut.",
    ),
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is the free-cutting stainless, but it still hardens under a drill that rubs."),
        NEVER_DWELL,
    ],
    not_for: &[
        practice("Not for welding: the sulphur in it cracks the joint."),
        practice("Not for salt water, where 316 stands better."),
        SEIZES,
        PRESSURE_BY_CODE,
    ],
    salvage: &[NO_MAGNET, UNKNOWN_BAR],
    cautions: &[Work::Popping.says(LIGHT_POP), Work::Heat.says(WASH_OFF)],
    dangers: &[dangers::LONG_SWARF, dangers::STAINLESS_FUME, dangers::FLUID],
};

pub(super) const STAINLESS_304: Material = Material {
    slug: "stainless-304",
    name: "stainless steel 304",
    aliases: &[],
    known_as: &["304", "18/8 stainless"],
    designations: &[
        mark("1.4301", TRAFITEC),
        mark("304S15", AALCO_BS_EN).old(),
        mark("304S31", AALCO_BS_EN).old(),
        recalled_mark("EN58E").old(),
    ],
    met_in: &[practice(
        "Sheet, tube, wire and fasteners: cladding, chimney liners, lagging bands, tanks, cables and bought screws.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(8.0), "", RECALLED),
        Property::density(exactly(7.9), "as other tables have it", RECALLED),
        Property::tensile(between(500.0, 700.0), "bar", TRAFITEC),
        Property::proof(at_least(190.0), "bar", TRAFITEC),
        Property::hardness(Brinell, at_most(215.0), "bar", TRAFITEC),
        Property::machinability(Steel1212, exactly(45.0), "annealed", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NAVY_STAINLESS,
        drilling::JET_STAINLESS,
        drilling::NORSEMAN_STAINLESS,
        drilling::NOMINAL_STAINLESS,
        drilling::GUIDE_HARDENING_STAINLESS,
        drilling::PROTO_304_DRAWN,
        drilling::PROTO_304_ANNEALED,
    ],
    tapping: &[
        tapping::CLARKSON_AUSTENITIC,
        tapping::CHART_300_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::CATALOGUE_AUSTENITIC,
        tapping::ORDER_300,
    ],
    reaming: &[reaming::STAINLESS_304_DRAWN, reaming::STAINLESS_304_ANNEALED],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice(
        "A quarter to half a turn on, then back until the chip breaks; do not rest in the cut.",
    ),
    drill_advice: &[
        SPLIT_POINT,
        practice("Clamp thin sheet between scrap plates: it springs, rubs and hardens otherwise."),
    ],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It work-hardens at once under a drill that rubs, and then will not be cut."),
        NEVER_DWELL,
        practice("It galls on a tap: good oil, a sharp tap and a larger tapping size."),
    ],
    not_for: &[SEIZES, practice("Not for salt water, where 316 stands better."), PRESSURE_BY_CODE],
    salvage: &[
        NO_MAGNET,
        UNKNOWN_BAR,
        practice(
            "Sinks, catering ware and milk pipe are of it; bought A2 screws are the same family.",
        ),
    ],
    cautions: &[Work::Popping.says(LIGHT_POP), Work::Heat.says(WASH_OFF)],
    dangers: &[dangers::LONG_SWARF, dangers::STAINLESS_FUME, dangers::FLUID],
};

pub(super) const STAINLESS_316: Material = Material {
    slug: "stainless-316",
    name: "stainless steel 316",
    aliases: &[],
    known_as: &["316", "316L", "marine grade stainless", "18/10 stainless"],
    designations: &[
        mark("1.4401", METAL_SUPPLIES_316),
        mark("1.4404", AALCO_316L),
        mark("316S11", AALCO_316L).old(),
        recalled_mark("316S31").old(),
        recalled_mark("EN58J").old(),
        mark("EN58H", METAL_SUPPLIES_316).old(),
        mark("S31600", METAL_SUPPLIES_316).abroad(),
        mark("S31603", AALCO_316L).abroad(),
    ],
    met_in: &[practice(
        "Marine fittings, propeller shafts, feed and water fittings, bought screws marked A4, and food and chemical pipe.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(8.0), "", METAL_SUPPLIES_316),
        Property::tensile(between(520.0, 680.0), "bar and section", METAL_SUPPLIES_316),
        Property::proof(at_least(220.0), "bar and section", METAL_SUPPLIES_316),
        Property::elongation(at_least(40.0), "bar and section", METAL_SUPPLIES_316),
        Property::tensile(between(500.0, 700.0), "bar", RECALLED),
        Property::proof(at_least(200.0), "bar", RECALLED),
        Property::hardness(Brinell, at_most(215.0), "bar", RECALLED),
        Property::machinability(Steel1212, exactly(45.0), "annealed", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NAVY_STAINLESS,
        drilling::JET_STAINLESS,
        drilling::NORSEMAN_STAINLESS,
        drilling::NOMINAL_STAINLESS,
        drilling::GUIDE_HARDENING_STAINLESS,
        drilling::PROTO_316,
    ],
    tapping: &[
        tapping::CLARKSON_AUSTENITIC,
        tapping::CHART_300_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::CATALOGUE_AUSTENITIC,
        tapping::ORDER_300,
    ],
    reaming: &[reaming::STAINLESS_316],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice(
        "A quarter to half a turn on, then back until the chip breaks; do not rest in the cut.",
    ),
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        recalled("It work-hardens."),
        practice(
            "It is as 304 and a little tougher: once a drill has rubbed, that place will not be cut.",
        ),
        NEVER_DWELL,
        practice("It galls on a tap: good oil, a sharp tap and a larger tapping size."),
    ],
    not_for: &[SEIZES, PRESSURE_BY_CODE],
    salvage: &[
        NO_MAGNET,
        practice(
            "Nothing in the workshop tells it from 304: only the mark or a chemical test does.",
        ),
    ],
    cautions: &[Work::Popping.says(LIGHT_POP), Work::Heat.says(WASH_OFF)],
    dangers: &[dangers::LONG_SWARF, dangers::STAINLESS_FUME, dangers::FLUID],
};
