//! The phosphor bronzes, cast, drawn and free-cutting, and aluminium bronze.
//!
//! Gunmetal and leaded bronze are in `gunmetal`.

use super::caution::Work;
use super::copper_sentences::{
    BACK_OFF_TOUGH, BRONZE_TAPPING, DUB_BRONZE, GRIPS_A_DRILL, KEEN_EDGE, SHARP_TAP, SOLUBLE_OIL,
    STRAIGHT_FLUTES, UNDER_PRESSURE, UNKNOWN_STOCK, WHICH_BRONZE, WORK_HARDENS,
};
use super::property::{at_least, between, exactly};
use super::sources::{
    AALCO_CA104, AALCO_CW451K, AVIVA_C54400, AZOM_CA104, CASTINGS_C62400, CDA_C54400, CW481K,
    HOOD_PB1, HOOD_PB102, KEMPER, POPULAR_MECHANICS, mark, practice, read, recalled, recalled_mark,
};
use super::{
    BrokenTap, Chips, Family, FormingTap, Group, HardnessScale, MachinabilityBasis, Material,
    PressureWork, Property, dangers,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const PHOSPHOR_BRONZE_CAST: Material = Material {
    slug: "phosphor-bronze-cast",
    name: "cast phosphor bronze",
    aliases: &["cast-phosphor-bronze"],
    known_as: &["phosphor bronze casting", "tin bronze"],
    designations: &[
        mark("PB1", HOOD_PB1).old(),
        mark("CC481K", KEMPER),
        mark("CuSn11P-C", KEMPER),
        mark("C90700", HOOD_PB1).abroad(),
        mark("C91700", HOOD_PB1).abroad(),
    ],
    met_in: &[
        practice("Cast stick for bushes on hard shafts, worm wheels, pump and valve parts."),
        read(
            "Its stockist names gears, worm wheels, bushes and bearings for medium to heavy loads.",
            HOOD_PB1,
        ),
    ],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Bronze,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    // Two sheets differ by 2 % on the density: 8.6 is printed for the grade by its founder, 8.78 by
    // a stockist of cast stick.
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.6), "", KEMPER),
        Property::density(exactly(8.78), "continuous casting", HOOD_PB1),
        Property::tensile(exactly(360.0), "continuous casting", CW481K),
        Property::proof(exactly(170.0), "continuous casting", CW481K),
        Property::elongation(exactly(6.0), "continuous casting", CW481K),
        Property::hardness(HardnessScale::Brinell, exactly(100.0), "continuous casting", CW481K),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(30.0), "", HOOD_PB1),
    ],
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::CHART_CAST_BRONZE, tapping::LAVALLEE_BRONZE, tapping::SUPPLIER_BRONZE],
    reaming: &[reaming::RECALLED_STRONG_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: read("Turn back slightly after each half turn.", POPULAR_MECHANICS),
    drill_advice: &[DUB_BRONZE, KEEN_EDGE],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        WORK_HARDENS,
        DUB_BRONZE,
        read("The foundry puts its machinability in class 3, where class 1 is the best.", KEMPER),
    ],
    not_for: &[
        practice(
            "Not for a bearing on a soft shaft: it wants a hard one, use leaded bronze or gunmetal.",
        ),
        UNDER_PRESSURE,
    ],
    salvage: &[
        practice(
            "Worm wheels, heavy bushes and pump parts of old machines; redder and harder to file than gunmetal.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::OpeningOut.says(GRIPS_A_DRILL),
        Work::MarkingOut.says(practice(
            "Sand in the skin of a casting blunts drills and taps: clean it off first.",
        )),
        Work::Stock.says(WHICH_BRONZE),
    ],
    dangers: &[dangers::MAY_HOLD_LEAD, dangers::GRAB, dangers::FINE_DUST, dangers::FLUID],
};

