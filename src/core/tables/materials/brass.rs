//! The tougher brasses, with little or no lead: sheet, naval, high-tensile, and nickel silver.
//!
//! None of them has a speed table of its own in print that we found. They take the rows of brass
//! and of the bronze that is nearest in strength, under the words of the source.

use super::copper_sentences::{
    AMMONIA, BACK_OFF_TOUGH, BRASS_DRILLING, BRASS_TAPPING, DUB_BRASS, GRIPS_A_DRILL, KEEN_EDGE,
    SHARP_TAP, SHEET_CLIMBS, SOFT_JAWS, UNDER_PRESSURE, UNKNOWN_STOCK, WORK_HARDENS, ZINC_LEAVES,
};
use super::property::{between, exactly};
use super::sources::{
    AALCO_CZ108, AALCO_CZ114, ANCHOR_C46400, AZOM_CZ108, AZOM_CZ114, CDA_120_SHEET, CW408J,
    DURBIN_CW721R, KNIGHT, RAJHANS_CZ108, RAJHANS_CZ115, SHREE_CZ114, SMITH, mark, practice, read,
    recalled_mark,
};
use super::{
    BrokenTap, Chips, Family, FormingTap, Group, HardnessScale, MachinabilityBasis, Material,
    PressureWork, Property, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

// Ductile and tough, a third as easy to cut as CZ121: it stands with phosphor bronze, not with the
// free-cutting brass whose colour it has. Being thin, it gets six points more as any sheet does.
pub(super) const SHEET_BRASS: Material = Material {
    slug: "sheet-brass",
    name: "sheet brass",
    aliases: &[],
    known_as: &[
        "brass sheet",
        "brass strip",
        "brass shim",
        "brass tube",
        "common brass",
        "basis brass",
        "yellow brass",
        "cartridge brass",
        "70/30 brass",
    ],
    designations: &[
        mark("CZ108", AALCO_CZ108).old(),
        mark("CW508L", AALCO_CZ108),
        mark("CuZn37", CDA_120_SHEET),
        mark("C27200", AALCO_CZ108).abroad(),
        mark("CZ106", KNIGHT).old(),
        mark("CW505L", KNIGHT),
        mark("CuZn30", KNIGHT),
        mark("C26000", KNIGHT).abroad(),
    ],
    met_in: &[
        practice(
            "Sheet, strip, shim, wire and thin tube: tanks, cabs, lagging bands, boiler cladding, flashing.",
        ),
        practice("The brass to bend, press, rivet and flange."),
    ],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Brass,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.44), "CZ108", AALCO_CZ108),
        Property::tensile(exactly(275.0), "CZ108, annealed", AALCO_CZ108),
        Property::tensile(between(355.0, 585.0), "CZ108 sheet, annealed to hard", CDA_120_SHEET),
        Property::tensile(between(300.0, 550.0), "CZ108 sheet", AZOM_CZ108),
        Property::proof(between(125.0, 550.0), "CZ108 sheet, annealed to hard", CDA_120_SHEET),
        Property::elongation(between(7.0, 55.0), "CZ108 sheet, hard to annealed", CDA_120_SHEET),
        Property::hardness(HardnessScale::Vickers, exactly(80.0), "CZ108, annealed", AALCO_CZ108),
        Property::hardness(HardnessScale::Vickers, exactly(110.0), "CZ108, half hard", AALCO_CZ108),
        Property::hardness(HardnessScale::Vickers, exactly(160.0), "CZ108, extra hard", AALCO_CZ108),
        Property::tensile(between(325.0, 540.0), "CZ106 sheet, annealed to hard", CDA_120_SHEET),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(35.0), "CZ108", RAJHANS_CZ108),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NOMINAL_BRASS, drilling::NAVY_BRASS],
    tapping: &[tapping::CLARKSON_BRASS, tapping::LAVALLEE_BRASS],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &feeds::BRASS,
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[
        read(
            "A drill digs in (cartridge brass): no helix or slightly negative, or stone a flat on its lips.",
            SMITH,
        ),
        practice(
            "In thin sheet use a sheet drill, a stepped drill or a punch, on a backing of hard wood.",
        ),
        DUB_BRASS,
    ],
    tap_advice: &[
        practice(
            "Thin sheet holds few threads: a finer thread, a nut, or a bush soldered on holds better.",
        ),
        SHARP_TAP,
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        read("It can be machined, but only with slow speeds and very light feeds.", AZOM_CZ108),
        practice(
            "It drags and tears where free-cutting brass chips, and throws up a burr on the far side.",
        ),
        practice(
            "It hardens as it is bent or rolled; soften it at dull red and cool it as you like.",
        ),
    ],
    not_for: &[
        ZINC_LEAVES,
        read("Not for moist ammonia, or acetic, hydrochloric or nitric acid.", AALCO_CZ108),
        AMMONIA,
        practice("Not for turned parts with fine threads: it tears, use free-cutting brass."),
    ],
    salvage: &[
        practice(
            "Cartridge and shell cases, lamp bases, kick plates and finger plates are of this kind.",
        ),
        practice("Never cut, drill or heat a case that may be live or has a primer in it."),
        practice("Plated steel looks the same: try a magnet and a file on the edge."),
    ],
    cautions: &[SHEET_CLIMBS, UNDER_PRESSURE, SOFT_JAWS],
    dangers: &[
        dangers::GRAB,
        dangers::MAY_HOLD_LEAD,
        dangers::LONG_SWARF,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};

