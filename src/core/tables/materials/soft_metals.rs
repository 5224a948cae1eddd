//! Zinc die-casting alloy, magnesium alloy and white metal.
//!
//! The aim table does not name them. Their threads are weak and a tap turns easily in them, as in
//! aluminium, so they stand in its group: a full thread costs little torque and is wanted.

use super::HardnessScale::Brinell;
use super::property::{Property, between, exactly};
use super::sources::{
    B23_YIELD, BABBITT_CHAPTER, BPEL, DGUV_MAGNESIUM, EL_HOFY, ELEKTRON, LUNT, MRT_ZINC,
    TECHNICAL_ORDER, ZAMAK_3, ZINC_MACHINING, mark, practice, read, recalled_mark,
};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};
use crate::tables::source::Source;

const RECALLED: Source = Source::memory("recalled, no source read");

pub(super) const ZINC_DIE_CASTING_ALLOY: Material = Material {
    slug: "zinc-die-casting-alloy",
    name: "zinc die-casting alloy",
    aliases: &[],
    known_as: &["zinc alloy", "zinc casting", "zinc die-casting", "pot metal", "monkey metal"],
    designations: &[
        mark("ZL3", MRT_ZINC),
        mark("ZL0400", ZAMAK_3),
        mark("ZnAl4", ZAMAK_3),
        mark("AG40A", LUNT).abroad(),
        recalled_mark("BS 1004 alloy A").old(),
    ],
    met_in: &[
        practice("Carburettors, handles, instrument cases, toy and model castings."),
        practice("Old commercial locomotive chassis and wheels, some of them swollen and cracked."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Zinc,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(6.7), "", ZAMAK_3),
        Property::tensile(between(241.0, 283.0), "ZL3, die cast, 20 °C", MRT_ZINC),
        Property::elongation(between(10.0, 16.0), "ZL3, die cast, 20 °C", MRT_ZINC),
        Property::hardness(Brinell, between(82.0, 87.0), "ZL3, die cast", MRT_ZINC),
    ],
    drilling: &[drilling::EL_HOFY_ZINC, drilling::NORSEMAN_ZINC],
    tapping: &[tapping::CHART_ZINC, tapping::LAVALLEE_ZINC],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: practice("Drill it dry, or with a little paraffin."),
    tapping_lubricant: practice("Use a little paraffin or light oil."),
    back_off: practice("Its chips are short: turn back once a turn."),
    drill_advice: &[read(
        "A point of 118° and a quick helix of 32 to 42° are printed for it.",
        EL_HOFY,
    )],
    tap_advice: &[read(
        "Fluteless forming taps are usually the better ones in it, and leave next to no swarf.",
        BPEL,
    )],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::AlumAttacks,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read("It cuts with little force to small chips, and is kind to tools.", ZINC_MACHINING),
        practice("The skin is sound and the middle may be spongy: the drill drops into pores."),
    ],
    not_for: &[
        dangers::PRESSURE,
        read("Not for a hot part: 150 °C at most unstressed, 100 °C with a light load.", MRT_ZINC),
        practice("Not for steam, hot water or a steady heavy load: it creeps."),
    ],
    salvage: &[
        practice(
            "It is dull grey inside, heavy for its looks, and breaks short with a grainy face.",
        ),
        practice(
            "A swollen, crazed old casting was made of impure zinc: it goes on crumbling and is past saving.",
        ),
    ],
    cautions: &[
        read("Coolant stains it unless it is wiped off soon.", BPEL),
        practice("Threads in it pull out: use a coarse pitch and all the length there is."),
        practice("It cracks at a thin boss: support it from behind, and start the tap square."),
    ],
    dangers: &[dangers::ZINC_BURNT, dangers::FLUID],
};

