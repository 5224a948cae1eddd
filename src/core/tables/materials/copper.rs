//! Copper, cupro-nickel, and beryllium copper, which is refused.

use super::caution::Work;
use super::copper_sentences::{SHARP_TAP, SOLUBLE_OIL, UNDER_PRESSURE, UNKNOWN_STOCK};
use super::property::{at_least, between, exactly};
use super::sources::{
    BOYNES_CB101, CDA_CUPRO_NICKEL, CDA_TEMPER, HUSSEY_C11000, HUSSEY_C70600, JSK_C17200, KNIGHT,
    OSHA_BERYLLIUM, RIGHTON_C106, VMS_TAPPING, mark, practice, read, recalled, recalled_mark,
};
use super::{
    BrokenTap, Chips, Family, FormingTap, Group, HardnessScale, MachinabilityBasis, Material,
    PressureWork, Property, dangers,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};
use crate::tables::source::Source;

const RECALLED: Source = Source::memory("recalled, no source read");

// One page for annealed and hard copper. Every mark the plan goes by is the same in both: long
// chips, a hole that closes in, the group, the speeds in print. Strength and hardness differ, and
// stand by condition; what else differs is said in words. Any heat turns the hard into the
// annealed, so a part does not even stay on its own page.
pub(super) const COPPER: Material = Material {
    slug: "copper",
    name: "copper",
    aliases: &[],
    known_as: &[
        "copper plate",
        "copper sheet",
        "electrolytic copper",
        "tough pitch copper",
        "annealed copper",
        "soft copper",
        "hard copper",
        "half hard copper",
        "hard drawn copper",
        "deoxidised copper",
        "arsenical copper",
    ],
    designations: &[
        mark("C101", KNIGHT).old(),
        mark("CW004A", KNIGHT),
        mark("Cu-ETP", KNIGHT),
        mark("C106", RIGHTON_C106).old(),
        mark("CW024A", RIGHTON_C106),
        recalled_mark("Cu-DHP"),
        recalled_mark("C107").old(),
        mark("C11000", HUSSEY_C11000).abroad(),
        mark("C12200", RIGHTON_C106).abroad(),
    ],
    met_in: &[
        practice(
            "Boiler plates, barrels and tubes, smokebox fittings, pipe, rivets, soldering bits and busbar.",
        ),
        practice("Sheet and tube come half hard or annealed; bar is hard-drawn."),
    ],
    refused: None,
    group: Group::Tough,
    family: Family::Copper,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    #[rustfmt::skip]
    properties: &[
        Property::density(between(8.89, 8.94), "C110, the American C101", HUSSEY_C11000),
        Property::density(exactly(8.92), "C106", RIGHTON_C106),
        Property::tensile(between(200.0, 250.0), "annealed", CDA_TEMPER),
        Property::hardness(HardnessScale::Vickers, between(40.0, 65.0), "annealed", CDA_TEMPER),
        Property::tensile(between(220.0, 260.0), "annealed wire", KNIGHT),
        Property::elongation(at_least(33.0), "annealed wire", KNIGHT),
        Property::tensile(at_least(360.0), "hard", CDA_TEMPER),
        Property::hardness(HardnessScale::Vickers, at_least(110.0), "hard", CDA_TEMPER),
        Property::elongation(exactly(2.0), "hard", CDA_TEMPER),
        Property::tensile(between(200.0, 360.0), "C106 sheet, annealed to hard", RIGHTON_C106),
        Property::proof(between(50.0, 340.0), "C106 sheet, annealed to hard", RIGHTON_C106),
        Property::hardness(HardnessScale::Vickers, between(40.0, 110.0), "C106 sheet, annealed to hard", RIGHTON_C106),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(20.0), "C106", RIGHTON_C106),
    ],
    drilling: &[drilling::LIST_COPPER, drilling::QUIZ_COPPER_RANGE],
    tapping: &[
        tapping::CLARKSON_COPPER,
        tapping::LAVALLEE_COPPER,
        tapping::CHART_COPPER,
        tapping::SUPPLIER_COPPER,
    ],
    reaming: &[reaming::RECALLED_COPPER],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: SOLUBLE_OIL,
    back_off: read("Turn back about half a turn for each thread cut.", VMS_TAPPING),
    drill_advice: &[
        practice(
            "Do not dub the lips as for brass: copper wants a keen edge, full clearance and polished flutes.",
        ),
        practice(
            "Oil every hole, peck, and clear the long chips; in thin sheet use a backing and a stepped drill.",
        ),
    ],
    tap_advice: &[
        SHARP_TAP,
        practice(
            "Annealed copper tears more than hard: where there is a choice, tap before annealing, and run the tap through again.",
        ),
        practice(
            "Leave the reamer little to take: it tears a soft bore, and hand turning with oil does best.",
        ),
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        recalled(
            "It tears and grips the drill: sharp drill, plenty of clearance, peck and lubricate.",
        ),
        practice("A hole closes in as the drill leaves it: try one in scrap and measure."),
        recalled("Choose the tapping drill on the large side: the tap drags the metal in."),
        practice(
            "Hard copper cuts cleaner and closes in less than annealed, but neither cuts freely.",
        ),
    ],
    not_for: &[
        practice(
            "Not for a thread that holds a boiler fitting: a bronze bush is silver-soldered in, as the drawing and the inspector say.",
        ),
        practice(
            "Hard copper is not hard once it has been red hot: never count on that strength after silver soldering.",
        ),
        UNDER_PRESSURE,
    ],
    salvage: &[
        practice(
            "Old busbar, hot-water cylinders and tube; cylinder sheet may be thin, pitted and soldered with lead.",
        ),
        practice(
            "Bright pink in the cut, not magnetic; plated steel shows at a filed edge and to a magnet.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[Work::Reckoned.says(practice("Do not dub the lips as for brass: copper wants a keen edge.")), Work::Threads.says(practice(
            "A thread in soft copper pulls out easily: use a bronze bush where a screw must hold.",
        )), Work::Reckoned.says(practice("Thin sheet climbs the drill: back it and clamp it.")), Work::Heat.says(practice(
            "Tough-pitch copper (C101) can crack when a torch flame heats it: boilers are usually of deoxidised copper (C106); ask the inspector.",
        ))],
    dangers: &[dangers::LONG_SWARF, dangers::BERYLLIUM, dangers::FLUID],
};

