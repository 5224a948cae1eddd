//! Grey cast iron, as castings and as continuous-cast bar.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::ferrous::RECALLED;
use super::property::{Property, at_least, between, exactly};
use super::sources::{
    ALLIED, DANDONG_BS_1452, ENGINEERING_TOOLBOX, INDUSTRIAL_TUBE, METALS_CHINA, MH_FLUIDS,
    POPULAR_MECHANICS, REGAL, SOLIMAN, ZUIN, mark, practice, read, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const DRILL_DRY: Advice = read("Drill it dry.", MH_FLUIDS);
const TAP_DRY: Advice = read("Tap it dry, or with 25 % lard oil in mineral oil.", MH_FLUIDS);
const BACK_OFF: Advice = practice(
    "Its chips are short: turn back once a turn, and clear the dust out of a blind hole often.",
);
const POINT: Advice = practice(
    "A 118° point serves; keep it sharp, because a corner worn round squeals and cuts small.",
);
const BREAKING_THROUGH: Advice =
    practice("Ease off as the drill breaks through, or the far edge flakes away.");
const NO_BOILER: Advice = practice(
    "Not for a boiler, nor for a part that holds steam or pressure unless the code allows cast iron there: ask the club's boiler inspector before cutting.",
);
const NO_SHOCK: Advice =
    practice("Not for parts that are struck, bent or pulled hard: it breaks without giving.");
const LONG_ENGAGEMENT: Advice =
    read("Give a thread in cast iron one diameter of engagement at 75 % of full depth.", REGAL);
const TAP_WITHOUT_OIL: Advice =
    read("A workshop page taps cast iron with nothing at all.", POPULAR_MECHANICS);

pub(super) const GREY_CAST_IRON: Material = Material {
    slug: "grey-cast-iron",
    name: "grey cast iron",
    aliases: &["cast-iron", "grey-iron"],
    known_as: &["gray cast iron", "gray iron", "CI", "iron casting", "cast iron casting"],
    designations: &[
        mark("EN-GJL-200", ZUIN),
        mark("EN-GJL-250", ALLIED),
        mark("GJL200", ZUIN),
        mark("GJL250", ZUIN),
        mark("BS 1452 grade 250", ALLIED).old(),
        recalled_mark("BS 1452 grade 220").old(),
        recalled_mark("BS 1452 grade 14").old(),
        mark("GG25", ALLIED).abroad(),
        recalled_mark("GG20").abroad(),
        mark("FG 250", ALLIED).abroad(),
    ],
    met_in: &[
        practice(
            "Castings: cylinders, pistons, flywheels, bedplates, wheels, faceplates and machine beds.",
        ),
        practice(
            "Grade 200 is softer and cuts more easily; grade 250 is closer grained and wears better.",
        ),
    ],
    refused: None,
    group: Group::IronAndGunmetal,
    family: Family::CastIron,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.15), "GJL-200", RECALLED),
        Property::density(exactly(7.2), "GJL-250", RECALLED),
        Property::tensile(exactly(200.0), "GJL-200", ZUIN),
        Property::tensile(between(250.0, 350.0), "GJL-250, separately cast sample", METALS_CHINA),
        Property::tensile(
            between(155.0, 195.0),
            "BS 1452 grade 250, typical in the casting",
            DANDONG_BS_1452,
        ),
        Property::elongation(between(1.0, 3.0), "GJL-200 and GJL-250", ZUIN),
        Property::hardness(Brinell, between(150.0, 210.0), "GJL-200", ZUIN),
        Property::hardness(Brinell, between(170.0, 240.0), "GJL-200, wall 5 to 20 mm", SOLIMAN),
        Property::hardness(Brinell, between(170.0, 240.0), "GJL-250", ZUIN),
        Property::hardness(Brinell, between(190.0, 230.0), "GJL-250, wall 5 to 20 mm", SOLIMAN),
        Property::machinability(Steel1212, exactly(55.0), "ASTM class 25", ENGINEERING_TOOLBOX),
        Property::machinability(
            Steel1212,
            exactly(48.0),
            "ASTM class 30 to 40",
            ENGINEERING_TOOLBOX,
        ),
    ],
    drilling: &[
        drilling::JET_IRON,
        drilling::NORSEMAN_MEDIUM_IRON,
        drilling::PROTO_GREY_IRON,
        drilling::NOMINAL_IRON,
        drilling::NORSEMAN_SOFT_IRON,
        drilling::PROTO_GREY_IRON_SOFT,
        drilling::PROTO_GREY_IRON_HARD,
        drilling::JET_CHILLED_IRON,
        drilling::NORSEMAN_CHILLED_IRON,
    ],
    tapping: &[
        tapping::CLARKSON_IRON,
        tapping::CHART_IRON,
        tapping::LAVALLEE_IRON,
        tapping::CLARKSON_SOFT_IRON,
        tapping::CATALOGUE_GREY,
    ],
    reaming: &[reaming::GREY_IRON, reaming::GREY_IRON_SOFT, reaming::GREY_IRON_HARD],
    feeds: &feeds::CAST_IRON,
    drilling_lubricant: DRILL_DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[
        POINT,
        practice("Under the skin take a firm feed: the metal is soft, but rubbing glazes it."),
    ],
    tap_advice: &[
        practice("Straight-flute hand taps do well: the chips are short and fall out."),
        LONG_ENGAGEMENT,
        TAP_WITHOUT_OIL,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It cuts to short chips and dust, and a thread's crests crumble rather than tear.",
        ),
        practice(
            "A casting's skin is hard: get under it with one firm cut, because a rubbing drill only blunts.",
        ),
        practice(
            "A chilled corner or hard spot stops a drill: try carbide, come from the other side, or have the casting heated and cooled slowly.",
        ),
    ],
    not_for: &[NO_BOILER, NO_SHOCK],
    salvage: &[
        practice(
            "Sash weights and fire bars pass for it and are often chilled white and too hard to drill: file a corner first.",
        ),
        practice(
            "Old machine parts and brake discs are good iron; a dull grey break and black dust on the fingers tell it from steel.",
        ),
    ],
    cautions: &[
        recalled("Chilled skin and sand left on a casting blunt drills and taps."),
        recalled("Use no soluble oil on it: oil and graphite dust make a grinding paste."),
        practice("Never heat a thin casting quickly: it turns hard as glass, or cracks."),
        practice("The dust is abrasive: cover the slides and wipe them afterwards."),
        BREAKING_THROUGH,
    ],
    dangers: &[dangers::IRON_DUST, dangers::SAND_IN_CASTING],
};

