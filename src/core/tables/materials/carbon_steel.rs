//! Carbon steels harder than mild: medium carbon, case-hardening and spring steel.

use super::HardnessScale::{Brinell, RockwellC, Vickers};
use super::MachinabilityBasis::Steel1212;
use super::ferrous::{
    BEFORE_HARDENING, CUTTING_OIL, HALF_TURN, PRESSURE_BY_CODE, QUARTER_TURN, RECALLED, SHARP_TAP,
    SOLUBLE_OIL, SOLUBLE_OR_CUTTING_OIL, SPIRAL_POINT, SPLIT_POINT, STANDARD_POINT, STRINGS,
    TEMPER_ALWAYS,
};
use super::property::{Property, at_least, at_most, between, exactly};
use super::sources::{
    CHICAGO_TUBE, COOPER_EN36, ENGINEERING_TOOLBOX, INTERWIRE, LUCCHINI, MAKEITFROM_A228,
    MH_FLUIDS, NJR_EN36, ROUND_STEEL, SAARSTAHL_C67S, SCHMITZ_C15, STEELPIPES_EN36, WEST_YORKSHIRE,
    WORLD_MATERIAL, mark, practice, read, recalled_mark,
};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const MEDIUM_CARBON_STEEL: Material = Material {
    slug: "medium-carbon-steel",
    name: "medium carbon steel",
    aliases: &[],
    known_as: &["0.4 carbon steel", "40 carbon steel"],
    designations: &[
        mark("EN8", ROUND_STEEL).old(),
        mark("080M40", ROUND_STEEL).old(),
        mark("C40", ROUND_STEEL),
        mark("C45", ROUND_STEEL),
        mark("1.0511", ROUND_STEEL),
        mark("AISI 1040", ROUND_STEEL).abroad(),
        mark("AISI 1045", ROUND_STEEL).abroad(),
    ],
    met_in: &[practice(
        "Parts that carry more than mild steel will: crankshafts, axles, connecting rods, studs, keys and spindles.",
    )],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(exactly(550.0), "normalised, 6 to 150 mm", WORLD_MATERIAL),
        Property::proof(exactly(280.0), "normalised, 6 to 150 mm", WORLD_MATERIAL),
        Property::hardness(
            Brinell,
            between(152.0, 207.0),
            "normalised, 6 to 150 mm",
            WORLD_MATERIAL,
        ),
        Property::tensile(exactly(660.0), "cold drawn, 6 to 13 mm", WORLD_MATERIAL),
        Property::proof(exactly(530.0), "cold drawn, 6 to 13 mm", WORLD_MATERIAL),
        Property::tensile(exactly(620.0), "cold drawn, 16 to 40 mm", WORLD_MATERIAL),
        Property::proof(exactly(480.0), "cold drawn, 16 to 40 mm", WORLD_MATERIAL),
        Property::hardness(Brinell, between(201.0, 255.0), "condition R", ROUND_STEEL),
        Property::hardness(
            RockwellC,
            between(50.0, 55.0),
            "skin, flame or induction hardened",
            ROUND_STEEL,
        ),
        Property::machinability(Steel1212, exactly(57.0), "AISI 1045", CHICAGO_TUBE),
        Property::machinability(Steel1212, exactly(64.0), "AISI 1040", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NAVY_MEDIUM_CARBON,
        drilling::JET_MEDIUM_CARBON,
        drilling::PROTO_MEDIUM_CARBON,
        drilling::PROTO_MEDIUM_CARBON_SOFT,
        drilling::PROTO_MEDIUM_CARBON_HARD,
        drilling::PROTO_MEDIUM_CARBON_TEMPERED,
    ],
    tapping: &[
        tapping::CHART_MEDIUM_CARBON,
        tapping::CLARKSON_CARBON_STEEL,
        tapping::SUPPLIER_CARBON_STEEL,
        tapping::CATALOGUE_MEDIUM_CARBON,
        tapping::LATHE_STEEL,
    ],
    reaming: &[
        reaming::MEDIUM_CARBON,
        reaming::MEDIUM_CARBON_SOFT,
        reaming::MEDIUM_CARBON_HARD,
        reaming::MEDIUM_CARBON_TEMPERED,
        reaming::MEDIUM_CARBON_TEMPERED_HARD,
    ],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: read("Use 25 to 40 % lard oil in mineral oil.", MH_FLUIDS),
    back_off: HALF_TURN,
    drill_advice: &[STANDARD_POINT],
    tap_advice: &[SHARP_TAP, SPIRAL_POINT],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is tougher than mild steel: slower speed, firm feed, plenty of oil."),
        STRINGS,
        practice("It hardens in water or oil from red heat, and is then tempered well back."),
    ],
    not_for: &[
        PRESSURE_BY_CODE,
        practice("Not for welding without preheat and slow cooling: the joint cracks."),
    ],
    salvage: &[practice(
        "Axles, half-shafts and large bolts may pass for it and may be hardened or alloyed: file them first, and soften at red heat with slow cooling if the file skids.",
    )],
    cautions: &[practice(
        "It hardens if it is heated and cooled fast: a flame-cut edge or the place beside a weld may blunt a drill.",
    )],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const CASE_HARDENING_STEEL: Material = Material {
    slug: "case-hardening-steel",
    name: "case-hardening steel",
    aliases: &[],
    known_as: &["carburising steel", "case hardening mild steel", "EN32B", "EN36A", "EN36C"],
    designations: &[
        mark("EN32", WEST_YORKSHIRE).old(),
        mark("080M15", WEST_YORKSHIRE).old(),
        mark("EN36", WEST_YORKSHIRE).old(),
        mark("655M13", WEST_YORKSHIRE).old(),
        mark("EN36B", STEELPIPES_EN36).old(),
        mark("C15E", LUCCHINI),
        mark("1.1141", LUCCHINI),
        mark("1.0401", SCHMITZ_C15),
        mark("1.5752", NJR_EN36),
        mark("AISI 1015", LUCCHINI).abroad(),
        mark("AISI 3316", NJR_EN36).abroad(),
    ],
    met_in: &[practice(
        "Parts with a hard skin on a tough core: gudgeon and crank pins, cams, rollers, gears, die blocks and gauge faces.",
    )],
    refused: None,
    // EN32, the kind bought for small work, is a mild steel and takes the aim of bright mild
    // steel. EN36 is an alloy steel: its advice says to go easier.
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(exactly(500.0), "EN32, core after hardening, about", WEST_YORKSHIRE),
        Property::tensile(at_least(1000.0), "EN36, core after hardening", WEST_YORKSHIRE),
        Property::tensile(between(700.0, 770.0), "EN36, annealed", COOPER_EN36),
        Property::proof(exactly(540.0), "EN36, annealed", COOPER_EN36),
        Property::elongation(exactly(25.0), "EN36, annealed", COOPER_EN36),
        Property::hardness(Brinell, exactly(255.0), "EN36, annealed", COOPER_EN36),
        Property::hardness(
            Vickers,
            exactly(115.0),
            "C15 (EN32), normalised, one bar of 28 mm",
            SCHMITZ_C15,
        ),
        Property::hardness(RockwellC, between(59.0, 62.0), "the case, hardened", WEST_YORKSHIRE),
        Property::machinability(
            Steel1212,
            exactly(78.0),
            "EN32: AISI 1018, the nearest rated",
            CHICAGO_TUBE,
        ),
    ],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::PROTO_LOW_CARBON_SOFT,
        drilling::PROTO_LOW_CARBON,
        drilling::NAVY_ALLOY,
    ],
    tapping: &[
        tapping::CLARKSON_ALLOY_STEEL,
        tapping::CHART_LOW_CARBON,
        tapping::CLARKSON_CARBON_STEEL,
        tapping::SUPPLIER_MILD_STEEL,
        tapping::LATHE_STEEL,
    ],
    reaming: &[reaming::LOW_CARBON, reaming::LOW_CARBON_SOFT],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OR_CUTTING_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: HALF_TURN,
    drill_advice: &[STANDARD_POINT, practice("Drill EN36 at the speed of alloy steel.")],
    tap_advice: &[
        SHARP_TAP,
        practice("In EN36 go for the easier tapping size: it is an alloy steel and tough."),
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    // Pins, cams and gears; not cylinders or fittings.
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("As bought it is soft: EN32 cuts like mild steel and strings, EN36 is tougher."),
        practice(
            "Heated red in carbon it takes a hard skin; threads are plugged with clay or left with metal on, because a cased thread chips and jams.",
        ),
    ],
    not_for: &[
        PRESSURE_BY_CODE,
        practice(
            "Not for parts ground or drilled after hardening: the case is thin and a drill will not touch it.",
        ),
    ],
    salvage: &[practice(
        "Gudgeon pins and gears from vehicles are cased: a file skids on the skin and bites at a cut end.",
    )],
    cautions: &[
        BEFORE_HARDENING,
        practice("It grows and moves a little in hardening: leave fitted holes to be lapped."),
    ],
    dangers: &[dangers::QUENCH, dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const SPRING_STEEL: Material = Material {
    slug: "spring-steel",
    name: "spring steel",
    aliases: &["piano-wire"],
    known_as: &["music wire", "spring steel strip", "spring wire", "blue spring steel"],
    designations: &[
        mark("C67S", SAARSTAHL_C67S),
        mark("1.1231", SAARSTAHL_C67S),
        recalled_mark("EN 10270-1"),
        recalled_mark("CS80").old(),
        recalled_mark("CS95").old(),
        recalled_mark("EN42").old(),
        recalled_mark("070A72").old(),
        mark("AISI 1070", SAARSTAHL_C67S).abroad(),
        mark("ASTM A228", INTERWIRE).abroad(),
    ],
    met_in: &[practice(
        "Leaf springs, clips, shims and scrapers from strip; coil springs, pins and small drills from piano wire.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.8), "piano wire", MAKEITFROM_A228),
        Property::tensile(at_most(640.0), "strip C67S, soft annealed", SAARSTAHL_C67S),
        Property::proof(at_most(510.0), "strip C67S, soft annealed", SAARSTAHL_C67S),
        Property::hardness(Vickers, at_most(200.0), "strip C67S, soft annealed", SAARSTAHL_C67S),
        Property::proof(
            between(1200.0, 1900.0),
            "strip C67S, hardened and tempered",
            SAARSTAHL_C67S,
        ),
        Property::hardness(
            Vickers,
            between(370.0, 580.0),
            "strip C67S, hardened and tempered",
            SAARSTAHL_C67S,
        ),
        Property::tensile_ksi(between(350.0, 387.0), "piano wire, 0.020 in", INTERWIRE),
        Property::tensile_ksi(between(315.0, 349.0), "piano wire, 0.040 in", INTERWIRE),
        Property::tensile_ksi(between(261.0, 288.0), "piano wire, 0.125 in", INTERWIRE),
        Property::machinability(
            Steel1212,
            exactly(42.0),
            "AISI 1095, the nearest rated, annealed",
            ENGINEERING_TOOLBOX,
        ),
    ],
    // Annealed strip only; hardened strip and wire are out of reach of these speeds.
    drilling: &[
        drilling::PROTO_HIGH_CARBON,
        drilling::PROTO_HIGH_CARBON_MEDIUM,
        drilling::PROTO_HIGH_CARBON_SOFT,
        drilling::PROTO_HIGH_CARBON_TEMPERED,
    ],
    tapping: &[tapping::CHART_HIGH_CARBON, tapping::SUPPLIER_HIGH_CARBON],
    reaming: &[
        reaming::HIGH_CARBON,
        reaming::HIGH_CARBON_SOFT,
        reaming::HIGH_CARBON_HARD,
        reaming::HIGH_CARBON_TEMPERED,
    ],
    feeds: &[],
    drilling_lubricant: CUTTING_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[
        SPLIT_POINT,
        practice(
            "Hardened strip wants a solid carbide drill, or a punch and die, or softening at the place; a high-speed steel drill only polishes it.",
        ),
        practice("Clamp thin strip between two plates and drill through all three."),
    ],
    tap_advice: &[
        practice(
            "Tap it soft, with the larger tapping size; in thin strip use a nut or a bush instead.",
        ),
        SHARP_TAP,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    // Springs and clips; a tapped hole in steam is not likely.
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "Annealed strip cuts like silver steel; blue or polished tempered strip will not be cut by a drill that is not carbide.",
        ),
        practice(
            "Piano wire is drawn hard and is not drilled at all: bend it, grind it, or soften the end.",
        ),
        practice("Harden strip from cherry red in oil, then temper it blue."),
    ],
    not_for: &[
        practice(
            "Not for a safety valve's spring by guess: the spring is part of the boiler's papers, and the inspector passes it.",
        ),
        practice(
            "Not for use after it has been made red hot, until it is hardened and tempered again.",
        ),
    ],
    salvage: &[practice(
        "Clock springs, bandsaw blades, hacksaw blades and old piano strings are good stock, and hard: soften at red heat and let it cool slowly to drill it.",
    )],
    cautions: &[
        BEFORE_HARDENING,
        TEMPER_ALWAYS,
        practice(
            "A nick or a sharp-edged hole starts a crack: break the edges and polish along the spring.",
        ),
    ],
    dangers: &[dangers::SPRINGS_BACK, dangers::HARD_PIECES, dangers::QUENCH, dangers::FLUID],
};
