//! Gunmetal, the phosphor bronzes, free-cutting brass and copper.

use super::sources::{
    CDA_GUNMETAL, DURBIN, HOOD_PB1, HOOD_PB102, KEMPER, KNIGHT, MH_FLUIDS, POPULAR_MECHANICS,
    SMITH, VMS_TAPPING, mark, practice, read, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

const SOLUBLE_OIL: Advice = read("Use soluble oil.", MH_FLUIDS);
const BRONZE_TAPPING: Advice = read("Use 20 % lard oil in mineral oil.", MH_FLUIDS);
const WORK_HARDENS: Advice =
    practice("It work-hardens under a drill that rubs: keep it cutting, and do not dwell.");
const DUB_BRONZE: Advice =
    practice("Stone a small flat on the drill's lips, or it grabs as it opens out a hole.");
const WHICH_BRONZE: Advice = practice(
    "Bronze is a loose word: for a bearing, a boiler bush or a fitting, go by the mark on the bar.",
);

pub(super) const GUNMETAL: Material = Material {
    slug: "gunmetal",
    name: "gunmetal",
    aliases: &["leaded-gunmetal"],
    known_as: &["gun metal", "red bronze", "85-5-5-5", "gunmetal casting"],
    designations: &[
        mark("LG2", CDA_GUNMETAL),
        mark("CC491K", KEMPER),
        mark("CuSn5Zn5Pb5-C", KEMPER),
        mark("2.1096.01", KEMPER),
        mark("C83600", KEMPER),
    ],
    met_in: &[],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::Bronze,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRONZE],
    tapping: &[tapping::CHART_CAST_BRONZE, tapping::LAVALLEE_BRONZE],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: practice("Its chips are short: turn back once a turn, and clear a blind hole often."),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It cuts freely to short chips, and small holes are often drilled dry."),
        recalled("It may grab the drill as it breaks through: dub the lips."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("A casting's skin holds sand, which blunts drills and taps: clean it off first."),
        practice("A blowhole can turn a drill or open into a passage: look before you tap."),
    ],
    dangers: &[dangers::LEAD, dangers::GRAB, dangers::FLUID],
};

pub(super) const PHOSPHOR_BRONZE_CAST: Material = Material {
    slug: "phosphor-bronze-cast",
    name: "cast phosphor bronze",
    aliases: &["cast-phosphor-bronze"],
    known_as: &["phosphor bronze casting", "tin bronze"],
    designations: &[
        mark("PB1", HOOD_PB1),
        mark("CC481K", KEMPER),
        mark("CuSn11P-C", KEMPER),
        mark("C90700", HOOD_PB1),
    ],
    met_in: &[],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Bronze,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::CHART_CAST_BRONZE, tapping::LAVALLEE_BRONZE],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: read("Turn back slightly after each half turn.", POPULAR_MECHANICS),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[WORK_HARDENS, DUB_BRONZE],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("It grips a drill when a hole is opened out: sharp drill, cool work, or bore it."),
        practice("Sand in the skin of a casting blunts drills and taps: clean it off first."),
        WHICH_BRONZE,
    ],
    dangers: &[dangers::MAY_HOLD_LEAD, dangers::GRAB, dangers::FLUID],
};

pub(super) const PHOSPHOR_BRONZE_DRAWN: Material = Material {
    slug: "phosphor-bronze-drawn",
    name: "drawn phosphor bronze",
    aliases: &["drawn-phosphor-bronze"],
    known_as: &["phosphor bronze strip", "hard drawn phosphor bronze"],
    designations: &[
        mark("PB102", HOOD_PB102),
        mark("CW451K", HOOD_PB102),
        mark("CuSn5", HOOD_PB102),
        mark("C51000", HOOD_PB102),
    ],
    met_in: &[],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Bronze,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::LAVALLEE_BRONZE],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: practice(
        "It is tough: half a turn on, then back until the chip breaks, and do not stop in the cut.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        WORK_HARDENS,
        DUB_BRONZE,
        recalled("It is tough: choose the tapping drill on the large side."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("It grips a drill when a hole is opened out: sharp drill, cool work, or bore it."),
        WHICH_BRONZE,
    ],
    dangers: &[
        dangers::MAY_HOLD_LEAD,
        dangers::GRAB,
        dangers::LONG_SWARF,
        dangers::BERYLLIUM,
        dangers::FLUID,
    ],
};

