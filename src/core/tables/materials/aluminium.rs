//! Wrought aluminium alloys: bar, sheet and section.
//!
//! Castings have a file of their own.

use super::HardnessScale::Brinell;
use super::property::{Property, at_least, between, exactly};
use super::sources::{
    ALRO, ALUMINIUM_MANUAL, AZOM_EXTRUDED, COSMOS, DURBIN_2011, DURBIN_6082, ELEKTRON, ESA_7075,
    EURALLIAGE, EURALLIAGE_PLATE, GOULD_L168, INTERLLOY_2011, MATWEB_7075, MH_FLUIDS,
    POPULAR_MECHANICS, SUBSTECH, TRE_S, mark, practice, read, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

pub(super) const SOLUBLE_OR_PARAFFIN: Advice = read("Use soluble oil or paraffin.", MH_FLUIDS);
pub(super) const PARAFFIN: Advice = read("Use paraffin.", POPULAR_MECHANICS);
pub(super) const LARD_OIL: Advice =
    read("A handbook puts lard oil on the tap where others use paraffin.", MH_FLUIDS);
pub(super) const BUILDS_UP: Advice = practice(
    "It welds itself to a dry drill's lips and tears the hole: lubricate, and wipe the drill.",
);
pub(super) const EASY_CUTTING: Advice = read(
    "A maker puts the machinability of aluminium alloys at 300 where free-cutting steel AISI B1112 is 100.",
    ELEKTRON,
);
pub(super) const KEEN_DRILL: Advice = practice(
    "Keep one keen drill for it, with bright open flutes; the ordinary 118° point serves.",
);
pub(super) const MORE_LENGTH: Advice =
    practice("A thread in it strips before a steel screw breaks: give it more length.");
pub(super) const SEIZES: Advice =
    practice("Steel screws seize in it with time and damp: grease them.");
const STRINGS: Advice =
    practice("Its chips string and pack the flutes of a deep hole: peck and clear.");
const BACK_OFF: Advice =
    practice("Turn back every half to one turn; wipe the tap if metal sticks to its lands.");
const BRIGHT_TAP: Advice = practice(
    "A bright, uncoated tap with spiral point (through hole) or spiral flutes (blind hole) clears it best.",
);
const UNMARKED: Advice = practice(
    "Unmarked bar cannot be told from another alloy by eye: try a drill in the end, and trust it with no load.",
);
const SOFT_BEARING: Advice =
    practice("Not for a bearing or a slide against steel without a bush or hard anodising.");
const COPPER_ALLOY_CORRODES: Advice =
    practice("Copper in it lets damp and flux eat it: paint or anodise it, and do not weld it.");

pub(super) const ALUMINIUM_6082: Material = Material {
    slug: "aluminium-6082",
    name: "aluminium 6082",
    aliases: &["aluminium"],
    known_as: &["6082", "6082-T6", "aluminium bar"],
    designations: &[
        mark("EN AW-6082", TRE_S),
        mark("AlSi1MgMn", TRE_S),
        mark("H30", TRE_S).old(),
        mark("HE30", DURBIN_6082).old(),
        mark("3.2315", DURBIN_6082).abroad(),
        recalled_mark("6061").abroad(),
        recalled_mark("6061-T6").abroad(),
    ],
    met_in: &[
        practice("It is the bar and plate most stockists mean by aluminium."),
        practice("Frames, brackets, fixtures, wheels and baseplates are made of it."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.70), "", DURBIN_6082),
        Property::tensile(at_least(290.0), "T6 extruded, wall to 5 mm", COSMOS),
        Property::tensile(at_least(310.0), "T6 extruded, wall 5 to 25 mm", COSMOS),
        Property::proof(at_least(250.0), "T6 extruded, wall to 5 mm", COSMOS),
        Property::proof(at_least(260.0), "T6 extruded, wall 5 to 25 mm", COSMOS),
        Property::hardness(Brinell, exactly(95.0), "T6 extruded", COSMOS),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_ALUMINIUM],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM, tapping::CATALOGUE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, BRIGHT_TAP],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        BUILDS_UP,
        STRINGS,
        read("In the T6 temper it machines well, to tight coils of swarf.", DURBIN_6082),
        EASY_CUTTING,
    ],
    not_for: &[dangers::PRESSURE, SOFT_BEARING],
    salvage: &[
        UNMARKED,
        practice(
            "Thick window and shop section is mostly softer 6063: a drill drags in it more than in 6082.",
        ),
    ],
    cautions: &[MORE_LENGTH, SEIZES],
    dangers: &[dangers::PARAFFIN, dangers::LONG_SWARF, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

pub(super) const ALUMINIUM_6063: Material = Material {
    slug: "aluminium-6063",
    name: "aluminium 6063",
    aliases: &[],
    known_as: &["6063", "6063-T6", "architectural aluminium"],
    designations: &[
        mark("EN AW-6063", TRE_S),
        mark("H9", TRE_S).old(),
        recalled_mark("HE9").old(),
        recalled_mark("AlMg0.7Si"),
    ],
    met_in: &[
        practice("Angle, channel, tube and box section from the shop counter is mostly this."),
        practice("Window frames, trim and anodised section are cut from it."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.70), "", COSMOS),
        Property::tensile(at_least(215.0), "T6 extruded, wall to 10 mm", COSMOS),
        Property::tensile(at_least(195.0), "T6 extruded, wall 10 to 25 mm", COSMOS),
        Property::proof(at_least(170.0), "T6 extruded, wall to 10 mm", COSMOS),
        Property::proof(at_least(160.0), "T6 extruded, wall 10 to 25 mm", COSMOS),
        Property::hardness(Brinell, exactly(73.0), "T6, typical", ALUMINIUM_MANUAL),
        Property::hardness(Brinell, exactly(60.0), "T5, typical", ALUMINIUM_MANUAL),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_ALUMINIUM],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM, tapping::CATALOGUE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, BRIGHT_TAP],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        BUILDS_UP,
        STRINGS,
        practice("It is softer than 6082, drags more, and leaves a burr on thin section."),
    ],
    not_for: &[dangers::PRESSURE, SOFT_BEARING],
    salvage: &[
        practice(
            "Old window frames and shop fittings are mostly this; thin walls and a drawn, even skin show it.",
        ),
        UNMARKED,
    ],
    cautions: &[
        MORE_LENGTH,
        practice("Thin section holds few threads: use a through bolt or a threaded insert."),
        SEIZES,
    ],
    dangers: &[dangers::PARAFFIN, dangers::LONG_SWARF, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

// Lead and bismuth break its chips, and the same soft specks would open a pressed thread: a forming
// tap is refused, as in free-cutting brass.
pub(super) const ALUMINIUM_2011: Material = Material {
    slug: "aluminium-2011",
    name: "free-cutting aluminium 2011",
    aliases: &[],
    known_as: &["2011", "2011-T3", "2011-T6", "free-machining aluminium", "free-cutting aluminium"],
    designations: &[
        mark("AlCu6BiPb", DURBIN_2011),
        recalled_mark("EN AW-2011"),
        mark("FC1", DURBIN_2011).old(),
        mark("3.1655", DURBIN_2011).abroad(),
    ],
    met_in: &[practice("It is sold as bar for turned parts: knobs, spacers, fittings, pulleys.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.83), "", DURBIN_2011),
        Property::tensile(exactly(351.0), "T6, to 25 mm", AZOM_EXTRUDED),
        Property::proof(exactly(220.0), "T6, to 25 mm", AZOM_EXTRUDED),
        Property::tensile(exactly(275.0), "T4", AZOM_EXTRUDED),
        Property::proof(exactly(124.0), "T4", AZOM_EXTRUDED),
        Property::tensile(at_least(320.0), "T3 bar", DURBIN_2011),
        Property::proof(at_least(270.0), "T3 bar", DURBIN_2011),
        Property::tensile(exactly(395.0), "T6, typical", INTERLLOY_2011),
        Property::elongation(exactly(17.0), "T6, typical", INTERLLOY_2011),
        Property::hardness(Brinell, exactly(97.0), "T6, typical", INTERLLOY_2011),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_2011],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: practice("Its chips are short: turn back once a turn."),
    drill_advice: &[practice("An ordinary keen drill serves; it needs no special point.")],
    tap_advice: &[LARD_OIL],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read("It compares with free-cutting brass for ease of cutting.", ALRO),
        read("It cuts to fine chips that clear easily.", DURBIN_2011),
        read("It holds 0.2 to 0.4 % of lead, and bismuth with it.", DURBIN_2011),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for welding, nor for parts left out in the wet."),
        SOFT_BEARING,
    ],
    salvage: &[
        UNMARKED,
        practice("Short crumbling chips from a bar of aluminium are the sign of a leaded one."),
    ],
    cautions: &[
        read("It resists corrosion poorly: makers anodise the parts.", DURBIN_2011),
        MORE_LENGTH,
        SEIZES,
    ],
    dangers: &[dangers::LEAD, dangers::PARAFFIN, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

// At 6 to 7 % the T6 bar stretches less than a pressed thread asks for.
pub(super) const ALUMINIUM_2014: Material = Material {
    slug: "aluminium-2014",
    name: "aluminium 2014",
    aliases: &[],
    known_as: &["2014", "2014A", "2014-T6"],
    designations: &[
        recalled_mark("EN AW-2014A"),
        mark("L168", GOULD_L168),
        recalled_mark("H15").old(),
        recalled_mark("HE15").old(),
        mark("AMS 4121", GOULD_L168).abroad(),
    ],
    met_in: &[
        practice("Aircraft surplus bar and forgings are often this."),
        practice("Internal combustion engine builders use it for connecting rods and crankcases."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.80), "", GOULD_L168),
        Property::tensile(exactly(432.0), "T6, to 10 mm", AZOM_EXTRUDED),
        Property::tensile(exactly(463.0), "T6, 10 to 25 mm", AZOM_EXTRUDED),
        Property::tensile(exactly(494.0), "T6, 25 to 100 mm", AZOM_EXTRUDED),
        Property::proof(exactly(386.0), "T6, to 10 mm", AZOM_EXTRUDED),
        Property::proof(exactly(417.0), "T6, 10 to 25 mm", AZOM_EXTRUDED),
        Property::proof(exactly(448.0), "T6, 25 to 100 mm", AZOM_EXTRUDED),
        Property::elongation(at_least(7.0), "T6511 bar, 10 to 150 mm", GOULD_L168),
        Property::hardness(Brinell, exactly(135.0), "T6, typical", ALUMINIUM_MANUAL),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_ALUMINIUM],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM, tapping::CATALOGUE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, BRIGHT_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read("It machines very well and is used for complex parts.", GOULD_L168),
        BUILDS_UP,
        practice("It is harder than 6082, drags less, and leaves a cleaner thread."),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for welding or bending cold: it cracks."),
        SOFT_BEARING,
    ],
    salvage: &[
        practice(
            "Aircraft bar stamped L168 or L65 passes for it; the stamp is the only sure sign.",
        ),
        UNMARKED,
    ],
    cautions: &[COPPER_ALLOY_CORRODES, MORE_LENGTH, SEIZES],
    dangers: &[dangers::PARAFFIN, dangers::LONG_SWARF, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

pub(super) const ALUMINIUM_7075: Material = Material {
    slug: "aluminium-7075",
    name: "aluminium 7075",
    aliases: &[],
    known_as: &["7075", "7075-T6", "7075-T651"],
    designations: &[
        mark("AlZn5.5MgCu", EURALLIAGE),
        recalled_mark("EN AW-7075"),
        mark("DTD 5074A", ESA_7075).old(),
        mark("3.4364", ESA_7075).abroad(),
    ],
    met_in: &[
        practice("Surplus aircraft and cycle plate is the usual source of it."),
        practice("It is used where a light part is highly stressed: connecting rods, tooling."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.81), "T6", MATWEB_7075),
        Property::tensile(at_least(540.0), "T6 extruded bar, to 25 mm", EURALLIAGE),
        Property::tensile(at_least(560.0), "T6 extruded bar, 25 to 100 mm", EURALLIAGE),
        Property::proof(at_least(480.0), "T6 extruded bar, to 25 mm", EURALLIAGE),
        Property::proof(at_least(500.0), "T6 extruded bar, 25 to 100 mm", EURALLIAGE),
        Property::proof(exactly(503.0), "T6", SUBSTECH),
        Property::elongation(at_least(7.0), "T6 extruded bar, to 100 mm", EURALLIAGE),
        Property::hardness(
            Brinell,
            between(157.0, 163.0),
            "T6 sheet, to 12.5 mm",
            EURALLIAGE_PLATE,
        ),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::JET_ALUMINIUM, drilling::PROTO_ALUMINIUM],
    tapping: &[tapping::CHART_ALUMINIUM, tapping::LAVALLEE_ALUMINIUM, tapping::CATALOGUE_ALUMINIUM],
    reaming: &[],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, BRIGHT_TAP],
    // At 7 % the T6 bar stretches less than a pressed thread asks for.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is the hardest of the usual alloys, and drills and taps cleanly."),
        BUILDS_UP,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for welding, hot parts or bending: heat takes its strength away."),
        SOFT_BEARING,
    ],
    salvage: &[UNMARKED],
    cautions: &[
        read("It resists the weather poorly and should always be protected.", ESA_7075),
        read("In the T6 temper it can crack under a steady load in damp air.", ESA_7075),
        practice("Do not force a screw or a press fit into it: a steady stress starts the cracks."),
        SEIZES,
    ],
    dangers: &[dangers::PARAFFIN, dangers::LONG_SWARF, dangers::ALUMINIUM_DUST, dangers::FLUID],
};
