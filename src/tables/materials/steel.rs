//! Mild, medium carbon and tool steels.

use super::sources::{
    BIOLOGY_INSIGHTS, EN_STEELS, LUCEFIN, MH_FLUIDS, NATIONAL_STEEL, POPULAR_MECHANICS,
    ROUND_STEEL, SHEFFIELD_GAUGE, SHYAM, VMS_TAPPING, mark, practice, read, recalled,
    recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, tapping_speeds as tapping};

const SOLUBLE_OIL: Advice = read("Use soluble oil.", MH_FLUIDS);
const LARD_OR_SULPHUR: Advice = read(
    "Use 25 to 40 % lard oil in mineral oil, or 25 % sulphur-base oil in mineral oil.",
    MH_FLUIDS,
);
const CUTTING_OIL: Advice = practice("Use neat cutting oil.");
const HALF_TURN: Advice = read("Turn back slightly after each half turn.", POPULAR_MECHANICS);
const BEFORE_HARDENING: Advice =
    practice("Drill and tap it before hardening: afterwards neither will cut it.");

pub(super) const FREE_CUTTING_MILD_STEEL: Material = Material {
    slug: "free-cutting-mild-steel",
    name: "free-cutting mild steel",
    aliases: &["free-cutting-steel", "fcms"],
    known_as: &[
        "free machining mild steel",
        "free machining steel",
        "EN1A leaded",
        "EN1A Pb",
        "leaded mild steel",
    ],
    designations: &[
        mark("EN1A", SHYAM),
        mark("230M07", SHYAM),
        mark("11SMn30", LUCEFIN),
        mark("11SMnPb30", LUCEFIN),
        mark("1.0715", SHYAM),
        mark("AISI 1213", SHYAM),
        mark("AISI 1215", SHYAM),
    ],
    met_in: &[],
    refused: None,
    group: Group::FreeCuttingSteel,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::NAVY_LOW_CARBON, drilling::PROTO_LEADED, drilling::PROTO_RESULPHURISED],
    tapping: &[tapping::LAVALLEE_FREE_STEEL, tapping::CHART_LOW_CARBON],
    reaming: &[],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: LARD_OR_SULPHUR,
    back_off: read("Turn back about half a turn for each thread cut.", VMS_TAPPING),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[practice(
        "It cuts freely and cleanly; the chips break up better than those of plain mild steel.",
    )],
    not_for: &[],
    salvage: &[],
    cautions: &[
        recalled("It is not for welding."),
        practice("Bar sold as free-cutting may be leaded or not, and the two cut differently."),
    ],
    dangers: &[
        dangers::MAY_HOLD_LEAD,
        recalled("Heated red, leaded bar gives off lead fume: do not harden, forge or weld it."),
        dangers::FLUID,
    ],
};

