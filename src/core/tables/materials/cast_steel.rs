//! Cast steel: steel poured to shape.

use super::HardnessScale::Brinell;
use super::caution::Work;
use super::ferrous::{
    CUTTING_OIL, HALF_TURN, PRESSURE_BY_CODE, RECALLED, SHARP_TAP, SOLUBLE_OR_CUTTING_OIL,
    SPIRAL_POINT, STANDARD_POINT,
};
use super::property::{Property, at_least, between, exactly};
use super::sources::{PROTO_CAST, TUBINGCHINA, mark, practice, recalled_mark};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const CAST_STEEL: Material = Material {
    slug: "cast-steel",
    name: "cast steel",
    aliases: &[],
    known_as: &["steel casting", "cast mild steel", "carbon steel casting"],
    designations: &[
        recalled_mark("GP240GH"),
        recalled_mark("1.0619"),
        mark("BS 3100 A1", TUBINGCHINA).old(),
        mark("BS 3100 A2", TUBINGCHINA).old(),
        mark("BS 3100 A3", TUBINGCHINA).old(),
        recalled_mark("ASTM A216 WCB").abroad(),
    ],
    met_in: &[practice(
        "Castings stronger than iron: wheel centres, hornblocks, axleboxes, brackets, crossheads and lost-wax castings.",
    )],
    refused: None,
    // Not in the aim table. Low and medium carbon steel in a casting: the aim of mild steel.
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.8), "", RECALLED),
        Property::tensile(at_least(430.0), "BS 3100 A1", RECALLED),
        Property::proof(at_least(230.0), "BS 3100 A1", RECALLED),
        Property::elongation(at_least(22.0), "BS 3100 A1", RECALLED),
        Property::hardness(
            Brinell,
            between(100.0, 150.0),
            "0.1 to 0.2 % carbon, the range its speeds are given for",
            PROTO_CAST,
        ),
        Property::hardness(
            Brinell,
            between(125.0, 225.0),
            "0.3 to 0.5 % carbon, the range its speeds are given for",
            PROTO_CAST,
        ),
    ],
    // The carbon of a casting is seldom known, and its skin is hard: the slowest source comes first.
    drilling: &[
        drilling::LIST_CAST_STEEL,
        drilling::PROTO_CAST_STEEL_HARD,
        drilling::PROTO_CAST_STEEL_MEDIUM,
        drilling::PROTO_CAST_STEEL_LOW,
    ],
    tapping: &[tapping::CHART_CAST_STEEL, tapping::CLARKSON_CARBON_STEEL],
    reaming: &[reaming::CAST_STEEL_HARD, reaming::CAST_STEEL_MEDIUM, reaming::CAST_STEEL_LOW],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OR_CUTTING_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: HALF_TURN,
    drill_advice: &[
        STANDARD_POINT,
        practice(
            "Spot-face or grind the skin away first: scale and sand blunt a drill at the start of the hole.",
        ),
    ],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    // A casting may be porous where the thread comes, and pressing opens the pores.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("Under the skin it cuts as steel, not as iron: long chips, oil, a sharp tap."),
        practice("Blowholes and hard spots turn up: a drill that wanders or squeals has met one."),
    ],
    not_for: &[PRESSURE_BY_CODE],
    salvage: &[practice(
        "Old tools stamped CAST STEEL are something else: high-carbon tool steel made in a crucible, to be treated as silver steel.",
    )],
    cautions: &[Work::Stock.says(practice(
            "A casting not annealed holds stress and hard places: ask the foundry, or rough it out and let it rest.",
        )), Work::Drilling.says(practice("Cut under the skin in one pass: sand and scale take the edge off tools."))],
    dangers: &[dangers::SAND_IN_CASTING, dangers::SCALE, dangers::LONG_SWARF, dangers::FLUID],
};
