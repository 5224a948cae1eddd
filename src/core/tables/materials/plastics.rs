//! Acetal, nylon, PTFE and PEEK: the plastics of bushes, glands and seats. Trade names are not used.
//!
//! Sheet plastics and laminate have a file of their own.

use super::HardnessScale::RockwellM;
use super::caution::Work;
use super::property::{Property, between, exactly};
use super::sources::{
    BOEDEKER, CAST_NYLONS, ENG_PLASTICS, ENSINGER, HANDBOOK_PTFE, HANDBOOK_PTFE_HEAT, LAIRD_NYLON,
    practice, read, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};
use crate::tables::materials::SpeedRange;
use crate::tables::source::Source;

pub(super) const DRILLING: &[SpeedRange] =
    &[drilling::NOMINAL_PLASTICS, drilling::NORSEMAN_PLASTICS];
pub(super) const TAPPING: &[SpeedRange] = &[
    tapping::LAVALLEE_THERMOPLASTIC,
    tapping::SUPPLIER_PLASTICS,
    tapping::CLARKSON_THERMOPLASTIC,
    tapping::CHART_THERMOPLASTIC,
];
pub(super) const BACK_OFF: Advice =
    practice("Turn back every turn or two, and clean the tap: strings pack its flutes.");
pub(super) const POINT: Advice = read(
    "A point of 90 to 118 degrees with 12 to 15 degrees of clearance keeps it cool; peck a deep hole.",
    BOEDEKER,
);
pub(super) const BACKED: Advice =
    read("Back up the far side of a through hole with scrap, or its edge chips.", BOEDEKER);
pub(super) const CLEAN_TAP: Advice =
    read("A two-fluted coated tap suits plastics; keep it clear of chips.", BOEDEKER);
pub(super) const CLOSES_IN: Advice = practice(
    "It springs away from the drill and the hole closes in: try one in scrap and measure.",
);
pub(super) const MEASURE_COLD: Advice =
    practice("Let it cool before measuring: it grows far more than metal.");
const DRY: Advice = practice("Drill it dry, in short pecks, so that it stays cool.");
const TAP_DRY: Advice = practice("Tap it dry, or with a little soapy water.");
const COARSE_THREAD: Advice =
    practice("A coarse thread holds best; for a screw taken out often, fit a metal insert.");
const UNKNOWN_PLASTIC: Advice = practice(
    "Unmarked plastic is not to be trusted with load, heat or food; never burn a piece to learn what it is.",
);
const RECALLED: Source = Source::memory("recalled, no source read");

pub(super) const ACETAL: Material = Material {
    slug: "acetal",
    name: "acetal",
    aliases: &["pom"],
    known_as: &["polyacetal", "polyoxymethylene", "acetal copolymer", "acetal homopolymer"],
    designations: &[recalled_mark("POM"), recalled_mark("POM-C"), recalled_mark("POM-H")],
    met_in: &[practice("Bushes, gears, rollers, knobs and slides that run cold and dry.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.41), "", ENG_PLASTICS),
        Property::tensile(exactly(72.0), "homopolymer", ENG_PLASTICS),
        Property::tensile(exactly(65.0), "copolymer", ENG_PLASTICS),
        Property::elongation(exactly(50.0), "homopolymer", ENG_PLASTICS),
        Property::elongation(exactly(60.0), "copolymer", ENG_PLASTICS),
        Property::hardness(RockwellM, exactly(95.0), "homopolymer", ENG_PLASTICS),
        Property::hardness(RockwellM, exactly(85.0), "copolymer", ENG_PLASTICS),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[POINT, read("A stream of air keeps it cool.", BOEDEKER)],
    tap_advice: &[CLEAN_TAP, COARSE_THREAD],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "It is the stiffest of the usual bush plastics and cuts cleanly with sharp metal-cutting drills.",
        ),
        CLOSES_IN,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for steam or hot water, nor near a flame or a soldered joint."),
    ],
    salvage: &[
        practice("It is opaque, hard and slippery and sinks in water; black and white are usual."),
        UNKNOWN_PLASTIC,
    ],
    cautions: &[
        Work::Background
            .says(recalled("Keep it cool: it melts, and burns with a formaldehyde fume.")),
        Work::Drilling.says(MEASURE_COLD),
        Work::Service
            .says(practice("It softens in steam and hot water: keep it to cold, light duty.")),
    ],
    dangers: &[dangers::ACETAL_FUME, dangers::LONG_SWARF],
};