pub(super) const PHOSPHOR_BRONZE_DRAWN: Material = Material {
    slug: "phosphor-bronze-drawn",
    name: "drawn phosphor bronze",
    aliases: &["drawn-phosphor-bronze"],
    known_as: &["phosphor bronze strip", "hard drawn phosphor bronze"],
    designations: &[
        mark("PB102", HOOD_PB102).old(),
        mark("CW451K", HOOD_PB102),
        mark("CuSn5", HOOD_PB102),
        mark("NES 838", HOOD_PB102).old(),
        mark("C51000", HOOD_PB102).abroad(),
    ],
    met_in: &[
        practice(
            "Rod, strip, sheet and wire for valve spindles, pump rams, studs, springs and bearing strips.",
        ),
        practice(
            "It is the usual bronze of boiler stays and of fittings turned from bar, where the drawing says so.",
        ),
    ],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Bronze,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.85), "", HOOD_PB102),
        Property::tensile(between(400.0, 720.0), "sheet, EN 1652", AALCO_CW451K),
        Property::proof(between(240.0, 670.0), "sheet, EN 1652", AALCO_CW451K),
        Property::hardness(HardnessScale::Vickers, between(75.0, 230.0), "sheet, EN 1652", AALCO_CW451K),
        Property::tensile(at_least(460.0), "rod, 18 to 40 mm", HOOD_PB102),
        Property::proof(at_least(380.0), "rod, 18 to 40 mm", HOOD_PB102),
        Property::elongation(at_least(12.0), "rod, 18 to 40 mm", HOOD_PB102),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(20.0), "", HOOD_PB102),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, between(20.0, 25.0), "in the text of the same sheet", HOOD_PB102),
    ],
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::LAVALLEE_BRONZE, tapping::SUPPLIER_BRONZE],
    reaming: &[reaming::RECALLED_STRONG_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[DUB_BRONZE, KEEN_EDGE],
    tap_advice: &[
        recalled("It is tough and work-hardens: choose the tapping drill on the large side."),
        SHARP_TAP,
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        WORK_HARDENS,
        DUB_BRONZE,
        recalled("It is tough: choose the tapping drill on the large side."),
    ],
    not_for: &[
        practice(
            "Not in place of a cast bronze bearing without thought: it is springy, and wears a soft shaft.",
        ),
        UNDER_PRESSURE,
    ],
    salvage: &[
        practice(
            "Pump rods, switch springs and instrument strip; springy strip may be beryllium copper, so leave what is not marked.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[Work::OpeningOut.says(GRIPS_A_DRILL), Work::Stock.says(WHICH_BRONZE)],
    dangers: &[
        dangers::MAY_HOLD_LEAD,
        dangers::GRAB,
        dangers::LONG_SWARF,
        dangers::BERYLLIUM,
        dangers::FLUID,
    ],
};

// Four percent of lead makes a wrought bronze cut at four fifths of free-cutting brass: it stands
// with the leaded bronzes, not with the phosphor bronzes that its name and strength recall.
pub(super) const FREE_CUTTING_PHOSPHOR_BRONZE: Material = Material {
    slug: "free-cutting-phosphor-bronze",
    name: "free-cutting phosphor bronze",
    aliases: &[],
    known_as: &["leaded phosphor bronze", "free machining phosphor bronze", "wrought gunmetal"],
    designations: &[
        mark("CW456K", AVIVA_C54400),
        mark("CuSn4Pb4Zn4", AVIVA_C54400),
        mark("C54400", CDA_C54400).abroad(),
    ],
    met_in: &[practice(
        "Drawn rod for bushes, spindles, small gears and turned parts that want bronze and much cutting.",
    )],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::Bronze,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.89), "", CDA_C54400),
        Property::tensile_ksi(exactly(68.0), "hard rod, 1 in", CDA_C54400),
        Property::proof_ksi(exactly(57.0), "hard rod, 1 in, at 0.5 % extension", CDA_C54400),
        Property::elongation(exactly(20.0), "hard rod, 1 in", CDA_C54400),
        Property::hardness(HardnessScale::RockwellB, exactly(80.0), "hard rod, 1 in", CDA_C54400),
        Property::tensile_ksi(exactly(75.0), "hard rod, 1/2 in", CDA_C54400),
        Property::hardness(HardnessScale::RockwellB, exactly(83.0), "hard rod, 1/2 in", CDA_C54400),
        Property::tensile_ksi(exactly(44.0), "flat, annealed", CDA_C54400),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(80.0), "", CDA_C54400),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRONZE, drilling::JET_BRASS_BRONZE],
    tapping: &[tapping::LAVALLEE_BRONZE, tapping::CLARKSON_BRASS_BRONZE, tapping::SUPPLIER_BRONZE],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: practice("Its chips are short: turn back once a turn, and clear a blind hole often."),
    drill_advice: &[DUB_BRONZE],
    tap_advice: &[STRAIGHT_FLUTES],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[practice(
        "It turns, drills and taps nearly as brass does, with the strength of a phosphor bronze.",
    )],
    not_for: &[
        practice("Not for springs: ask for drawn phosphor bronze without lead."),
        practice("Not for silver soldering: the lead makes it hot-short, and it cracks."),
        UNDER_PRESSURE,
    ],
    salvage: &[
        practice(
            "It looks like any drawn bronze; short chips under the drill are the only sign, so buy it marked.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::Stock.says(WHICH_BRONZE),
        Work::OtherCuts.says(practice(
            "Hard-drawn rod moves when a flat or a bore is cut: rough it, let it move, finish.",
        )),
    ],
    dangers: &[dangers::LEAD, dangers::LEAD_BY_HAND, dangers::GRAB, dangers::FLUID],
};

