//! The two stainless steels of the workshop.

use super::sources::{AALCO_303, AALCO_BS_EN, TRAFITEC, mark, practice, recalled_mark};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

const SULPHURISED_OIL: Advice = practice("Use sulphurised cutting oil, and plenty of it.");
const WASH_OFF: Advice =
    practice("Wash sulphurised oil off before the part is heated or silver-soldered.");
const UNKNOWN_BAR: Advice = practice(
    "A salvaged bar sold as stainless may be plain steel and rust in steam: test it, and go by the mark.",
);

pub(super) const STAINLESS_303: Material = Material {
    slug: "stainless-303",
    name: "stainless steel 303",
    aliases: &[],
    known_as: &["303", "free cutting stainless steel", "free machining stainless steel"],
    designations: &[
        mark("1.4305", AALCO_303),
        mark("303S31", AALCO_303),
        mark("EN58M", AALCO_303),
        mark("S30300", AALCO_303),
        recalled_mark("303S21"),
    ],
    met_in: &[],
    refused: None,
    group: Group::Tough,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::NORSEMAN_STAINLESS,
        drilling::NAVY_STAINLESS,
        drilling::NOMINAL_STAINLESS,
        drilling::PROTO_303_DRAWN,
        drilling::PROTO_303_ANNEALED,
    ],
    tapping: &[
        tapping::CHART_300_STAINLESS,
        tapping::CLARKSON_FREE_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::MH_303,
    ],
    reaming: &[],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice(
        "Half a turn on, then back until the chip breaks; once started, do not rest in the cut.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is the free-cutting stainless, but it still hardens under a drill that rubs."),
        practice("Slow speed, steady firm feed, sharp drill: never let it dwell."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("Spot it with a light touch: a heavy centre pop hardens the place to be drilled."),
        WASH_OFF,
        UNKNOWN_BAR,
    ],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const STAINLESS_304: Material = Material {
    slug: "stainless-304",
    name: "stainless steel 304",
    aliases: &[],
    known_as: &["304", "18/8 stainless"],
    designations: &[
        mark("1.4301", TRAFITEC),
        mark("304S15", AALCO_BS_EN),
        mark("304S31", AALCO_BS_EN),
        recalled_mark("EN58E"),
    ],
    met_in: &[],
    refused: None,
    group: Group::Tough,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::NAVY_STAINLESS,
        drilling::NORSEMAN_STAINLESS,
        drilling::NOMINAL_STAINLESS,
        drilling::PROTO_304_DRAWN,
    ],
    tapping: &[
        tapping::CLARKSON_AUSTENITIC,
        tapping::CHART_300_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
    ],
    reaming: &[],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice(
        "A quarter to half a turn on, then back until the chip breaks; do not rest in the cut.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It work-hardens at once under a drill that rubs, and then will not be cut."),
        practice("Slow speed, steady firm feed, sharp drill: never let it dwell."),
        practice("It galls on a tap: good oil, a sharp tap and a larger tapping size."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("Spot it with a light touch: a heavy centre pop hardens the place to be drilled."),
        WASH_OFF,
        UNKNOWN_BAR,
    ],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};