pub(super) const MAGNESIUM_ALLOY: Material = Material {
    slug: "magnesium-alloy",
    name: "magnesium alloy",
    aliases: &[],
    known_as: &["magnesium", "magnesium casting", "AZ91", "AZ31B"],
    designations: &[
        mark("AZ91D", LUNT).abroad(),
        recalled_mark("AZ31").abroad(),
        recalled_mark("MAG 7").old(),
        recalled_mark("EN MC21120"),
    ],
    met_in: &[
        practice("Aircraft castings, old motorcycle, chainsaw and camera bodies, some wheels."),
        practice(
            "It is seldom bought for a model, and often met by mistake among aluminium scrap.",
        ),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Magnesium,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(1.82), "AZ91D, die cast", LUNT),
        Property::tensile(exactly(230.0), "AZ91D, die cast", LUNT),
        Property::proof(exactly(150.0), "AZ91D, die cast", LUNT),
        Property::elongation(exactly(3.0), "AZ91D, die cast", LUNT),
        Property::hardness(Brinell, exactly(70.0), "AZ91D, die cast", LUNT),
    ],
    drilling: &[
        drilling::NORSEMAN_MAGNESIUM,
        drilling::LIST_MAGNESIUM,
        drilling::PROTO_CAST_MAGNESIUM,
        drilling::PROTO_WROUGHT_MAGNESIUM,
    ],
    tapping: &[
        tapping::LAVALLEE_MAGNESIUM,
        tapping::SUPPLIER_MAGNESIUM,
        tapping::CATALOGUE_MAGNESIUM,
    ],
    reaming: &[reaming::PROTO_CAST_MAGNESIUM, reaming::PROTO_WROUGHT_MAGNESIUM],
    feeds: &[],
    drilling_lubricant: read(
        "Cut it dry wherever you can; if it must be cooled, use mineral oil and never a water-mix.",
        TECHNICAL_ORDER,
    ),
    tapping_lubricant: practice("Put a drop of mineral oil on the tap; never a water-mix."),
    back_off: practice("Its chips are short: turn back once a turn, and brush them away dry."),
    drill_advice: &[
        practice("Keep the drill razor keen and its flutes bright and open, and feed it well."),
        practice(
            "Take a coarse chip and lift out to clear it; never let the point spin on the bottom.",
        ),
    ],
    tap_advice: &[practice(
        "Use a keen bright tap and a coarse thread; a threaded steel insert, well sealed, outlasts it.",
    )],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumAttacks,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        read(
            "A maker puts its machinability at 500 where free-cutting steel AISI B1112 is 100.",
            ELEKTRON,
        ),
        read("Its chips break well and tools last long in it.", ELEKTRON),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for hot, wet or salty places, nor bolted bare to brass or steel: it rots."),
        practice("Not for grinding, filing by the boxful, or band-sawing beside a grinder."),
    ],
    salvage: &[
        practice(
            "It is a third lighter than aluminium, and a drop of vinegar fizzes on a filed spot of it.",
        ),
        practice("Unless you are sure what it is and ready for a fire, leave it alone."),
    ],
    cautions: &[
        practice("Brass or steel screws in it set up corrosion: seal them with a jointing paste."),
        practice("A thread in it strips easily: give it more length, or an insert."),
    ],
    dangers: &[
        dangers::MAGNESIUM_WATER,
        dangers::MAGNESIUM_SMOTHER,
        dangers::MAGNESIUM_RUB,
        dangers::MAGNESIUM_SWARF,
        dangers::MAGNESIUM_WATER_MIX,
        read("Chips cut dry can be lit by high temperature or by friction alone.", DGUV_MAGNESIUM),
    ],
};

pub(super) const WHITE_METAL: Material = Material {
    slug: "white-metal",
    name: "white metal",
    aliases: &[],
    known_as: &["babbitt", "babbitt metal", "whitemetal", "white bearing metal"],
    designations: &[recalled_mark("BS 3332"), recalled_mark("ASTM B23").abroad()],
    met_in: &[
        practice("Poured bearings of engines and machine tools, and model axlebox linings."),
        practice("Cast model fittings sold as white metal are a softer tin or lead alloy."),
    ],
    refused: None,
    group: Group::EasyCutting,
    family: Family::WhiteMetal,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(between(7.3, 7.5), "tin based", RECALLED),
        Property::density(between(9.5, 10.5), "lead based", RECALLED),
        Property::proof_ksi(exactly(6.1), "tin based, 89 % tin (grade 2), yield point", B23_YIELD),
        Property::proof_ksi(exactly(6.6), "tin based, 84 % tin (grade 3), yield point", B23_YIELD),
        Property::proof_ksi(
            exactly(3.55),
            "lead based, 75 % lead (grade 7), yield point",
            B23_YIELD,
        ),
        Property::hardness(Brinell, exactly(35.0), "tin based, at 21 °C", BABBITT_CHAPTER),
        Property::hardness(Brinell, exactly(15.0), "tin based, at 100 °C", BABBITT_CHAPTER),
    ],
    drilling: &[drilling::RECALLED_WHITE_METAL],
    tapping: &[tapping::RECALLED_WHITE_METAL],
    reaming: &[],
    feeds: &[],
    drilling_lubricant: practice("Drill it dry, or with a little paraffin."),
    tapping_lubricant: practice("Use a little paraffin or light oil."),
    back_off: practice("Turn back once a turn, and wipe the tap: the metal smears on it."),
    drill_advice: &[practice(
        "Use a keen drill and a light feed; stop at the backing, where the drill will dig in or skid.",
    )],
    tap_advice: &[practice(
        "Tap the backing, not the lining: a thread in white metal alone pulls out.",
    )],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::AlumUnconfirmed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is soft, smears on a blunt edge, and takes swarf and grit into its face."),
        read("The original tin-based alloy melts at 239 °C.", BABBITT_CHAPTER),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a hot part, nor for a tapped fixing that carries load."),
    ],
    salvage: &[
        practice(
            "Old bearing scrap may be tin or lead based, and melting them together spoils both.",
        ),
        practice("Lead-based metal is heavier, and marks paper grey."),
    ],
    cautions: &[
        practice("Grit left in an oil hole beds in the lining and scores the shaft: wash it out."),
        practice("Drill oil holes before the bearing is scraped, and take off the burr by hand."),
    ],
    dangers: &[dangers::MAY_HOLD_LEAD, dangers::LEAD_FUME],
};
