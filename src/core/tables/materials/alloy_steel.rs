//! Alloy steels for parts that carry load: EN16M, EN19 and EN24T.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::ferrous::{
    ALLOY_TAPPING_OIL, PRESSURE_BY_CODE, QUARTER_TURN, RECALLED, SHARP_TAP, SOLUBLE_OIL,
    SPIRAL_POINT, SPLIT_POINT,
};
use super::property::{Property, between, exactly};
use super::sources::{
    ENGINEERING_TOOLBOX, HEYE_EN24, NIFTY_EN16, NJR_EN19, ODYSSEY_EN24, mark, practice,
    recalled_mark,
};
use super::{Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const TEMPERED: Advice = practice(
    "Bought in condition T it is already hardened and tempered, and is drilled and tapped as it comes.",
);
const STRONG_AND_TOUGH: Advice = practice(
    "It is strong and springy: slow speed, firm steady feed, a sharp drill and plenty of oil.",
);
const NO_WELDING: Advice = practice(
    "Not for welding or brazing in condition T: the heat spoils the temper and the joint may crack.",
);
const UNKNOWN_SHAFT: Advice = practice(
    "Half-shafts, high-tensile bolts and spanners pass for it; which steel and what temper nobody knows, so file it first and trust it with nothing that can hurt.",
);
const LOSES_ITS_TEMPER: Advice =
    practice("Heated red it loses its temper: it must then be hardened and tempered anew.");
// Bar in condition T is near 1,000 N/mm²: a forming tap of small size does not live in it.
const FORMING: FormingTap = FormingTap::Refuse;

pub(super) const EN16: Material = Material {
    slug: "alloy-steel-en16",
    name: "alloy steel EN16",
    aliases: &[],
    known_as: &["EN16T", "EN16R", "free-cutting alloy steel", "manganese-molybdenum steel"],
    designations: &[
        recalled_mark("EN16M").old(),
        recalled_mark("606M36").old(),
        mark("EN16", NIFTY_EN16).old(),
        mark("605M36", NIFTY_EN16).old(),
        mark("605M36T", NIFTY_EN16).old(),
    ],
    met_in: &[practice(
        "High-tensile studs, bolts, axles, crankpins, spindles and gears; EN16M has sulphur added and cuts more freely.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(850.0, 1000.0), "605M36, condition T", NIFTY_EN16),
        Property::proof(exactly(680.0), "605M36, condition T", NIFTY_EN16),
        Property::hardness(Brinell, between(248.0, 302.0), "605M36, condition T", NIFTY_EN16),
        Property::elongation(exactly(13.0), "605M36, condition T", NIFTY_EN16),
        Property::tensile(between(775.0, 925.0), "605M36, condition S", NIFTY_EN16),
        Property::proof(exactly(585.0), "605M36, condition S", NIFTY_EN16),
        Property::hardness(Brinell, between(223.0, 277.0), "605M36, condition S", NIFTY_EN16),
        Property::tensile(between(700.0, 850.0), "605M36, condition R", NIFTY_EN16),
        Property::proof(exactly(525.0), "605M36, condition R", NIFTY_EN16),
        Property::hardness(Brinell, between(201.0, 255.0), "605M36, condition R", NIFTY_EN16),
    ],
    drilling: &[
        drilling::NAVY_ALLOY,
        drilling::PROTO_FREE_ALLOY_TEMPERED,
        drilling::PROTO_FREE_ALLOY_MEDIUM,
        drilling::PROTO_FREE_ALLOY_ANNEALED,
        drilling::PROTO_FREE_ALLOY_HARD,
    ],
    tapping: &[
        tapping::CLARKSON_TEMPERED_ALLOY,
        tapping::CLARKSON_ALLOY_STEEL,
        tapping::SUPPLIER_ALLOY,
        tapping::CATALOGUE_MEDIUM_CARBON,
    ],
    reaming: &[
        reaming::FREE_ALLOY_TEMPERED,
        reaming::FREE_ALLOY_MEDIUM,
        reaming::FREE_ALLOY_ANNEALED,
        reaming::FREE_ALLOY_HARD,
    ],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: ALLOY_TAPPING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FORMING,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        STRONG_AND_TOUGH,
        TEMPERED,
        practice(
            "EN16M is the kindest of the alloy steels to drill and tap; plain EN16 strings more.",
        ),
    ],
    not_for: &[PRESSURE_BY_CODE, NO_WELDING],
    salvage: &[UNKNOWN_SHAFT],
    cautions: &[LOSES_ITS_TEMPER],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const EN19: Material = Material {
    slug: "alloy-steel-en19",
    name: "alloy steel EN19",
    aliases: &[],
    known_as: &["EN19T", "chromium-molybdenum steel", "chrome-moly steel", "4140"],
    designations: &[
        mark("EN19", NJR_EN19).old(),
        mark("709M40", NJR_EN19).old(),
        recalled_mark("42CrMo4"),
        recalled_mark("1.7225"),
        mark("AISI 4140", NJR_EN19).abroad(),
    ],
    met_in: &[practice(
        "High-tensile studs and bolts, axles, crankshafts, connecting rods, arbors and machine spindles.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(850.0, 1000.0), "condition T, section to 102 mm", NJR_EN19),
        Property::proof(exactly(665.0), "condition T, section to 102 mm", NJR_EN19),
        Property::hardness(
            Brinell,
            between(248.0, 302.0),
            "condition T, section to 102 mm",
            NJR_EN19,
        ),
        Property::tensile(between(770.0, 930.0), "condition S", NJR_EN19),
        Property::proof(exactly(570.0), "condition S", NJR_EN19),
        Property::hardness(Brinell, between(223.0, 277.0), "condition S", NJR_EN19),
        Property::tensile(between(690.0, 850.0), "condition R", NJR_EN19),
        Property::proof(exactly(480.0), "condition R", NJR_EN19),
        Property::hardness(Brinell, between(201.0, 255.0), "condition R", NJR_EN19),
        Property::machinability(
            Steel1212,
            exactly(66.0),
            "AISI 4140, annealed",
            ENGINEERING_TOOLBOX,
        ),
    ],
    drilling: &[drilling::NAVY_ALLOY, drilling::JET_ALLOY_HARD],
    tapping: &[
        tapping::CLARKSON_TEMPERED_ALLOY,
        tapping::CLARKSON_ALLOY_STEEL,
        tapping::SUPPLIER_ALLOY,
        tapping::CATALOGUE_MEDIUM_CARBON,
    ],
    reaming: &[reaming::FREE_ALLOY_TEMPERED, reaming::FREE_ALLOY_HARD],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: ALLOY_TAPPING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FORMING,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[STRONG_AND_TOUGH, TEMPERED],
    not_for: &[PRESSURE_BY_CODE, NO_WELDING],
    salvage: &[UNKNOWN_SHAFT],
    cautions: &[LOSES_ITS_TEMPER],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const EN24: Material = Material {
    slug: "alloy-steel-en24",
    name: "alloy steel EN24",
    aliases: &[],
    known_as: &["EN24T", "817M40T", "nickel-chromium-molybdenum steel", "4340"],
    designations: &[
        mark("EN24", HEYE_EN24).old(),
        mark("817M40", HEYE_EN24).old(),
        mark("34CrNiMo6", HEYE_EN24),
        mark("1.6582", HEYE_EN24),
        mark("AISI 4340", HEYE_EN24).abroad(),
    ],
    met_in: &[practice(
        "The parts that must not fail: crankshafts, connecting rods, axles, gears, drawbars and collets.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.84), "", RECALLED),
        Property::tensile(between(850.0, 1000.0), "condition T, to 150 mm", HEYE_EN24),
        Property::proof(exactly(680.0), "condition T, to 150 mm", HEYE_EN24),
        Property::hardness(Brinell, between(248.0, 302.0), "condition T, to 150 mm", HEYE_EN24),
        Property::proof(exactly(650.0), "condition T, over 150 to 250 mm", HEYE_EN24),
        Property::proof(exactly(635.0), "condition T, section 254 mm", ODYSSEY_EN24),
        Property::machinability(
            Steel1212,
            exactly(57.0),
            "AISI 4340, annealed",
            ENGINEERING_TOOLBOX,
        ),
    ],
    drilling: &[drilling::NAVY_ALLOY, drilling::JET_ALLOY_HARD],
    tapping: &[
        tapping::CLARKSON_TEMPERED_ALLOY,
        tapping::CLARKSON_ALLOY_STEEL,
        tapping::SUPPLIER_ALLOY,
        tapping::CATALOGUE_MEDIUM_CARBON,
    ],
    reaming: &[reaming::FREE_ALLOY_TEMPERED, reaming::FREE_ALLOY_HARD],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: ALLOY_TAPPING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FORMING,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        STRONG_AND_TOUGH,
        TEMPERED,
        practice("It hardens even in thick sections: a flame-cut or welded place is glass hard."),
    ],
    not_for: &[PRESSURE_BY_CODE, NO_WELDING],
    salvage: &[UNKNOWN_SHAFT],
    cautions: &[LOSES_ITS_TEMPER],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};