pub(super) const BRIGHT_MILD_STEEL: Material = Material {
    slug: "bright-mild-steel",
    name: "bright mild steel",
    // The bare word means this one: the tougher of the two is the safe reading.
    aliases: &["mild-steel", "bms"],
    known_as: &["bright drawn mild steel", "low carbon steel", "cold rolled steel"],
    designations: &[
        mark("EN3B", NATIONAL_STEEL),
        mark("070M20", NATIONAL_STEEL),
        mark("EN3A", EN_STEELS),
        mark("1.0402", NATIONAL_STEEL),
        mark("AISI 1020", NATIONAL_STEEL),
    ],
    met_in: &[],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::JET_MILD,
        drilling::PROTO_LOW_CARBON,
        drilling::PROTO_LOW_CARBON_HARD,
    ],
    tapping: &[tapping::MH_1020, tapping::CHART_LOW_CARBON, tapping::CLARKSON_CARBON_STEEL],
    reaming: &[],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: practice("Use soluble oil or cutting oil."),
    tapping_lubricant: LARD_OR_SULPHUR,
    back_off: HALF_TURN,
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is gummier than free-cutting steel: a dry or blunt tap tears the thread."),
        practice("Its chips string: peck a deep hole and clear the flutes."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[practice(
        "The bright skin holds stress: a bar milled on one side may bend, so finish the faces before the holes.",
    )],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const MEDIUM_CARBON_STEEL: Material = Material {
    slug: "medium-carbon-steel",
    name: "medium carbon steel",
    aliases: &[],
    known_as: &["0.4 carbon steel", "40 carbon steel"],
    designations: &[
        mark("EN8", ROUND_STEEL),
        mark("080M40", ROUND_STEEL),
        mark("C40", ROUND_STEEL),
        mark("C45", ROUND_STEEL),
        mark("1.0511", ROUND_STEEL),
        mark("AISI 1040", ROUND_STEEL),
        mark("AISI 1045", ROUND_STEEL),
    ],
    met_in: &[],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::NAVY_MEDIUM_CARBON,
        drilling::JET_MEDIUM_CARBON,
        drilling::PROTO_MEDIUM_CARBON,
        drilling::PROTO_MEDIUM_CARBON_HARD,
    ],
    tapping: &[tapping::CHART_MEDIUM_CARBON, tapping::CLARKSON_CARBON_STEEL],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: read("Use 25 to 40 % lard oil in mineral oil.", MH_FLUIDS),
    back_off: HALF_TURN,
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is tougher than mild steel: slower speed, firm feed, plenty of oil."),
        practice("Its chips string: peck a deep hole and clear the flutes."),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[practice(
        "It hardens if it is heated and cooled fast: a flame-cut edge or the place beside a weld may blunt a drill.",
    )],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const SILVER_STEEL: Material = Material {
    slug: "silver-steel",
    name: "silver steel",
    aliases: &[],
    known_as: &["drill rod", "water hardening drill rod"],
    designations: &[
        mark("BS 1407", BIOLOGY_INSIGHTS),
        recalled_mark("1.2210"),
        recalled_mark("115CrV3"),
        recalled_mark("W1"),
    ],
    met_in: &[],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[
        drilling::JET_TOOL_STEEL,
        drilling::PROTO_HIGH_CARBON,
        drilling::PROTO_WATER_HARDENING,
    ],
    tapping: &[tapping::CHART_HIGH_CARBON],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: practice("Use soluble oil or cutting oil."),
    tapping_lubricant: CUTTING_OIL,
    back_off: practice(
        "It is tough: a quarter to half a turn on, then back until the chip breaks.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("As bought it is annealed and cuts cleanly but hard: slow speed, firm feed, oil."),
        practice(
            "A drill that rubs and heats it can leave a hard skin: sharpen, and keep it cutting.",
        ),
    ],
    not_for: &[],
    salvage: &[],
    cautions: &[
        BEFORE_HARDENING,
        practice("Temper it after hardening, always: untempered it may shatter."),
    ],
    dangers: &[
        dangers::LONG_SWARF,
        practice("Quenching spits and oil flares: long tongs, a deep bath, eyes covered."),
        dangers::FLUID,
    ],
};

pub(super) const GAUGE_PLATE: Material = Material {
    slug: "gauge-plate",
    name: "gauge plate",
    aliases: &["ground-flat-stock"],
    known_as: &[
        "gage plate",
        "ground flat steel",
        "GFS",
        "oil hardening tool steel",
        "O1 tool steel",
        "01",
    ],
    designations: &[
        mark("O1", SHEFFIELD_GAUGE),
        mark("BO1", SHEFFIELD_GAUGE),
        mark("1.2510", SHEFFIELD_GAUGE),
    ],
    met_in: &[],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[],
    drilling: &[drilling::PROTO_OIL_HARDENING, drilling::EL_HOFY_TOOL_STEEL],
    tapping: &[tapping::CHART_HIGH_CARBON, tapping::CLARKSON_ALLOY_STEEL],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: practice(
        "It is tough: a quarter to half a turn on, then back until the chip breaks.",
    ),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    // Gauges, links and cutters; not cylinders or fittings.
    pressure_work: PressureWork::Unlikely,
    behaviour: &[practice(
        "As bought it is annealed but tough: slow speed, firm feed, and lift the drill to clear it.",
    )],
    not_for: &[],
    salvage: &[],
    cautions: &[
        BEFORE_HARDENING,
        practice(
            "It may move in hardening: leave fitted holes to be lapped, or finish them after.",
        ),
        practice("Temper it after hardening, always: untempered it may shatter."),
    ],
    dangers: &[
        dangers::LONG_SWARF,
        practice("Quenching spits and oil flares: long tongs, a deep bath, eyes covered."),
        dangers::FLUID,
    ],
};
