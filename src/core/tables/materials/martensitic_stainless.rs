//! The stainless steels a magnet grips and heat hardens: 416 and 431.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::ferrous::{PRESSURE_BY_CODE, QUARTER_TURN, SHARP_TAP, SPIRAL_POINT, SPLIT_POINT};
use super::property::{Property, at_least, at_most, between, exactly};
use super::sources::{
    ATLAS_431, ENGINEERING_TOOLBOX, NIFTY_416, TRADEKEY_431, TRAFITEC_416, VENUS_416, VENUS_431,
    mark, practice, read, recalled_mark,
};
use super::stainless::{SULPHURISED_OIL, UNKNOWN_BAR, WASH_OFF};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const MAGNETIC: Advice = practice(
    "A magnet grips it as it grips plain steel: the grindstone and damp tell, for plain steel rusts overnight.",
);
const RUSTS_IN_TIME: Advice = practice(
    "Not for standing in wet or salt: it resists rust less than the 300 grades, so dry and oil it.",
);
const HARDENS_IN_HEAT: Advice = practice(
    "Red heat and quick cooling harden it: silver-solder it with a low-melting alloy, or let it cool slowly.",
);

pub(super) const STAINLESS_416: Material = Material {
    slug: "stainless-416",
    name: "stainless steel 416",
    aliases: &[],
    known_as: &["416", "416S21 stainless", "free cutting martensitic stainless"],
    designations: &[
        mark("1.4005", TRAFITEC_416),
        mark("X12CrS13", VENUS_416),
        mark("416S21", NIFTY_416).old(),
        recalled_mark("EN56AM").old(),
        mark("S41600", NIFTY_416).abroad(),
    ],
    met_in: &[practice(
        "Turned spindles, valve parts, pump shafts, screws and axles where an easy cut matters more than the last of rust resistance.",
    )],
    refused: None,
    // Free-cutting, yet stronger than any mild steel when hardened and tempered: the aim of
    // stainless in the table.
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    // It hardens by heat, not under a rubbing drill as the 300 grades do.
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.74), "", VENUS_416),
        Property::tensile(between(650.0, 750.0), "hardened and tempered bar", TRAFITEC_416),
        Property::proof(at_least(450.0), "hardened and tempered bar", TRAFITEC_416),
        Property::tensile(at_most(730.0), "annealed", TRAFITEC_416),
        Property::hardness(Brinell, at_most(220.0), "annealed", TRAFITEC_416),
        Property::hardness(Brinell, at_most(262.0), "annealed", VENUS_416),
        Property::machinability(Steel1212, exactly(110.0), "annealed", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NORSEMAN_STAINLESS,
        drilling::PROTO_416_TEMPERED,
        drilling::GUIDE_FREE_STAINLESS,
        drilling::PROTO_416_DRAWN,
        drilling::PROTO_416_ANNEALED,
    ],
    tapping: &[
        tapping::CHART_400_STAINLESS,
        tapping::CLARKSON_FREE_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::CATALOGUE_MARTENSITIC,
        tapping::ORDER_400,
    ],
    reaming: &[
        reaming::STAINLESS_416_TEMPERED,
        reaming::STAINLESS_416_DRAWN,
        reaming::STAINLESS_416_ANNEALED,
    ],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: practice("Half a turn on, then back until the chip breaks."),
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    // Sulphur and a tempered martensite leave little stretch for a pressed thread.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        read(
            "It cuts best of the stainless steels, about 85 % as well as a free-cutting carbon steel.",
            TRAFITEC_416,
        ),
        practice("It does not harden under the drill as 304 does, and its chips break."),
    ],
    not_for: &[
        read("It is unsuitable for the sea and other chloride exposure.", NIFTY_416),
        read("Welding is not recommended, because of its sulphur.", VENUS_416),
        RUSTS_IN_TIME,
        PRESSURE_BY_CODE,
    ],
    salvage: &[MAGNETIC, UNKNOWN_BAR],
    cautions: &[WASH_OFF, HARDENS_IN_HEAT],
    dangers: &[dangers::LONG_SWARF, dangers::STAINLESS_FUME, dangers::FLUID],
};

pub(super) const STAINLESS_431: Material = Material {
    slug: "stainless-431",
    name: "stainless steel 431",
    aliases: &[],
    known_as: &["431", "EN57 stainless"],
    designations: &[
        mark("1.4057", ATLAS_431),
        mark("431S29", ATLAS_431).old(),
        recalled_mark("EN57").old(),
        mark("S43100", ATLAS_431).abroad(),
    ],
    met_in: &[practice(
        "Strong rustless shafts: pump rods, valve spindles, propeller shafts, axles and studs, sold hardened and tempered.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Stainless,
    chips: Chips::Long,
    grabs: false,
    // It hardens by heat, not under a rubbing drill as the 300 grades do.
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.75), "", VENUS_431),
        Property::hardness(Brinell, at_most(285.0), "annealed", ATLAS_431),
        Property::tensile(exactly(940.0), "condition T, typical", TRADEKEY_431),
        Property::proof(exactly(750.0), "condition T, typical", TRADEKEY_431),
        Property::hardness(Brinell, exactly(280.0), "condition T, typical", TRADEKEY_431),
        Property::tensile(exactly(862.0), "", VENUS_431),
        Property::proof(exactly(655.0), "", VENUS_431),
        Property::hardness(Brinell, exactly(260.0), "", VENUS_431),
        Property::machinability(Steel1212, exactly(45.0), "annealed", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NAVY_STAINLESS,
        drilling::JET_STAINLESS,
        drilling::PROTO_410_TEMPERED,
        drilling::NORSEMAN_STAINLESS,
        drilling::PROTO_410_MEDIUM,
    ],
    tapping: &[
        tapping::CHART_400_STAINLESS,
        tapping::LAVALLEE_STAINLESS,
        tapping::CATALOGUE_MARTENSITIC,
        tapping::ORDER_400,
    ],
    reaming: &[
        reaming::STAINLESS_410_TEMPERED,
        reaming::STAINLESS_410_MEDIUM,
        reaming::STAINLESS_410_SOFT,
    ],
    feeds: &feeds::STAINLESS,
    drilling_lubricant: SULPHURISED_OIL,
    tapping_lubricant: SULPHURISED_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[SPLIT_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    // At 850 N/mm² and over it is too strong for a small forming tap.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It is strong and springy, like a tempered alloy steel: slow speed, firm feed, sharp drill.",
        ),
        practice("Its chips are long and tough: peck and clear."),
    ],
    not_for: &[
        RUSTS_IN_TIME,
        practice("Not for welding without preheat and tempering after: the joint cracks."),
        PRESSURE_BY_CODE,
    ],
    salvage: &[
        MAGNETIC,
        practice(
            "Old pump and propeller shafts pass for it; the file feels it harder than 303 or 316.",
        ),
        UNKNOWN_BAR,
    ],
    cautions: &[WASH_OFF, HARDENS_IN_HEAT],
    dangers: &[dangers::LONG_SWARF, dangers::STAINLESS_FUME, dangers::FLUID],
};
