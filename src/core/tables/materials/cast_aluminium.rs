//! Cast aluminium: the general alloy LM4, which also stands for a casting nobody can name, and LM25.

use super::HardnessScale::Brinell;
use super::aluminium::{
    BUILDS_UP, EASY_CUTTING, KEEN_DRILL, LARD_OIL, MORE_LENGTH, PARAFFIN, SEIZES,
    SOLUBLE_OR_PARAFFIN,
};
use super::property::{Property, between, exactly};
use super::sources::{
    AUDHE, CREASEY, HSSCO, LM4_SHEET, LM25_SHEET, mark, practice, read, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const WEARS_DRILLS: Advice =
    practice("Silicon in the alloy wears drills, and a soft casting drags: keep edges keen.");
const BACK_OFF: Advice =
    practice("Turn back once a turn; wipe the tap if metal sticks to its lands.");
const SAND: Advice = practice("Sand in the skin blunts drills and taps: clean it off first.");
const BLOWHOLE: Advice =
    practice("A blowhole can turn a drill or spoil a thread: look before you tap.");
const COARSE_THREAD: Advice = practice(
    "Choose a coarse thread and a keen tap: fine crests crumble, and a worn tap tears them.",
);
const NOT_LOADED: Advice =
    practice("Not for a part whose failure would hurt someone: a casting may be unsound inside.");

// Table A.3 prints AC-45400 for both LM4 and LM22; two castings charts give 45200 to LM4 and 45400
// to LM22, so the table's row for LM4 is taken as a slip.
pub(super) const CAST_ALUMINIUM: Material = Material {
    slug: "cast-aluminium",
    name: "cast aluminium",
    aliases: &[],
    known_as: &["aluminium casting", "sand cast aluminium", "casting aluminium"],
    designations: &[mark("LM4", HSSCO), mark("EN AC-45200", AUDHE), recalled_mark("AlSi5Cu3Mn")],
    met_in: &[
        practice("Crankcases, gearboxes, covers, wheels and machine castings are made of it."),
        read(
            "LM4 is the general engineering alloy: crankcases, gearboxes, junction boxes, clutch cases.",
            CREASEY,
        ),
        practice("A casting nobody can name is treated as LM4 here."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.75), "LM4", LM4_SHEET),
        Property::tensile(between(140.0, 170.0), "LM4-M, as sand cast", CREASEY),
        Property::proof(between(70.0, 110.0), "LM4-M, as sand cast", CREASEY),
        Property::elongation(between(2.0, 3.0), "LM4-M, as sand cast", CREASEY),
        Property::hardness(Brinell, between(65.0, 80.0), "LM4-M, as sand cast", CREASEY),
        Property::tensile(between(230.0, 290.0), "LM4-TF, heat treated", CREASEY),
        Property::proof(between(200.0, 300.0), "LM4-TF, heat treated", CREASEY),
        Property::hardness(Brinell, between(90.0, 120.0), "LM4-TF, heat treated", CREASEY),
    ],
    drilling: &[
        drilling::NORSEMAN_ALUMINIUM,
        drilling::PROTO_DIE_CAST_ALUMINIUM,
        drilling::PROTO_CAST_ALUMINIUM,
    ],
    tapping: &[
        tapping::CHART_CAST_ALUMINIUM,
        tapping::LAVALLEE_ALUMINIUM,
        tapping::CATALOGUE_SILICON_ALUMINIUM,
        tapping::CHART_DIE_CAST_ALUMINIUM,
    ],
    reaming: &[reaming::PROTO_DIE_CAST_ALUMINIUM, reaming::PROTO_CAST_ALUMINIUM],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, COARSE_THREAD],
    // Sand-cast LM4 and LM25 stretch only a few parts in a hundred.
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        BUILDS_UP,
        WEARS_DRILLS,
        read(
            "LM4 cuts fairly well: between the silicon alloys and the easy copper ones.",
            LM4_SHEET,
        ),
        EASY_CUTTING,
    ],
    not_for: &[dangers::PRESSURE, NOT_LOADED],
    salvage: &[
        practice(
            "Old gearbox and engine castings will melt again, but nobody can say what alloy comes out.",
        ),
        practice(
            "A scrap that is much lighter than aluminium may be magnesium: a drop of vinegar fizzes on a filed spot of it and not on aluminium.",
        ),
        practice("A scrap that is much heavier, dull grey and brittle is zinc, not aluminium."),
    ],
    cautions: &[
        SAND,
        BLOWHOLE,
        MORE_LENGTH,
        SEIZES,
        read(
            "A table of marks prints EN AC-45400, AlSi5Cu3, for LM4; castings charts give that mark to LM22, and we follow them.",
            HSSCO,
        ),
    ],
    dangers: &[dangers::PARAFFIN, dangers::ALUMINIUM_DUST, dangers::FLUID],
};

pub(super) const CAST_ALUMINIUM_LM25: Material = Material {
    slug: "cast-aluminium-lm25",
    name: "cast aluminium LM25",
    aliases: &[],
    known_as: &["LM25-TF"],
    designations: &[
        mark("LM25", HSSCO),
        mark("EN AC-42000", HSSCO),
        mark("AlSi7Mg", HSSCO),
        mark("A356", HSSCO).abroad(),
    ],
    met_in: &[
        practice("Wheels, cylinder blocks and castings that must be strong or stand the wet."),
        practice("Foundries that supply model castings often pour it."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Aluminium,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(2.68), "", LM25_SHEET),
        Property::tensile(between(230.0, 280.0), "TF, sand cast", LM25_SHEET),
        Property::proof(between(200.0, 250.0), "TF, sand cast", LM25_SHEET),
        Property::hardness(Brinell, between(90.0, 110.0), "TF, sand cast", LM25_SHEET),
        Property::tensile(between(280.0, 320.0), "TF, gravity die cast", LM25_SHEET),
        Property::proof(between(220.0, 260.0), "TF, gravity die cast", LM25_SHEET),
        Property::hardness(Brinell, between(90.0, 110.0), "TF, gravity die cast", LM25_SHEET),
    ],
    drilling: &[drilling::NORSEMAN_ALUMINIUM, drilling::PROTO_CAST_ALUMINIUM],
    tapping: &[
        tapping::CHART_CAST_ALUMINIUM,
        tapping::LAVALLEE_ALUMINIUM,
        tapping::CATALOGUE_SILICON_ALUMINIUM,
    ],
    reaming: &[reaming::PROTO_CAST_ALUMINIUM],
    feeds: &feeds::ALUMINIUM,
    drilling_lubricant: SOLUBLE_OR_PARAFFIN,
    tapping_lubricant: PARAFFIN,
    back_off: BACK_OFF,
    drill_advice: &[KEEN_DRILL],
    tap_advice: &[LARD_OIL, COARSE_THREAD],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read(
            "Heat-treated it cuts fairly well; high-speed steel serves if it is kept sharp.",
            LM25_SHEET,
        ),
        BUILDS_UP,
        WEARS_DRILLS,
    ],
    not_for: &[dangers::PRESSURE, NOT_LOADED],
    salvage: &[practice(
        "Cast road wheels are mostly of this kind of alloy; without a foundry's word treat a casting as LM4.",
    )],
    cautions: &[SAND, BLOWHOLE, MORE_LENGTH, SEIZES],
    dangers: &[dangers::PARAFFIN, dangers::ALUMINIUM_DUST, dangers::FLUID],
};