// As strong and as hard as an alloy steel, and a tap in it fares as in one: tough.
pub(super) const ALUMINIUM_BRONZE: Material = Material {
    slug: "aluminium-bronze",
    name: "aluminium bronze",
    aliases: &[],
    known_as: &["nickel aluminium bronze", "ali bronze", "cast aluminium bronze"],
    designations: &[
        mark("CA104", AZOM_CA104).old(),
        mark("CW307G", AALCO_CA104),
        recalled_mark("CuAl10Ni5Fe4"),
        mark("AB1", AZOM_CA104).old(),
        mark("AB2", AZOM_CA104).old(),
        recalled_mark("CC331G"),
        recalled_mark("CC333G"),
        mark("C63200", AALCO_CA104).abroad(),
        recalled_mark("C63000").abroad(),
    ],
    met_in: &[practice(
        "Bar and castings for valve seats and spindles, pump shafts, boat fittings, worm wheels and guide bushes.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Bronze,
    chips: Chips::Long,
    // It nips a drill by swelling, which a dubbed lip makes worse: no dubbing, so not marked.
    grabs: false,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(7.58), "CA104", AALCO_CA104),
        Property::tensile(at_least(680.0), "CA104, least of the range 680 to 740", AZOM_CA104),
        Property::proof(at_least(320.0), "CA104, least of the range 320 to 400", AZOM_CA104),
        Property::elongation(at_least(8.0), "CA104, least of the range 8 to 10", AZOM_CA104),
        Property::hardness(HardnessScale::Brinell, between(170.0, 210.0), "CA104", AZOM_CA104),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(50.0), "C62400, without nickel", CASTINGS_C62400),
    ],
    drilling: &[drilling::JET_HIGH_TENSILE_BRONZE, drilling::NORSEMAN_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::LAVALLEE_ALUMINIUM_BRONZE, tapping::CLARKSON_STRONG_BRONZE],
    reaming: &[reaming::RECALLED_STRONG_BRONZE],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: BRONZE_TAPPING,
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[
        practice(
            "Use a sharp drill with full clearance, a firm steady feed and plenty of coolant; do not dub it.",
        ),
        practice(
            "It swells as it warms and nips the drill: clear often, and let it cool before gauging or reaming.",
        ),
    ],
    tap_advice: &[
        SHARP_TAP,
        practice(
            "Use high-speed steel taps and the largest drill the thread allows: it breaks carbon ones.",
        ),
    ],
    forming_tap: FormingTap::Refuse,
    // The reports on alum speak of brass, phosphor bronze and copper; this holds a tenth of
    // aluminium.
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        WORK_HARDENS,
        practice(
            "It is hard, tough and springy, and its oxide skin blunts an edge: get under the skin at the first cut.",
        ),
        practice("It galls: a dry stud in it may seize for good, so oil every thread."),
    ],
    not_for: &[
        practice("Not for a bearing on a soft shaft: it scores it."),
        practice(
            "Not for soft or silver solder without the right flux: the alumina skin refuses it.",
        ),
        UNDER_PRESSURE,
    ],
    salvage: &[
        practice(
            "Marine and pump scrap of golden colour, light for a bronze, which files hard; some of it draws a magnet.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[Work::OpeningOut.says(GRIPS_A_DRILL), Work::Stock.says(WHICH_BRONZE)],
    dangers: &[dangers::GRAB, dangers::LONG_SWARF, dangers::FINE_DUST, dangers::FLUID],
};
