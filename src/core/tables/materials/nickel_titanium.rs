//! Nickel-copper alloy 400 and titanium, pure and alloyed: tough metals that punish a rubbing tool.

use super::HardnessScale::{Brinell, RockwellB, RockwellC, Vickers};
use super::property::{Property, at_least, between, exactly};
use super::sources::{
    ASTM_B164, ASTM_TITANIUM, EL_HOFY, ELEKTRON, ISAKOV, MATWEB_TITANIUM, MH_FLUIDS, NORTH_STEEL,
    RMI, SPECIAL_METALS, TI64, mark, practice, read, recalled, recalled_mark,
};
use super::{Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};
use crate::tables::source::Source;

const RECALLED: Source = Source::memory("recalled, no source read");
const NEVER_DWELL: Advice = practice(
    "Keep the drill cutting with a firm feed, and back out at once to clear: a dwell glazes the hole and kills the drill.",
);
const SHORT_DRILL: Advice = practice(
    "Use a short, stiff cobalt or high-speed steel drill with a split point of 135°, and drill to size in one go.",
);
const STEEP_POINT: Advice =
    read("A point of 135° and a quick helix of 30 to 38° are printed for it.", EL_HOFY);
const TITANIUM_MACHINABILITY: Advice = read(
    "A maker puts the machinability of titanium alloys at 20 where free-cutting steel AISI B1112 is 100.",
    ELEKTRON,
);
const REACTIVE: Advice =
    read("It is reactive: its chips can burn, so use plenty of fluid.", ISAKOV);
const TITANIUM_FLUID: Advice = read("Use plenty of cutting fluid.", ISAKOV);
const TITANIUM_TAP_OIL: Advice =
    practice("Use a heavy tapping oil or paste, and put more on at each turn back.");
const TITANIUM_BACK_OFF: Advice = practice(
    "Turn back every quarter turn: it springs back on the tap, and the tap squeals and seizes.",
);
const TITANIUM_TAP: Advice = practice(
    "Use a new, keen tap with relieved lands, the largest hole the thread will bear, and no more thread than the screw needs.",
);
const SPRINGS_BACK: Advice = practice(
    "It springs back round drill and tap, holds the heat at the cutting edge, and smears on a blunt one.",
);
const TITANIUM_FILE_TEST: Advice = practice(
    "It looks like stainless steel, weighs little more than half as much, and no magnet holds it; make no spark test of it.",
);
const TITANIUM_SEIZES: Advice = practice(
    "Titanium screws seize in titanium: use an anti-seize paste, or a screw of another metal.",
);

