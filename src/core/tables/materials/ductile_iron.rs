//! The irons that bend before they break: spheroidal graphite iron and malleable iron.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::ferrous::PRESSURE_BY_CODE;
use super::property::{Property, at_least, at_most, between, exactly};
use super::sources::{
    BSI_MALLEABLE, DANDONG_EN_1563, DANDONG_GJS_400, ENGINEERING_TOOLBOX, MALLEABLE_A47,
    MALLEABLE_DENSITY, MH_FLUIDS, PROTO_CAST, ZUIN, mark, practice, read, recalled_mark,
};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const SPHEROIDAL_GRAPHITE_IRON: Material = Material {
    slug: "spheroidal-graphite-iron",
    name: "spheroidal graphite iron",
    aliases: &["sg-iron", "ductile-iron"],
    known_as: &[
        "SG cast iron",
        "nodular iron",
        "nodular cast iron",
        "ductile cast iron",
        "spheroidal cast iron",
    ],
    designations: &[
        mark("EN-GJS-400-15", DANDONG_EN_1563),
        mark("EN-GJS-500-7", DANDONG_EN_1563),
        mark("EN-GJS-600-3", DANDONG_EN_1563),
        mark("GJS400", ZUIN),
        recalled_mark("BS 2789 grade 420/12").old(),
        recalled_mark("BS 2789 grade 500/7").old(),
        mark("GGG40", DANDONG_GJS_400).abroad(),
        recalled_mark("GGG50").abroad(),
        mark("ASTM A536 60-40-18", DANDONG_GJS_400).abroad(),
    ],
    met_in: &[practice(
        "Castings that must not crack: crankshafts, connecting rods, gears, brackets, cylinder heads, vice and machine parts.",
    )],
    refused: None,
    // Not in the aim table. It is as strong and as tough as mild steel and makers tap it slower
    // than grey iron, so it takes the aim of mild steel.
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::CastIron,
    // The soft ferritic grades curl like steel and their crests hold: the careful reading.
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.1), "grades 400 to 500", DANDONG_EN_1563),
        Property::density(exactly(7.2), "grades 600 and 700", DANDONG_EN_1563),
        Property::density(exactly(7.3), "grade 400-15", DANDONG_GJS_400),
        Property::tensile(at_least(400.0), "grade 400-15", DANDONG_EN_1563),
        Property::proof(at_least(250.0), "grade 400-15", DANDONG_EN_1563),
        Property::elongation(at_least(15.0), "grade 400-15", DANDONG_EN_1563),
        Property::tensile(at_least(500.0), "grade 500-7", DANDONG_EN_1563),
        Property::proof(at_least(320.0), "grade 500-7", DANDONG_EN_1563),
        Property::tensile(at_least(600.0), "grade 600-3", DANDONG_EN_1563),
        Property::proof(at_least(370.0), "grade 600-3", DANDONG_EN_1563),
        Property::hardness(Brinell, between(135.0, 180.0), "grade 400-15", DANDONG_EN_1563),
        Property::hardness(Brinell, between(130.0, 180.0), "grade 400-15", DANDONG_GJS_400),
        Property::hardness(Brinell, between(140.0, 200.0), "GJS400", ZUIN),
        Property::hardness(Brinell, between(170.0, 230.0), "grade 500-7", DANDONG_EN_1563),
        Property::hardness(Brinell, between(190.0, 270.0), "grade 600-3", DANDONG_EN_1563),
        Property::machinability(
            Steel1212,
            exactly(61.0),
            "ASTM 60-40-18, annealed",
            ENGINEERING_TOOLBOX,
        ),
        Property::machinability(Steel1212, exactly(39.0), "ASTM 80-55-06", ENGINEERING_TOOLBOX),
    ],
    // The grade is seldom known, so the middle one comes first.
    drilling: &[
        drilling::PROTO_NODULAR_PEARLITIC,
        drilling::PROTO_NODULAR_FERRITIC,
        drilling::PROTO_NODULAR_HARD,
    ],
    tapping: &[
        tapping::CLARKSON_NODULAR,
        tapping::CLARKSON_NODULAR_HARD,
        tapping::CHART_DUCTILE_IRON,
        tapping::CATALOGUE_DUCTILE,
    ],
    reaming: &[reaming::NODULAR_PEARLITIC, reaming::NODULAR_FERRITIC],
    feeds: &feeds::CAST_IRON,
    drilling_lubricant: practice("Drill it dry, or with soluble oil in a deep hole."),
    tapping_lubricant: practice(
        "Use cutting oil or soluble oil: it does not run dry as grey iron does.",
    ),
    back_off: practice("Half a turn on, then back until the chip breaks."),
    drill_advice: &[practice(
        "A 118° point serves; the corners wear fast in the harder grades, so look at them often.",
    )],
    tap_advice: &[practice(
        "It wants a sharp tap and more effort than grey iron: all three hand taps in turn.",
    )],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It cuts more like steel than like grey iron: the chips curl, and a dull tap tears.",
        ),
        practice(
            "It bends before it breaks; the harder grades are springy and wear a drill's corners.",
        ),
        practice("A casting's skin may be hard or hold sand: get under it with one firm cut."),
    ],
    not_for: &[
        PRESSURE_BY_CODE,
        practice("Not for welding or brazing as if it were steel: the heat leaves a brittle zone."),
    ],
    salvage: &[
        practice(
            "Modern vehicle crankshafts, hubs and calipers, manhole covers and pipe fittings are often of it.",
        ),
        practice(
            "Struck, it rings nearly like steel where grey iron thuds; a shaving curls where grey iron crumbles.",
        ),
    ],
    cautions: &[
        practice("Its grade sets its hardness: try a drill in a waste place first."),
        practice("The dust is abrasive: cover the slides and wipe them afterwards."),
    ],
    dangers: &[dangers::IRON_DUST, dangers::SAND_IN_CASTING, dangers::FLUID],
};