// At 75,000 lb a square inch and a machinability of 30 it cuts like cast phosphor bronze.
pub(super) const NAVAL_BRASS: Material = Material {
    slug: "naval-brass",
    name: "naval brass",
    aliases: &[],
    known_as: &["admiralty naval brass", "naval bronze"],
    designations: &[
        mark("CZ112", CDA_120_SHEET).old(),
        mark("CW712R", CDA_120_SHEET),
        mark("CuZn36Sn1Pb", CDA_120_SHEET),
        recalled_mark("CZ133").old(),
        recalled_mark("CW719R"),
        recalled_mark("CuZn39Sn1"),
        mark("C46400", ANCHOR_C46400).abroad(),
    ],
    met_in: &[practice(
        "Propeller shafts, studs, pump rods and fittings of model boats and of full-size marine scrap.",
    )],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Brass,
    chips: Chips::Long,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.41), "C46400, printed 0.304 lb/in³", ANCHOR_C46400),
        Property::tensile_ksi(exactly(75.0), "C46400, 1 in rod, half hard", ANCHOR_C46400),
        Property::proof_ksi(exactly(53.0), "C46400, 1 in rod, half hard", ANCHOR_C46400),
        Property::elongation(exactly(20.0), "C46400, 1 in rod, half hard", ANCHOR_C46400),
        Property::hardness(HardnessScale::RockwellB, exactly(82.0), "C46400, 1 in rod, half hard", ANCHOR_C46400),
        Property::tensile(between(370.0, 525.0), "CZ112 sheet, annealed to hard", CDA_120_SHEET),
        Property::hardness(HardnessScale::Vickers, between(95.0, 160.0), "CZ112 sheet, annealed to hard", CDA_120_SHEET),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(30.0), "C46400", ANCHOR_C46400),
    ],
    drilling: &[
        drilling::NORSEMAN_HIGH_TENSILE_BRONZE,
        drilling::NORSEMAN_BRASS_BRONZE,
        drilling::NAVY_BRASS,
    ],
    tapping: &[tapping::CLARKSON_BRASS, tapping::LAVALLEE_BRASS],
    reaming: &[reaming::RECALLED_STRONG_BRONZE, reaming::RECALLED_BRASS_BRONZE],
    feeds: &feeds::BRASS,
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[
        practice(
            "Stone a small flat on the lips to open out a hole; into the solid a plain sharp drill will do.",
        ),
        DUB_BRASS,
    ],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is tougher and stringier than free-cutting brass: slower, with more oil."),
        practice(
            "The tin in it slows the loss of zinc in sea water; it does not stop it in a boiler.",
        ),
    ],
    not_for: &[
        ZINC_LEAVES,
        practice(
            "Not where free-cutting brass is meant: it takes longer and breaks more small taps.",
        ),
    ],
    salvage: &[
        practice(
            "Old propeller shafts, sea cocks and condenser plates; the filings look like any brass, the chip is longer.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[GRIPS_A_DRILL, UNDER_PRESSURE],
    dangers: &[
        dangers::MAY_HOLD_LEAD,
        dangers::GRAB,
        dangers::LONG_SWARF,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};

// Two sheets of the same supplier print 8.36 and, later, 8.63 for the density of CZ114. Its
// neighbour CZ115 has 8.42 and no copper-zinc alloy of its make-up comes near 8.6, so the later
// figure is taken for two digits exchanged and left out.
pub(super) const HIGH_TENSILE_BRASS: Material = Material {
    slug: "high-tensile-brass",
    name: "high-tensile brass",
    aliases: &[],
    known_as: &["manganese bronze", "manganese brass", "HT brass", "high strength brass"],
    designations: &[
        mark("CZ114", DURBIN_CW721R).old(),
        mark("CW721R", DURBIN_CW721R),
        mark("CZ115", RAJHANS_CZ115).old(),
        recalled_mark("CW722R"),
        recalled_mark("HTB1").old(),
        recalled_mark("CC765S"),
        mark("C67500", DURBIN_CW721R).abroad(),
    ],
    met_in: &[practice(
        "Propellers, valve spindles, strong studs, levers and marine fittings, in bar and as castings.",
    )],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Brass,
    chips: Chips::Long,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.36), "CZ114", AALCO_CZ114),
        Property::density(exactly(8.42), "CZ115", RAJHANS_CZ115),
        Property::tensile(between(440.0, 500.0), "CZ114", AZOM_CZ114),
        Property::proof(between(180.0, 270.0), "CZ114 bar, 5 to 40 mm", DURBIN_CW721R),
        Property::elongation(between(12.0, 20.0), "CZ114", AZOM_CZ114),
        Property::hardness(HardnessScale::Brinell, between(100.0, 140.0), "CZ114", AZOM_CZ114),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(30.0), "CZ114", SHREE_CZ114),
    ],
    // Bronze by name in many lists: manganese bronze is what the row of high tensile bronze means.
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::CLARKSON_BRASS, tapping::LAVALLEE_BRONZE],
    reaming: &[reaming::RECALLED_STRONG_BRONZE],
    feeds: &[],
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[KEEN_EDGE],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Refuse,
    // It holds iron, manganese and aluminium, which the reports on alum do not speak of.
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It is as strong as mild steel and cuts about as hard, to chips that break if the feed is kept up.",
        ),
        practice("It grabs on breaking through, as any brass does."),
    ],
    not_for: &[
        ZINC_LEAVES,
        practice(
            "Not for a bearing on a soft shaft: it is hard and scores it, use gunmetal or leaded bronze.",
        ),
        AMMONIA,
    ],
    salvage: &[
        practice(
            "Old propellers and ships' fittings; some of it draws a magnet faintly, which brass and gunmetal do not.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[GRIPS_A_DRILL, UNDER_PRESSURE],
    dangers: &[
        dangers::MAY_HOLD_LEAD,
        dangers::GRAB,
        dangers::ZINC_FUME,
        dangers::FINE_DUST,
        dangers::FLUID,
    ],
};

// A brass with nickel, and the family is that of brass: strength, hardness and machinability are
// those of drawn phosphor bronze, so it stands in that group.
pub(super) const NICKEL_SILVER: Material = Material {
    slug: "nickel-silver",
    name: "nickel silver",
    aliases: &[],
    known_as: &["german silver", "nickel brass", "white brass", "nickel silver sheet"],
    designations: &[
        mark("NS103", KNIGHT).old(),
        mark("CW401J", KNIGHT),
        mark("NS104", KNIGHT).old(),
        mark("CW403J", KNIGHT),
        mark("CuNi12Zn24", KNIGHT),
        mark("NS106", KNIGHT).old(),
        mark("CW409J", KNIGHT),
        mark("CuNi18Zn20", KNIGHT),
        mark("CW408J", CW408J),
        mark("C74500", KNIGHT).abroad(),
        mark("C75700", KNIGHT).abroad(),
        mark("C75200", KNIGHT).abroad(),
    ],
    met_in: &[practice(
        "Etched sheet and rail for small-scale models, scales and name plates, bright fittings, lock and clock parts.",
    )],
    refused: None,
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Brass,
    chips: Chips::Long,
    grabs: true,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.75), "CW408J", CW408J),
        Property::tensile(exactly(420.0), "CW408J, annealed", CW408J),
        Property::proof(exactly(160.0), "CW408J, annealed", CW408J),
        Property::elongation(exactly(40.0), "CW408J, annealed", CW408J),
        Property::hardness(HardnessScale::Vickers, exactly(90.0), "CW408J, annealed", CW408J),
        Property::tensile(exactly(640.0), "CW408J, full hard", CW408J),
        Property::proof(exactly(540.0), "CW408J, full hard", CW408J),
        Property::elongation(exactly(5.0), "CW408J, full hard", CW408J),
        Property::hardness(HardnessScale::Vickers, exactly(200.0), "CW408J, full hard", CW408J),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(30.0), "CW408J, with 1 % lead, an estimate", CW408J),
    ],
    drilling: &[drilling::NORSEMAN_HIGH_TENSILE_BRONZE, drilling::JET_HIGH_TENSILE_BRONZE],
    tapping: &[tapping::CLARKSON_BRASS, tapping::LAVALLEE_BRONZE],
    reaming: &[reaming::RECALLED_STRONG_BRONZE],
    feeds: &[],
    drilling_lubricant: practice("Use soluble oil, as for bronze: no list we read names it."),
    tapping_lubricant: practice(
        "Use a lard or sulphur-free tapping oil, as for bronze: no list we read names it.",
    ),
    back_off: BACK_OFF_TOUGH,
    drill_advice: &[
        KEEN_EDGE,
        practice(
            "For small holes use a sharp new drill, a steady feed that keeps a chip coming and a drop of oil: it hardens at once where it is rubbed.",
        ),
    ],
    tap_advice: &[
        SHARP_TAP,
        practice("Tap the leaded kind where there is a choice: the plain kinds drag."),
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        WORK_HARDENS,
        practice("Plain nickel silver is stringy; the leaded kinds cut cleanly."),
    ],
    not_for: &[
        practice("Not silver: it holds none, and must not be sold or hallmarked as it."),
        ZINC_LEAVES,
    ],
    salvage: &[
        practice(
            "Old spoons and forks marked EPNS, keys, drawing instruments and lamp parts, often plated.",
        ),
        practice(
            "It is not magnetic, and yellower in a fresh cut than stainless steel or cupro-nickel.",
        ),
    ],
    cautions: &[SHEET_CLIMBS, UNDER_PRESSURE],
    dangers: &[
        dangers::GRAB,
        dangers::MAY_HOLD_LEAD,
        dangers::NICKEL_SKIN,
        dangers::LONG_SWARF,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};