// No speed of its own was found in print: the rows of copper are the nearest, and slow.
pub(super) const CUPRO_NICKEL: Material = Material {
    slug: "cupro-nickel",
    name: "cupro-nickel",
    aliases: &[],
    known_as: &["copper nickel", "90/10 copper nickel", "70/30 copper nickel"],
    designations: &[
        recalled_mark("CN102").old(),
        mark("CW352H", CDA_CUPRO_NICKEL),
        recalled_mark("CuNi10Fe1Mn"),
        recalled_mark("CN107").old(),
        mark("CW354H", CDA_CUPRO_NICKEL),
        recalled_mark("CuNi30Mn1Fe"),
        mark("C70600", CDA_CUPRO_NICKEL).abroad(),
        mark("C71500", CDA_CUPRO_NICKEL).abroad(),
    ],
    met_in: &[practice(
        "Condenser and brake tube, sea-water pipe and fittings, and now and then a superheater or feed pipe.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Copper,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.94), "C70600", HUSSEY_C70600),
        Property::tensile(between(290.0, 420.0), "CW352H, typical", CDA_CUPRO_NICKEL),
        Property::proof(between(100.0, 350.0), "CW352H, typical", CDA_CUPRO_NICKEL),
        Property::elongation(between(12.0, 40.0), "CW352H, typical", CDA_CUPRO_NICKEL),
        Property::hardness(HardnessScale::Vickers, between(80.0, 160.0), "CW352H, typical", CDA_CUPRO_NICKEL),
        Property::tensile(between(350.0, 520.0), "CW354H, typical", CDA_CUPRO_NICKEL),
        Property::hardness(HardnessScale::Vickers, between(90.0, 190.0), "CW354H, typical", CDA_CUPRO_NICKEL),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(20.0), "", RECALLED),
    ],
    drilling: &[drilling::LIST_COPPER, drilling::QUIZ_COPPER_RANGE],
    tapping: &[tapping::CLARKSON_COPPER, tapping::LAVALLEE_COPPER],
    reaming: &[reaming::RECALLED_COPPER],
    feeds: &[],
    drilling_lubricant: practice("Use soluble oil, as for copper: no list we read names it."),
    tapping_lubricant: practice("Use a heavy cutting oil or lard oil: no list we read names it."),
    back_off: practice("It is stringy: half a turn on, then back until the chip breaks."),
    drill_advice: &[practice(
        "Use a sharp drill with full clearance and a steady feed: it hardens where the drill rubs.",
    )],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Suits,
    // The reports on alum do not speak of it.
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It cuts like a tougher, cleaner copper: long strings, a torn surface if the edge is dull.",
        ),
        practice("It hardens as it is bent: anneal tube at dull red before it is bent again."),
    ],
    not_for: &[UNDER_PRESSURE, practice("Not for a bearing: it galls on steel.")],
    salvage: &[
        practice(
            "Condenser tube and ships' pipe, silver-white with a pink cast; nickel silver is yellower, stainless steel harder.",
        ),
        practice(
            "Coins of silver colour may be it, but to cut coin up can be an offence: leave them.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::OtherCuts.says(practice(
            "Tube is thin and work-hardened at the ends: trim and deburr before it is flared.",
        )),
        Work::Reckoned.says(practice(
            "A small tap breaks in it as in stainless steel: oil, a large drill, and patience.",
        )),
    ],
    dangers: &[dangers::NICKEL_SKIN, dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const BERYLLIUM_COPPER: Material = Material {
    slug: "beryllium-copper",
    name: "beryllium copper",
    aliases: &[],
    known_as: &["copper beryllium", "beryllium bronze", "spring copper", "BeCu"],
    designations: &[
        mark("CB101", KNIGHT).old(),
        mark("CW101C", KNIGHT),
        mark("CuBe2", KNIGHT),
        mark("C17200", KNIGHT).abroad(),
    ],
    met_in: &[
        practice(
            "Switch and relay springs, instrument bellows and diaphragms, non-sparking tools, moulds and welding tips.",
        ),
        practice(
            "It turns up in surplus electrical gear and as springy strip or rod without a mark.",
        ),
    ],
    refused: Some(read(
        "Breathing its dust may cause a chronic lung disease that can kill, and lung cancer: do not drill, tap, file, grind, polish or heat it here; use phosphor bronze.",
        OSHA_BERYLLIUM,
    )),
    group: Group::Tough,
    family: Family::Copper,
    chips: Chips::Long,
    grabs: false,
    work_hardens: true,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.25), "", BOYNES_CB101),
        Property::tensile(between(400.0, 600.0), "annealed", BOYNES_CB101),
        Property::tensile(between(1200.0, 1600.0), "spring temper and aged", BOYNES_CB101),
        Property::hardness(HardnessScale::RockwellB, exactly(60.0), "solution treated", JSK_C17200),
    ],
    drilling: &[],
    tapping: &[],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: practice("None makes it safe: do not drill it."),
    tapping_lubricant: practice("None makes it safe: do not tap it."),
    back_off: practice("Do not tap it."),
    drill_advice: &[],
    tap_advice: &[],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[practice(
        "It looks like copper or bronze and springs like steel; that is all the warning it gives.",
    )],
    not_for: &[practice(
        "Not for any job here: phosphor bronze strip makes springs and contacts without the hazard.",
    )],
    salvage: &[
        practice(
            "Nothing tells it from phosphor bronze by eye, file or magnet, and a file makes the dust: leave unmarked springy strip.",
        ),
        practice(
            "A finished spring or tool of it is safe to handle whole; do not cut, sand or burn it.",
        ),
    ],
    cautions: &[Work::Stock.says(practice(
        "If a piece has been cut by mistake, do not blow or sweep: wipe up wet, bag the wipes, and ask the maker or the council about disposal.",
    ))],
    dangers: &[dangers::BERYLLIUM_DISEASE, dangers::BERYLLIUM_UNKNOWN],
};