pub(super) const MALLEABLE_IRON: Material = Material {
    slug: "malleable-iron",
    name: "malleable iron",
    aliases: &[],
    known_as: &[
        "malleable cast iron",
        "blackheart malleable iron",
        "whiteheart malleable iron",
        "blackheart",
        "whiteheart",
        "malleable",
    ],
    designations: &[
        mark("BS EN 1562", BSI_MALLEABLE),
        recalled_mark("EN-GJMB-350-10"),
        recalled_mark("EN-GJMW-400-5"),
        recalled_mark("BS 310").old(),
        recalled_mark("BS 309").old(),
        mark("ASTM A47M grade 22010", MALLEABLE_A47).abroad(),
    ],
    met_in: &[practice(
        "Pipe fittings, cramps, brackets, handwheels, chain links, and the small castings of old vehicles and farm machines.",
    )],
    refused: None,
    // Not in the aim table. The ferritic kind is soft, and the makers' force per area for tapping
    // it lies below that of grey iron: it takes the aim of grey iron.
    group: Group::IronAndGunmetal,
    family: Family::CastIron,
    // Makers part it into short- and long-chipping kinds; the careful reading is long.
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.15), "", MALLEABLE_DENSITY),
        Property::tensile(at_least(340.0), "ferritic, ASTM A47M grade 22010", MALLEABLE_A47),
        Property::proof(at_least(220.0), "ferritic, ASTM A47M grade 22010", MALLEABLE_A47),
        Property::elongation(at_least(10.0), "ferritic, ASTM A47M grade 22010", MALLEABLE_A47),
        Property::hardness(
            Brinell,
            at_most(156.0),
            "ferritic, ASTM A47M grade 22010",
            MALLEABLE_A47,
        ),
        Property::hardness(
            Brinell,
            between(160.0, 200.0),
            "pearlitic, the range its speeds are given for",
            PROTO_CAST,
        ),
    ],
    drilling: &[
        drilling::JET_MALLEABLE,
        drilling::NORSEMAN_MALLEABLE,
        drilling::PROTO_MALLEABLE_PEARLITIC,
        drilling::PROTO_MALLEABLE_FERRITIC,
    ],
    tapping: &[
        tapping::CLARKSON_NODULAR,
        tapping::LAVALLEE_MALLEABLE,
        tapping::CLARKSON_NODULAR_HARD,
        tapping::SUPPLIER_MALLEABLE,
        tapping::CATALOGUE_MALLEABLE,
    ],
    reaming: &[reaming::MALLEABLE_PEARLITIC, reaming::MALLEABLE_FERRITIC],
    feeds: &[],
    drilling_lubricant: read("Use soluble oil.", MH_FLUIDS),
    tapping_lubricant: read("Use soluble oil.", MH_FLUIDS),
    back_off: practice("Half a turn to a turn on, then back until the chip breaks."),
    drill_advice: &[practice("A 118° point serves; no special grinding is needed.")],
    tap_advice: &[practice(
        "Ordinary hand taps do; the walls of a fitting are thin, so go for full threads rather than few deep ones.",
    )],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is soft and tough, and cuts more cleanly than any other iron."),
        practice(
            "Whiteheart has a soft skin over a harder middle, blackheart is alike all through: the feel may change half way.",
        ),
    ],
    not_for: &[
        read("Grade EN-GJMB-300-6 must not be used for any pressure application.", BSI_MALLEABLE),
        PRESSURE_BY_CODE,
        practice("Not to be heated red and cooled fast: it goes back to white, brittle iron."),
    ],
    salvage: &[practice(
        "Old pipe fittings and cramps are of it; a tag of it bends in the vice where grey iron snaps, and a file cuts it easily.",
    )],
    cautions: &[
        practice("Brazing or welding spoils it beside the joint, where it turns hard and brittle."),
        practice(
            "The casting of a fitting may hold a core shift: measure the wall before you tap.",
        ),
    ],
    dangers: &[dangers::GALVANISED, dangers::IRON_DUST, dangers::FLUID],
};
