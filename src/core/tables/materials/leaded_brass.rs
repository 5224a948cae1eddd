//! The brasses made to be cut, with lead in them: free-cutting, engraving, dezincification-resistant.
//!
//! The tougher ones are in `brass`.

use super::caution::Work;
use super::copper_sentences::{
    AMMONIA, BACK_OFF_SHORT, BRASS_DRILLING, BRASS_TAPPING, DUB_BRASS, SHEET_CLIMBS, SOFT_JAWS,
    STRAIGHT_FLUTES, UNDER_PRESSURE, UNKNOWN_STOCK, ZINC_LEAVES,
};
use super::property::{at_least, between, exactly};
use super::sources::{
    BHARAT_CZ128, BRASSLAND_C35330, CDA_120_ROD, CDA_120_SHEET, DURBIN, POPULAR_MECHANICS,
    RAJHANS_CZ132, RAJHANS_CZ137, REGAL, SCRIBD_BRASS, SMITH, mark, practice, read, recalled,
    recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, HardnessScale, MachinabilityBasis,
    Material, PressureWork, Property, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const CHIPS_DRY: Advice =
    practice("It cuts to short chips, and at home it is usually drilled and tapped dry.");
const DIGS_IN: Advice = read(
    "A drill digs in: stone a small flat on its lips, or use one with straight flutes.",
    SMITH,
);
const HELIX: Advice = read("It wants a drill with no helix, or slightly negative.", SMITH);
const PARAFFIN: Advice = read("Paraffin is printed for tapping it as well.", POPULAR_MECHANICS);

pub(super) const FREE_CUTTING_BRASS: Material = Material {
    slug: "free-cutting-brass",
    name: "free-cutting brass",
    aliases: &["brass"],
    known_as: &["free machining brass", "leaded brass", "turning brass"],
    designations: &[
        mark("CZ121", DURBIN).old(),
        mark("CZ121Pb3", DURBIN).old(),
        mark("CW614N", DURBIN),
        mark("CuZn39Pb3", DURBIN),
        mark("C38500", DURBIN).abroad(),
        recalled_mark("C36000").abroad(),
    ],
    met_in: &[
        practice("Round and hexagon bar for handles, knobs, oil cups, unions and nuts."),
        practice("Most brass bar sold to model engineers is this."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Brass,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.47), "", DURBIN),
        Property::tensile(between(370.0, 460.0), "rod, typical", CDA_120_ROD),
        Property::proof(between(110.0, 260.0), "rod, typical", CDA_120_ROD),
        Property::hardness(HardnessScale::Vickers, between(90.0, 160.0), "rod, typical", CDA_120_ROD),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(100.0), "", SCRIBD_BRASS),
    ],
    drilling: &[
        drilling::NOMINAL_BRASS,
        drilling::NORSEMAN_BRASS_BRONZE,
        drilling::NAVY_BRASS,
        drilling::JET_BRASS_BRONZE,
    ],
    tapping: &[tapping::CHART_BRASS, tapping::LAVALLEE_BRASS, tapping::CLARKSON_BRASS_BRONZE],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &feeds::BRASS,
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_SHORT,
    drill_advice: &[DIGS_IN, HELIX, DUB_BRASS],
    tap_advice: &[
        STRAIGHT_FLUTES,
        read("For a 75 % thread the screw should engage 1.25 diameters.", REGAL),
        PARAFFIN,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[CHIPS_DRY, DIGS_IN],
    not_for: &[
        ZINC_LEAVES,
        practice(
            "Not for cold bending or riveting over: it cracks, use sheet brass or rivet wire.",
        ),
        AMMONIA,
    ],
    salvage: &[
        practice(
            "Old gas and water fittings, lamp holders, door furniture and plug pins are near it.",
        ),
        practice(
            "It shows bright yellow under the file and breaks to fine chips; a long curl is a tougher brass.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::Reckoned.says(SHEET_CLIMBS),
        Work::Reckoned.says(UNDER_PRESSURE),
        Work::Holding.says(SOFT_JAWS),
    ],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_BY_HAND,
        dangers::GRAB,
        dangers::ZINC_FUME,
        dangers::PARAFFIN,
        dangers::FLUID,
    ],
};

