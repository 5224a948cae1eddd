//! Acetal, nylon and PTFE. Trade names are not used.

use super::sources::{BOEDEKER, CAST_NYLONS, ENSINGER, practice, read, recalled_mark};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};
use crate::tables::materials::SpeedRange;

const DRILLING: &[SpeedRange] = &[drilling::NOMINAL_PLASTICS, drilling::NORSEMAN_PLASTICS];
const TAPPING: &[SpeedRange] = &[
    tapping::LAVALLEE_THERMOPLASTIC,
    tapping::CLARKSON_THERMOPLASTIC,
    tapping::CHART_THERMOPLASTIC,
];
const DRY: Advice = practice("Drill it dry, in short pecks, so that it stays cool.");
const TAP_DRY: Advice = practice("Tap it dry, or with a little soapy water.");
const BACK_OFF: Advice =
    practice("Turn back every turn or two, and clean the tap: strings pack its flutes.");
const POINT: Advice = read(
    "A point of 90 to 118 degrees with 12 to 15 degrees of clearance keeps it cool; peck a deep hole.",
    BOEDEKER,
);
const CLOSES_IN: Advice = practice(
    "It springs away from the drill and the hole closes in: try one in scrap and measure.",
);
const MEASURE_COLD: Advice =
    practice("Let it cool before measuring: it grows far more than metal.");

pub(super) const ACETAL: Material = Material {
    slug: "acetal",
    name: "acetal",
    aliases: &["pom"],
    known_as: &["polyacetal", "polyoxymethylene", "acetal copolymer", "acetal homopolymer"],
    designations: &[recalled_mark("POM")],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "It is the stiffest of the three and cuts cleanly with sharp metal-cutting drills.",
        ),
        POINT,
        CLOSES_IN,
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        MEASURE_COLD,
        practice("It softens in steam and hot water: keep it to cold, light duty."),
    ],
    dangers: &[dangers::ACETAL_FUME, dangers::LONG_SWARF],
};

pub(super) const NYLON: Material = Material {
    slug: "nylon",
    name: "nylon",
    aliases: &[],
    known_as: &["nylon 66", "nylon 6", "cast nylon", "polyamide"],
    designations: &[recalled_mark("PA66"), recalled_mark("PA6")],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read(
            "Thin the drill's web, keep a little positive rake at the lip, and use a slow spiral.",
            CAST_NYLONS,
        ),
        CLOSES_IN,
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        read(
            "It takes up moisture and grows: let it settle in the room before close work.",
            ENSINGER,
        ),
        practice("A nylon bush swells in the wet and may seize: acetal moves less."),
        practice(
            "A large hole drilled in one go can crack a thick piece: step up, and keep it cool.",
        ),
        MEASURE_COLD,
    ],
    dangers: &[dangers::NYLON_FUME, dangers::LONG_SWARF],
};

pub(super) const PTFE: Material = Material {
    slug: "ptfe",
    name: "PTFE",
    aliases: &[],
    known_as: &["polytetrafluoroethylene"],
    designations: &[],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is soft and springs away: only a very sharp drill cuts it to size."),
        POINT,
        CLOSES_IN,
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("It creeps: a screw in it works loose, so clamp through it or bush it."),
        practice(
            "Sources part on whether to drill it slowly or fast: what counts is that it stays cool.",
        ),
        MEASURE_COLD,
    ],
    dangers: &[dangers::PTFE_FUME, dangers::PTFE_SMOKING, dangers::LONG_SWARF],
};