// Cold-worked rod is far stronger than annealed: the condition is the first thing to ask about it.
pub(super) const NICKEL_COPPER_400: Material = Material {
    slug: "nickel-copper-400",
    name: "nickel-copper alloy 400",
    aliases: &[],
    known_as: &["alloy 400"],
    designations: &[
        mark("UNS N04400", SPECIAL_METALS).abroad(),
        mark("N04400", SPECIAL_METALS).abroad(),
        mark("2.4360", SPECIAL_METALS).abroad(),
        recalled_mark("NA13"),
        recalled_mark("NiCu30"),
    ],
    met_in: &[
        read(
            "Valves, pumps, propeller shafts and marine fastenings are made of it.",
            SPECIAL_METALS,
        ),
        practice("Boiler stays, valve spindles, firebox fittings and superheater parts in models."),
    ],
    refused: None,
    group: Group::Tough,
    family: Family::Nickel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(8.80), "", SPECIAL_METALS),
        Property::tensile_ksi(at_least(70.0), "annealed rod and bar", ASTM_B164),
        Property::proof_ksi(at_least(25.0), "annealed rod and bar", ASTM_B164),
        Property::elongation(at_least(35.0), "annealed rod and bar", ASTM_B164),
        Property::tensile_ksi(at_least(80.0), "hot worked bar", ASTM_B164),
        Property::proof_ksi(at_least(40.0), "hot worked bar", ASTM_B164),
        Property::tensile_ksi(at_least(110.0), "cold worked rounds under 1/2 in", ASTM_B164),
        Property::proof_ksi(at_least(85.0), "cold worked rounds under 1/2 in", ASTM_B164),
        Property::hardness(Brinell, between(110.0, 150.0), "annealed", RECALLED),
    ],
    drilling: &[drilling::NORSEMAN_NICKEL_COPPER, drilling::NAVY_NICKEL_COPPER],
    tapping: &[tapping::LAVALLEE_NICKEL_COPPER, tapping::CATALOGUE_NICKEL, tapping::CHART_NICKEL],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: read("Use soluble oil.", MH_FLUIDS),
    tapping_lubricant: read(
        "Use 25 to 40 % lard oil in mineral oil, or a sulphur-base oil mixed with mineral oil.",
        MH_FLUIDS,
    ),
    back_off: practice("Turn back every quarter to half turn, and never let the tap rub."),
    drill_advice: &[SHORT_DRILL, NEVER_DWELL],
    tap_advice: &[practice(
        "Use a keen ground tap, spiral-pointed in a through hole, and the largest hole the thread will bear.",
    )],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is tough and stringy, and hardens under a tool that rubs."),
        practice("The second drill follows a glazed hole badly: leave it enough to bite into."),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a running fit in itself or in stainless: the two gall."),
    ],
    salvage: &[
        practice("Ship and dairy fittings, pump shafts and valve trim give it."),
        read(
            "A magnet does not settle it: some melts are magnetic at room temperature and others not.",
            SPECIAL_METALS,
        ),
        practice(
            "It is whiter than cupro-nickel, files tough, and does not rust; for a stay, buy it marked.",
        ),
    ],
    cautions: &[
        recalled("It work-hardens: never dwell."),
        recalled("Wash off sulphurised oil before it is heated, or the sulphur makes it brittle."),
    ],
    dangers: &[dangers::NICKEL_SKIN, dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const TITANIUM_GRADE_2: Material = Material {
    slug: "titanium-grade-2",
    name: "titanium grade 2",
    aliases: &[],
    known_as: &["pure titanium", "commercially pure titanium", "CP titanium", "Ti grade 2"],
    designations: &[
        recalled_mark("TA2"),
        recalled_mark("UNS R50400").abroad(),
        recalled_mark("3.7035").abroad(),
    ],
    met_in: &[practice(
        "Chemical plant surplus, tube and sheet; light spindles and exhaust parts.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Titanium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(4.51), "pure titanium", RMI),
        Property::tensile(at_least(345.0), "", ASTM_TITANIUM),
        Property::proof(at_least(275.0), "", ASTM_TITANIUM),
        Property::elongation(at_least(20.0), "", ASTM_TITANIUM),
        // The source's 200 HB and 145 HV are not the same hardness; both stand as printed.
        Property::hardness(Brinell, exactly(200.0), "as the source prints it", MATWEB_TITANIUM),
        Property::hardness(Vickers, exactly(145.0), "", MATWEB_TITANIUM),
        Property::hardness(RockwellB, exactly(80.0), "", MATWEB_TITANIUM),
    ],
    drilling: &[drilling::LIST_TITANIUM, drilling::EL_HOFY_TITANIUM_PURE],
    tapping: &[tapping::LAVALLEE_TITANIUM, tapping::CHART_TITANIUM],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: TITANIUM_FLUID,
    tapping_lubricant: TITANIUM_TAP_OIL,
    back_off: TITANIUM_BACK_OFF,
    drill_advice: &[STEEP_POINT, SHORT_DRILL, NEVER_DWELL],
    tap_advice: &[TITANIUM_TAP],
    // It galls on a tap that presses.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is soft and gummy beside the alloys, and builds up on the drill's lips."),
        SPRINGS_BACK,
        TITANIUM_MACHINABILITY,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a plain bearing or a sliding part: it galls on nearly everything."),
    ],
    salvage: &[
        TITANIUM_FILE_TEST,
        practice("Grade 2 can be bent cold and files easily; grade 5 resists both."),
    ],
    cautions: &[recalled("It galls on taps."), TITANIUM_SEIZES],
    dangers: &[
        dangers::TITANIUM_FIRE,
        dangers::TITANIUM_SWARF,
        REACTIVE,
        dangers::LONG_SWARF,
        dangers::FLUID,
    ],
};

pub(super) const TITANIUM_GRADE_5: Material = Material {
    slug: "titanium-grade-5",
    name: "titanium grade 5",
    aliases: &[],
    known_as: &["Ti6Al4V", "Ti 6-4", "titanium 6-4", "Ti grade 5"],
    designations: &[
        mark("Ti-6Al-4V", TI64),
        mark("UNS R56400", NORTH_STEEL).abroad(),
        recalled_mark("TA11"),
        recalled_mark("3.7165").abroad(),
    ],
    met_in: &[practice(
        "Aircraft bolts and surplus bar; connecting rods and light highly stressed parts.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Titanium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    properties: &[
        Property::density(exactly(4.42), "typical", TI64),
        Property::tensile(at_least(895.0), "", ASTM_TITANIUM),
        Property::proof(between(825.0, 828.0), "least figure; two tables differ", ASTM_TITANIUM),
        Property::tensile(exactly(1000.0), "typical", TI64),
        Property::proof(exactly(910.0), "typical", TI64),
        Property::elongation(at_least(10.0), "", ASTM_TITANIUM),
        Property::hardness(RockwellC, exactly(36.0), "typical", TI64),
    ],
    drilling: &[drilling::LIST_TITANIUM, drilling::EL_HOFY_TITANIUM_ALLOY],
    tapping: &[tapping::LAVALLEE_TITANIUM, tapping::CHART_TITANIUM],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: TITANIUM_FLUID,
    tapping_lubricant: TITANIUM_TAP_OIL,
    back_off: TITANIUM_BACK_OFF,
    drill_advice: &[STEEP_POINT, SHORT_DRILL, NEVER_DWELL],
    tap_advice: &[TITANIUM_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "It is as strong as a hardened and tempered steel, and blunts plain drills quickly.",
        ),
        SPRINGS_BACK,
        TITANIUM_MACHINABILITY,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a plain bearing or a sliding part: it galls on nearly everything."),
    ],
    salvage: &[TITANIUM_FILE_TEST, practice("Bolt heads marked 6-4 or Ti are mostly this.")],
    cautions: &[
        REACTIVE,
        TITANIUM_SEIZES,
        practice("Go slowly under 4 mm: a broken tap or drill in it seldom comes out."),
    ],
    dangers: &[
        dangers::TITANIUM_FIRE,
        dangers::TITANIUM_SWARF,
        dangers::LONG_SWARF,
        dangers::FLUID,
    ],
};