// CZ120 with 2 % of lead is what stockists sell under this name, and it cuts as CZ121 does; a data
// sheet gives the name to CZ137, with half a percent, which cuts half as well. The group follows
// the first, the figures name which they are for.
pub(super) const ENGRAVING_BRASS: Material = Material {
    slug: "engraving-brass",
    name: "engraving brass",
    aliases: &[],
    known_as: &["clock brass", "compo brass", "engraving brass sheet", "engraving brass plate"],
    designations: &[
        mark("CZ120", CDA_120_SHEET).old(),
        mark("CW608N", CDA_120_SHEET),
        mark("CW612N", CDA_120_SHEET),
        mark("CuZn38Pb2", CDA_120_SHEET),
        mark("CuZn39Pb2", CDA_120_SHEET),
        mark("CZ119", CDA_120_SHEET).old(),
        mark("CZ131", CDA_120_SHEET).old(),
        mark("CW601N", CDA_120_SHEET),
        mark("CZ137", RAJHANS_CZ137).old(),
        mark("CW610N", CDA_120_SHEET),
    ],
    met_in: &[
        practice(
            "Flat, hard plate and strip for clock plates and wheels, name plates, frames and levers.",
        ),
        practice(
            "It is the brass plate to ask for when the part is to be drilled, tapped and filed crisp.",
        ),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Brass,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.44), "CZ128, the same mixture in bar", BHARAT_CZ128),
        Property::tensile(between(420.0, 590.0), "CZ120 sheet, annealed to hard", CDA_120_SHEET),
        Property::proof(between(170.0, 495.0), "CZ120 sheet, annealed to hard", CDA_120_SHEET),
        Property::elongation(between(5.0, 30.0), "CZ120 sheet, hard to annealed", CDA_120_SHEET),
        Property::hardness(HardnessScale::Vickers, between(110.0, 185.0), "CZ120 sheet, annealed to hard", CDA_120_SHEET),
        Property::tensile(between(340.0, 540.0), "CZ131 sheet, annealed to hard", CDA_120_SHEET),
        Property::hardness(HardnessScale::Vickers, between(75.0, 175.0), "CZ131 sheet, annealed to hard", CDA_120_SHEET),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(90.0), "CZ128, the same mixture in bar", BHARAT_CZ128),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, between(50.0, 70.0), "CZ137; two editions of the sheet differ", RAJHANS_CZ137),
    ],
    drilling: &[
        drilling::NOMINAL_BRASS,
        drilling::NORSEMAN_BRASS_BRONZE,
        drilling::NAVY_BRASS,
        drilling::JET_BRASS_BRONZE,
    ],
    tapping: &[tapping::CHART_BRASS, tapping::LAVALLEE_BRASS, tapping::CLARKSON_BRASS_BRONZE],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &feeds::BRASS,
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_SHORT,
    drill_advice: &[DIGS_IN, DUB_BRASS],
    tap_advice: &[
        practice("In thin plate keep more thread: a smaller drill, or solder a boss on behind."),
        STRAIGHT_FLUTES,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        CHIPS_DRY,
        practice(
            "It files, saws and pierces crisply, and stays flat if cut from annealed or stress-relieved plate.",
        ),
    ],
    not_for: &[
        read(
            "Not for acid etching as CZ137: the single-phase brasses are the ones for that.",
            RAJHANS_CZ137,
        ),
        ZINC_LEAVES,
        practice("Not for bending: it cracks, use sheet brass."),
    ],
    salvage: &[
        practice(
            "Old clock plates, name plates and switchgear: it chips when filed, where common sheet curls.",
        ),
        UNKNOWN_STOCK,
    ],
    cautions: &[
        Work::Reckoned.says(SHEET_CLIMBS),
        Work::OtherCuts.says(practice(
            "Hard-rolled plate bows when one face is cut away: rough both, then finish.",
        )),
        Work::Holding.says(SOFT_JAWS),
    ],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_BY_HAND,
        dangers::GRAB,
        dangers::ZINC_FUME,
        dangers::FLUID,
    ],
};

