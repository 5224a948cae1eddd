//! Wrought and cast aluminium.

use super::sources::{
    AUDHE, HSSCO, MH_FLUIDS, POPULAR_MECHANICS, TRE_S, mark, practice, read, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

const SOLUBLE_OR_PARAFFIN: Advice = read("Use soluble oil or paraffin.", MH_FLUIDS);
const PARAFFIN: Advice = read("Use paraffin.", POPULAR_MECHANICS);
const BUILDS_UP: Advice = practice(
    "It welds itself to a dry drill's lips and tears the hole: lubricate, and wipe the drill.",
);

pub(super) const ALUMINIUM_6082: Material = Material {
    slug: "aluminium-6082",
    name: "aluminium 6082",
    aliases: &["aluminium"],
    known_as: &["6082", "6082-T6", "aluminium bar"],
    designations: &[
        mark("EN AW-6082", TRE_S),
        mark("AlSi1MgMn", TRE_S),
        mark("H30", TRE_S),
        recalled_mark("HE30"),
    ],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_ALUMINIUM],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: practice(
        "Turn back every half to one turn; wipe the tap if metal sticks to its lands.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        BUILDS_UP,
        practice("Its chips string and pack the flutes of a deep hole: peck and clear."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("A thread in it strips before a steel screw breaks: give it more length."),
        practice("Steel screws seize in it with time and damp: grease them."),
    ],
    dangers: &[dangers::PARAFFIN, dangers::LONG_SWARF, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

// Table A.3 prints AC-45400 for both LM4 and LM22; two castings charts give 45200 to LM4 and 45400
// to LM22, so the table's row for LM4 is taken as a slip.
pub(super) const CAST_ALUMINIUM: Material = Material {
    slug: "cast-aluminium",
    name: "cast aluminium",
    aliases: &[],
    known_as: &["aluminium casting", "sand cast aluminium", "casting aluminium"],
    designations: &[
        mark("LM4", HSSCO),
        mark("EN AC-45200", AUDHE),
        mark("LM25", HSSCO),
        mark("EN AC-42000", HSSCO),
        mark("AlSi7Mg", HSSCO),
        mark("A356", HSSCO),
    ],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::PROTO_CAST_ALUMINIUM],
    tapping: &[tapping::CHART_CAST_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: practice("Turn back once a turn; wipe the tap if metal sticks to its lands."),
    // Sand-cast LM4 and LM25 stretch only a few parts in a hundred.
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        BUILDS_UP,
        practice("Silicon in the alloy wears drills, and a soft casting drags: keep edges keen."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("Sand in the skin blunts drills and taps: clean it off first."),
        practice("A blowhole can turn a drill or spoil a thread: look before you tap."),
        practice("A thread in it strips before a steel screw breaks: give it more length."),
    ],
    dangers: &[dangers::PARAFFIN, dangers::ALUMINIUM_DUST, dangers::FLUID],
};