pub(super) const NYLON: Material = Material {
    slug: "nylon",
    name: "nylon",
    aliases: &[],
    known_as: &["nylon 66", "nylon 6", "cast nylon", "polyamide"],
    designations: &[recalled_mark("PA66"), recalled_mark("PA6")],
    met_in: &[practice("Bushes, gears, rollers, hammers' faces and light pulleys.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.14), "nylon 66", RECALLED),
        Property::tensile(exactly(80.0), "nylon 66, dry", RECALLED),
        Property::density(exactly(1.15), "extruded, grade 101", LAIRD_NYLON),
        Property::tensile(exactly(82.7), "extruded, grade 101", LAIRD_NYLON),
        Property::elongation(exactly(50.0), "extruded, grade 101", LAIRD_NYLON),
        Property::hardness(RockwellM, exactly(85.0), "extruded, grade 101", LAIRD_NYLON),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[
        read(
            "Thin the drill's web, grind 0 to 5 degrees of positive rake at the lip, and use a slow spiral.",
            CAST_NYLONS,
        ),
        POINT,
    ],
    tap_advice: &[CLEAN_TAP, COARSE_THREAD],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is tough and stringy: a blunt drill melts its way in and the burr hangs on."),
        CLOSES_IN,
    ],
    not_for: &[dangers::PRESSURE, practice("Not for steam, hot water or a close fit in the wet.")],
    salvage: &[
        practice("It is milky or black, tough and slightly soft: a knife lifts a curl that bends."),
        UNKNOWN_PLASTIC,
    ],
    cautions: &[
        Work::Service.says(read(
            "It takes up moisture and grows: let it settle in the room before close work.",
            ENSINGER,
        )),
        Work::Service
            .says(read("It takes up 7 % of water in the end, 0.3 % in a day.", LAIRD_NYLON)),
        Work::Service
            .says(practice("A nylon bush swells in the wet and may seize: acetal moves less.")),
        Work::WideDrilling.says(practice(
            "A large hole drilled in one go can crack a thick piece: step up, and keep it cool.",
        )),
        Work::Drilling.says(MEASURE_COLD),
    ],
    dangers: &[dangers::NYLON_FUME, dangers::LONG_SWARF],
};

pub(super) const PTFE: Material = Material {
    slug: "ptfe",
    name: "PTFE",
    aliases: &[],
    known_as: &["polytetrafluoroethylene"],
    designations: &[],
    met_in: &[practice("Gland packing, valve seats, seals, washers and slides.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(2.18), "", RECALLED),
        Property::tensile(between(25.0, 36.0), "stress at fracture", HANDBOOK_PTFE),
        Property::elongation(between(350.0, 550.0), "at fracture", HANDBOOK_PTFE),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[POINT, practice("Only a razor-sharp drill cuts it to size.")],
    tap_advice: &[
        CLEAN_TAP,
        practice("A thread in it is for locating only: clamp it in metal for any load."),
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is soft and springs away: only a very sharp drill cuts it to size."),
        CLOSES_IN,
        read("At 20 °C it grows by 11.9 × 10⁻⁵ of its length a degree.", HANDBOOK_PTFE_HEAT),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a part that must keep its size under load: it creeps away."),
        practice("Not near a flame, a blowlamp or a joint still to be silver soldered."),
    ],
    salvage: &[
        practice("It is white, waxy, very heavy for a plastic, and a nail marks it."),
        UNKNOWN_PLASTIC,
    ],
    cautions: &[Work::Service.says(practice("It creeps: a screw in it works loose, so clamp through it or bush it.")), Work::Drilling.says(practice(
            "Sources differ on whether to drill it slowly or fast: what counts is that it stays cool.",
        )), Work::Reckoned.says(recalled("It springs back, and holes in it close in.")), Work::Drilling.says(MEASURE_COLD)],
    dangers: &[dangers::PTFE_FUME, dangers::PTFE_SMOKING, dangers::LONG_SWARF],
};

pub(super) const PEEK: Material = Material {
    slug: "peek",
    name: "PEEK",
    aliases: &[],
    known_as: &["polyetheretherketone", "polyether ether ketone"],
    designations: &[],
    met_in: &[practice(
        "Valve seats, piston rings, insulators and bushes where other plastics soften.",
    )],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.32), "unfilled", RECALLED),
        Property::tensile(between(100.0, 115.0), "unfilled", RECALLED),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[POINT, practice("Step a large hole up: one go can split a bar.")],
    tap_advice: &[CLEAN_TAP, COARSE_THREAD],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "It is stiff and cuts cleanly, with a springy chip; heat builds up in a deep hole.",
        ),
        CLOSES_IN,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not bought for cold, light work: acetal does it for a fraction of the price."),
    ],
    salvage: &[
        practice("Plain, it is beige and opaque; filled kinds are black or speckled."),
        UNKNOWN_PLASTIC,
    ],
    cautions: &[
        Work::Stock.says(recalled("Filled grades want carbide tools.")),
        Work::Heat.says(recalled("Thick work is annealed before close cuts, or it moves.")),
        Work::Drilling.says(MEASURE_COLD),
    ],
    dangers: &[dangers::PLASTIC_FUME, dangers::LONG_SWARF],
};