pub(super) const DEZINCIFICATION_RESISTANT_BRASS: Material = Material {
    slug: "dezincification-resistant-brass",
    name: "dezincification-resistant brass",
    aliases: &[],
    known_as: &["DZR brass", "DZR", "DR brass", "CR brass", "dezincification resistant"],
    designations: &[
        mark("CZ132", RAJHANS_CZ132).old(),
        mark("CW602N", BRASSLAND_C35330),
        mark("CuZn36Pb2As", BRASSLAND_C35330),
        mark("C35330", BRASSLAND_C35330).abroad(),
    ],
    met_in: &[practice(
        "Plumbers' compression fittings, valves and cocks, and bar for parts that live in water.",
    )],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Brass,
    chips: Chips::Short,
    grabs: true,
    work_hardens: false,
    closes_in: false,
    #[rustfmt::skip]
    properties: &[
        Property::density(exactly(8.43), "", RAJHANS_CZ132),
        Property::tensile(at_least(380.0), "bar as made, 6 to 18 mm", RAJHANS_CZ132),
        Property::tensile(at_least(350.0), "bar as made, 18 to 75 mm", RAJHANS_CZ132),
        Property::elongation(at_least(20.0), "bar as made, 6 to 18 mm", RAJHANS_CZ132),
        Property::proof(at_least(150.0), "half hard, typical", BRASSLAND_C35330),
        Property::hardness(HardnessScale::Brinell, between(90.0, 110.0), "typical", BRASSLAND_C35330),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(75.0), "", RAJHANS_CZ132),
        Property::machinability(MachinabilityBasis::FreeCuttingBrass, exactly(62.0), "C35330, about", BRASSLAND_C35330),
    ],
    drilling: &[drilling::NORSEMAN_BRASS_BRONZE, drilling::NAVY_BRASS, drilling::JET_BRASS_BRONZE],
    tapping: &[tapping::CHART_BRASS, tapping::LAVALLEE_BRASS, tapping::CLARKSON_BRASS_BRONZE],
    reaming: &[reaming::RECALLED_BRASS_BRONZE],
    feeds: &feeds::BRASS,
    drilling_lubricant: BRASS_DRILLING,
    tapping_lubricant: BRASS_TAPPING,
    back_off: BACK_OFF_SHORT,
    drill_advice: &[
        practice("Stone a small flat on the drill's lips, as for free-cutting brass."),
        DUB_BRASS,
    ],
    tap_advice: &[STRAIGHT_FLUTES],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::HotAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It cuts a little tougher than free-cutting brass, still to short chips."),
        recalled(
            "Heating it red, as for silver solder, can spoil the resistance it was bought for.",
        ),
    ],
    not_for: &[
        practice(
            "Resistant is not proof: whether it may go in a boiler's wet side is the club's boiler inspector's to say, before cutting.",
        ),
        read(
            "The mixture alone does not make it resistant: the heat treatment belongs to it, so only certified stock counts.",
            BRASSLAND_C35330,
        ),
    ],
    salvage: &[
        recalled("Water fittings of it are marked CR or DZR; an unmarked fitting is plain brass."),
        UNKNOWN_STOCK,
    ],
    cautions: &[Work::Reckoned.says(UNDER_PRESSURE), Work::Holding.says(practice(
            "A fitting is hollow and odd to hold: turn up a mandrel or soft jaws, and mind the wall.",
        )), Work::Holding.says(SOFT_JAWS)],
    dangers: &[dangers::LEAD, dangers::LEAD_BY_HAND, dangers::GRAB, dangers::ZINC_FUME, dangers::FLUID],
};