pub(super) const FREE_CUTTING_BRASS: Material = Material {
    slug: "free-cutting-brass",
    name: "free-cutting brass",
    aliases: &["brass"],
    known_as: &["free machining brass", "leaded brass", "engraving brass", "turning brass"],
    designations: &[
        mark("CZ121", DURBIN),
        mark("CZ121Pb3", DURBIN),
        mark("CW614N", DURBIN),
        mark("CuZn39Pb3", DURBIN),
        mark("C38500", DURBIN),
    ],
    met_in: &[],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Brass,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NOMINAL_BRASS, drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRASS],
    tapping: &[tapping::CHART_BRASS, tapping::LAVALLEE_BRASS],
    reaming: &[],
    feeds: &feeds::BRASS,
    drilling_lubricant: read("Use soluble oil, or 30 % lard oil in mineral oil.", MH_FLUIDS),
    tapping_lubricant: read("Use 10 to 20 % lard oil in mineral oil.", MH_FLUIDS),
    back_off: practice(
        "Its chips are short: turn back every turn or two, and clear a blind hole often.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        read(
            "A drill digs in: stone a small flat on its lips, or use one with straight flutes.",
            SMITH,
        ),
        practice("It cuts to short chips, and at home it is usually drilled and tapped dry."),
        practice(
            "Keep dubbed drills apart: they cut steel badly, and sharp steel drills snatch in brass.",
        ),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice(
            "Thin sheet leaves a three-cornered hole and climbs the drill: back it, clamp it, and use a sheet drill or step up.",
        ),
        practice(
            "Hot water and steam take the zinc out of brass: ask the club's boiler inspector before it goes in the wet.",
        ),
        practice("It marks easily in the vice: use soft jaws."),
    ],
    dangers: &[dangers::LEAD, dangers::GRAB, dangers::FLUID],
};

pub(super) const COPPER: Material = Material {
    slug: "copper",
    name: "copper",
    aliases: &[],
    known_as: &["copper plate", "copper sheet", "electrolytic copper", "tough pitch copper"],
    designations: &[
        mark("C101", KNIGHT),
        mark("CW004A", KNIGHT),
        mark("Cu-ETP", KNIGHT),
        recalled_mark("C106"),
        recalled_mark("CW024A"),
    ],
    met_in: &[],
    refused: None,
    group: Group::Tough,
    family: Family::Copper,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[],
    drilling: &[drilling::LIST_COPPER, drilling::QUIZ_COPPER_RANGE],
    tapping: &[tapping::CLARKSON_COPPER, tapping::LAVALLEE_COPPER, tapping::CHART_COPPER],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: SOLUBLE_OIL,
    back_off: read("Turn back about half a turn for each thread cut.", VMS_TAPPING),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        recalled(
            "It tears and grips the drill: sharp drill, plenty of clearance, peck and lubricate.",
        ),
        practice("A hole closes in as the drill leaves it: try one in scrap and measure."),
        recalled("Choose the tapping drill on the large side: the tap drags the metal in."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        practice("Do not dub the lips as for brass: copper wants a keen edge."),
        practice(
            "A thread in soft copper pulls out easily: use a bronze bush where a screw must hold.",
        ),
        practice("Thin sheet climbs the drill: back it and clamp it."),
    ],
    dangers: &[dangers::LONG_SWARF, dangers::BERYLLIUM, dangers::FLUID],
};
