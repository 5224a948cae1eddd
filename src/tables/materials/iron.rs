//! Grey cast iron.

use super::sources::{ALLIED, MH_FLUIDS, ZUIN, mark, practice, read, recalled};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

pub(super) const GREY_CAST_IRON: Material = Material {
    slug: "grey-cast-iron",
    name: "grey cast iron",
    aliases: &["cast-iron", "grey-iron"],
    known_as: &["gray cast iron", "gray iron", "CI", "iron casting", "continuous cast iron"],
    designations: &[
        mark("EN-GJL-200", ZUIN),
        mark("EN-GJL-250", ALLIED),
        mark("BS 1452 grade 250", ALLIED),
        mark("GG25", ALLIED),
        mark("FG 250", ALLIED),
    ],
    met_in: &[],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::CastIron,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::JET_IRON,
        drilling::NORSEMAN_MEDIUM_IRON,
        drilling::PROTO_GREY_IRON,
        drilling::NOMINAL_IRON,
        drilling::NORSEMAN_SOFT_IRON,
    ],
    tapping: &[tapping::CLARKSON_IRON, tapping::CHART_IRON, tapping::LAVALLEE_IRON],
    reaming: &[],
    feeds: &feeds::CAST_IRON,
    drilling_lubricant: read("Drill it dry.", MH_FLUIDS),
    tapping_lubricant: read("Tap it dry, or with 25 % lard oil in mineral oil.", MH_FLUIDS),
    back_off: practice(
        "Its chips are short: turn back once a turn, and clear the dust out of a blind hole often.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It cuts to short chips and dust, and a thread's crests crumble rather than tear.",
        ),
        practice(
            "A casting's skin is hard: get under it with one firm cut, because a rubbing drill only blunts.",
        ),
        practice(
            "A chilled corner or hard spot stops a drill: try carbide, come from the other side, or have the casting heated and cooled slowly.",
        ),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        recalled("Chilled skin and sand left on a casting blunt drills and taps."),
        practice("Never heat a thin casting quickly: it turns hard as glass, or cracks."),
        practice("The dust is abrasive: cover the slides and wipe them afterwards."),
        practice("Ease off as the drill breaks through, or the far edge flakes away."),
    ],
    dangers: &[dangers::IRON_DUST],
};