pub(super) const CONTINUOUS_CAST_IRON: Material = Material {
    slug: "continuous-cast-iron",
    name: "continuous-cast iron",
    aliases: &[],
    known_as: &[
        "continuous cast iron bar",
        "continuously cast iron",
        "concast iron",
        "cast iron bar",
        "cast iron rod",
    ],
    designations: &[
        recalled_mark("EN-GJL-250C"),
        recalled_mark("EN 16482"),
        mark("ASTM A48 class 40", INDUSTRIAL_TUBE).abroad(),
    ],
    met_in: &[practice(
        "Bought as round, square or flat bar for pistons, rings, slide valves, bushes, cylinder liners, cross slides and backplates.",
    )],
    refused: None,
    // Grey iron in another shape: it takes the aim of grey cast iron.
    group: Group::IronAndGunmetal,
    family: Family::CastIron,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.2), "", RECALLED),
        Property::tensile_ksi(
            exactly(40.0),
            "class 40 bar, separately cast sample",
            INDUSTRIAL_TUBE,
        ),
        Property::tensile(at_least(250.0), "grade 250, separately cast sample", RECALLED),
        Property::hardness(
            Brinell,
            between(207.0, 285.0),
            "class 40 bar, half way to the centre",
            INDUSTRIAL_TUBE,
        ),
        Property::machinability(Steel1212, exactly(48.0), "ASTM class 40", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::JET_IRON,
        drilling::NORSEMAN_MEDIUM_IRON,
        drilling::PROTO_GREY_IRON,
        drilling::PROTO_GREY_IRON_HARD,
        drilling::NOMINAL_IRON,
    ],
    tapping: &[
        tapping::CLARKSON_IRON,
        tapping::CHART_IRON,
        tapping::LAVALLEE_IRON,
        tapping::CATALOGUE_GREY,
    ],
    reaming: &[reaming::GREY_IRON, reaming::GREY_IRON_HARD],
    feeds: &feeds::CAST_IRON,
    drilling_lubricant: DRILL_DRY,
    tapping_lubricant: TAP_DRY,
    back_off: BACK_OFF,
    drill_advice: &[POINT],
    tap_advice: &[
        practice("Straight-flute hand taps do well: the chips are short and fall out."),
        LONG_ENGAGEMENT,
        TAP_WITHOUT_OIL,
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It is close grained and sound, free of the sand, blowholes and hard spots of a casting.",
        ),
        practice(
            "Its skin is finer and harder than the core: turn or mill it away before fine work.",
        ),
        practice(
            "It cuts to short chips and dust, and a thread's crests crumble rather than tear.",
        ),
    ],
    not_for: &[NO_BOILER, NO_SHOCK],
    salvage: &[practice(
        "Bar end or a casting's riser: bar is round, clean and even in grain from edge to centre; a riser has sand on it and may be spongy inside.",
    )],
    cautions: &[
        practice("The dust is abrasive: cover the slides and wipe them afterwards."),
        practice(
            "Thin rings and walls spring or crack when they are gripped hard: hold them lightly.",
        ),
        BREAKING_THROUGH,
    ],
    dangers: &[dangers::IRON_DUST],
};
