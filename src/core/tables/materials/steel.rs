//! Mild steels: free-cutting, leaded, bright and black.

use super::HardnessScale::Brinell;
use super::MachinabilityBasis::Steel1212;
use super::ferrous::{
    CUTTING_OIL, HALF_TURN, LARD_OR_SULPHUR, MACHINE_OIL, PRESSURE_BY_CODE, RECALLED, SOLUBLE_OIL,
    SOLUBLE_OR_CUTTING_OIL, SPIRAL_POINT, STANDARD_POINT, STRINGS,
};
use super::property::{Property, at_least, between, exactly};
use super::sources::{
    CHICAGO_TUBE, EN_STEELS, ENGINEERING_TOOLBOX, INTERLLOY_12L14, LASER_EDGE, LUCCHINI, LUCEFIN,
    LUCEFIN_LEADED, MACSTEEL_070M20, NATIONAL_STEEL, READLE_EN_10025, SHYAM, VMS_TAPPING, mark,
    practice, read, recalled, recalled_mark,
};
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

const HALF_TURN_A_THREAD: Advice =
    read("Turn back about half a turn for each thread cut.", VMS_TAPPING);
const NOT_FOR_SHOCK: Advice = practice(
    "Not for parts that are struck or bent to and fro: the sulphur that helps the cut makes it short.",
);
const RUSTS: Advice =
    practice("It rusts faster than plain mild steel: oil it when it is finished.");
const LEADED_OR_NOT: Advice =
    practice("Bar sold as free-cutting may be leaded or not, and the two cut differently.");

pub(super) const FREE_CUTTING_MILD_STEEL: Material = Material {
    slug: "free-cutting-mild-steel",
    name: "free-cutting mild steel",
    aliases: &["free-cutting-steel", "fcms"],
    known_as: &["free machining mild steel", "free machining steel", "unleaded EN1A"],
    designations: &[
        mark("EN1A", SHYAM).old(),
        mark("230M07", SHYAM).old(),
        mark("11SMn30", LUCEFIN),
        mark("1.0715", SHYAM),
        mark("9SMn28", SHYAM).abroad(),
        mark("AISI 1213", SHYAM).abroad(),
        mark("AISI 1215", SHYAM).abroad(),
    ],
    met_in: &[practice(
        "Turned parts of every kind: screws, nuts, pins, bushes, spacers, handles and tooling, from round and hexagon bar.",
    )],
    refused: None,
    group: Group::FreeCuttingSteel,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(510.0, 810.0), "cold drawn, 5 to 10 mm", LUCEFIN),
        Property::proof(exactly(440.0), "cold drawn, 5 to 10 mm", LUCEFIN),
        Property::hardness(Brinell, between(154.0, 243.0), "cold drawn, 5 to 10 mm", LUCEFIN),
        Property::tensile(between(490.0, 760.0), "cold drawn, 10 to 16 mm", LUCEFIN),
        Property::proof(exactly(410.0), "cold drawn, 10 to 16 mm", LUCEFIN),
        Property::hardness(Brinell, between(149.0, 226.0), "cold drawn, 10 to 16 mm", LUCEFIN),
        Property::tensile(between(460.0, 710.0), "cold drawn, 16 to 40 mm", LUCEFIN),
        Property::proof(exactly(375.0), "cold drawn, 16 to 40 mm", LUCEFIN),
        Property::hardness(Brinell, between(139.0, 218.0), "cold drawn, 16 to 40 mm", LUCEFIN),
        Property::tensile(between(370.0, 480.0), "least, by section", SHYAM),
        Property::proof(between(240.0, 400.0), "least yield, by section", SHYAM),
        Property::elongation(between(6.0, 10.0), "least, by section", SHYAM),
        Property::machinability(Steel1212, exactly(136.0), "AISI 1215", CHICAGO_TUBE),
    ],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::PROTO_RESULPHURISED,
        drilling::PROTO_RESULPHURISED_ROLLED,
        // Bar sold under this name may be leaded.
        drilling::PROTO_LEADED,
        drilling::PROTO_LEADED_SOFT,
    ],
    tapping: &[
        tapping::LAVALLEE_FREE_STEEL,
        tapping::CHART_LOW_CARBON,
        tapping::CATALOGUE_LOW_CARBON,
        tapping::LATHE_STEEL,
    ],
    reaming: &[reaming::RESULPHURISED, reaming::RESULPHURISED_ROLLED],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: LARD_OR_SULPHUR,
    back_off: HALF_TURN_A_THREAD,
    drill_advice: &[STANDARD_POINT],
    tap_advice: &[practice("Ordinary hand taps do, and it takes a clean thread."), MACHINE_OIL],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It cuts freely and cleanly; the chips break up better than those of plain mild steel.",
        ),
        practice("It takes a case: pack it in carbon at red heat, quench, and the skin is hard."),
        RUSTS,
    ],
    not_for: &[recalled("It is not for welding."), NOT_FOR_SHOCK, PRESSURE_BY_CODE],
    salvage: &[practice(
        "Shafts and rollers from printers and copiers often are: it turns to short bright chips and a fine finish where plain mild steel tears.",
    )],
    cautions: &[LEADED_OR_NOT],
    dangers: &[dangers::MAY_HOLD_LEAD, dangers::FLUID],
};

pub(super) const LEADED_FREE_CUTTING_STEEL: Material = Material {
    slug: "leaded-free-cutting-steel",
    name: "leaded free-cutting steel",
    aliases: &["leaded-steel"],
    known_as: &[
        "leaded mild steel",
        "leaded free-cutting mild steel",
        "leaded EN1A",
        "leaded 230M07",
        "free cutting leaded steel",
    ],
    designations: &[
        mark("EN1A Pb", LUCEFIN).old(),
        mark("EN1A leaded", INTERLLOY_12L14).old(),
        mark("230M07 leaded", INTERLLOY_12L14).old(),
        mark("11SMnPb30", LUCEFIN),
        mark("1.0718", LUCEFIN_LEADED),
        mark("9SMnPb28", LUCCHINI).abroad(),
        mark("12L14", INTERLLOY_12L14).abroad(),
    ],
    met_in: &[practice(
        "The bar most stockists send when free-cutting mild steel is asked for: turned parts, screws, nuts, pins and small fittings.",
    )],
    refused: None,
    group: Group::FreeCuttingSteel,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(510.0, 810.0), "cold drawn, 5 to 10 mm", LUCEFIN_LEADED),
        Property::proof(at_least(440.0), "cold drawn, 5 to 10 mm", LUCEFIN_LEADED),
        Property::hardness(
            Brinell,
            between(154.0, 243.0),
            "cold drawn, 5 to 10 mm",
            LUCEFIN_LEADED,
        ),
        Property::tensile(between(460.0, 710.0), "cold drawn, 16 to 40 mm", LUCEFIN_LEADED),
        Property::proof(at_least(375.0), "cold drawn, 16 to 40 mm", LUCEFIN_LEADED),
        Property::hardness(
            Brinell,
            between(139.0, 218.0),
            "cold drawn, 16 to 40 mm",
            LUCEFIN_LEADED,
        ),
        Property::tensile(between(480.0, 760.0), "12L14, cold drawn, to 16 mm", INTERLLOY_12L14),
        Property::hardness(
            Brinell,
            between(142.0, 225.0),
            "12L14, cold drawn, to 16 mm",
            INTERLLOY_12L14,
        ),
        Property::machinability(Steel1212, exactly(180.0), "12L14", CHICAGO_TUBE),
        Property::machinability(Steel1212, exactly(170.0), "12L14", ENGINEERING_TOOLBOX),
    ],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::PROTO_LEADED,
        drilling::PROTO_LEADED_SOFT,
        drilling::PROTO_LEADED_HARD,
    ],
    tapping: &[
        tapping::LAVALLEE_FREE_STEEL,
        tapping::CHART_LOW_CARBON,
        tapping::CATALOGUE_LOW_CARBON,
        tapping::LATHE_STEEL,
    ],
    reaming: &[reaming::LEADED, reaming::LEADED_SOFT, reaming::LEADED_HARD],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: LARD_OR_SULPHUR,
    back_off: HALF_TURN_A_THREAD,
    drill_advice: &[STANDARD_POINT],
    tap_advice: &[practice("Ordinary hand taps do, and it takes a clean thread."), MACHINE_OIL],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice(
            "It is the easiest of the steels: the lead smears under the edge, the chips break short and the finish is bright.",
        ),
        RUSTS,
    ],
    not_for: &[recalled("It is not for welding."), NOT_FOR_SHOCK, PRESSURE_BY_CODE],
    salvage: &[practice(
        "Nothing to be seen tells it from plain free-cutting bar: take unmarked free-cutting bar as leaded.",
    )],
    cautions: &[LEADED_OR_NOT],
    dangers: &[
        dangers::LEAD,
        dangers::LEAD_TAKEN_IN,
        dangers::LEADED_STEEL_HEATED,
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
        mark("EN3B", NATIONAL_STEEL).old(),
        mark("070M20", NATIONAL_STEEL).old(),
        mark("EN3A", EN_STEELS).old(),
        mark("1.0402", NATIONAL_STEEL),
        mark("AISI 1020", NATIONAL_STEEL).abroad(),
        mark("AISI 1018", CHICAGO_TUBE).abroad(),
    ],
    met_in: &[practice(
        "Flat, square and round bar with a clean drawn skin: frames, motion, brackets, shafts, axles, keys and jigs.",
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
        Property::tensile(at_least(560.0), "cold drawn", NATIONAL_STEEL),
        Property::proof(at_least(440.0), "cold drawn", NATIONAL_STEEL),
        Property::elongation(exactly(10.0), "cold drawn", NATIONAL_STEEL),
        Property::tensile(at_least(430.0), "070M20, normalised, to 150 mm", MACSTEEL_070M20),
        Property::proof(at_least(215.0), "070M20, normalised, to 150 mm", MACSTEEL_070M20),
        Property::hardness(
            Brinell,
            between(126.0, 179.0),
            "070M20, normalised, to 150 mm",
            MACSTEEL_070M20,
        ),
        Property::machinability(Steel1212, exactly(78.0), "AISI 1018", CHICAGO_TUBE),
    ],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::JET_MILD,
        drilling::PROTO_LOW_CARBON,
        drilling::PROTO_LOW_CARBON_HARD,
        drilling::PROTO_LOW_CARBON_DRAWN,
    ],
    tapping: &[
        tapping::MH_1020,
        tapping::CHART_LOW_CARBON,
        tapping::CLARKSON_CARBON_STEEL,
        tapping::SUPPLIER_MILD_STEEL,
        tapping::CATALOGUE_LOW_CARBON,
        tapping::LATHE_STEEL,
    ],
    reaming: &[reaming::LOW_CARBON, reaming::LOW_CARBON_HARD, reaming::LOW_CARBON_SOFT],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OR_CUTTING_OIL,
    tapping_lubricant: LARD_OR_SULPHUR,
    back_off: HALF_TURN,
    drill_advice: &[STANDARD_POINT],
    tap_advice: &[SPIRAL_POINT, MACHINE_OIL],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("It is gummier than free-cutting steel: a dry or blunt tap tears the thread."),
        STRINGS,
    ],
    not_for: &[
        PRESSURE_BY_CODE,
        practice("Not for parts that must be hard all through: it takes a case and no more."),
    ],
    salvage: &[practice(
        "Shelving, bed frames and machine guards are mild steel of no known grade: fit for brackets, never for pressure or for parts whose failure hurts.",
    )],
    cautions: &[practice(
        "The bright skin holds stress: a bar milled on one side may bend, so finish the faces before the holes.",
    )],
    dangers: &[dangers::LONG_SWARF, dangers::FLUID],
};

pub(super) const BLACK_MILD_STEEL: Material = Material {
    slug: "black-mild-steel",
    name: "black mild steel",
    aliases: &["hot-rolled-steel"],
    known_as: &[
        "hot rolled mild steel",
        "black bar",
        "black steel",
        "structural steel",
        "laser cut mild steel",
        "laser cut steel",
        "S275",
    ],
    designations: &[
        mark("S275JR", READLE_EN_10025),
        mark("S235JR", READLE_EN_10025),
        mark("1.0044", READLE_EN_10025),
        mark("BS 4360 43B", LUCCHINI).old(),
        recalled_mark("BS 4360 43A").old(),
        mark("St 44-2", LUCCHINI).abroad(),
    ],
    met_in: &[practice(
        "Hot-rolled flat, angle and plate with a blue-black scale, and laser-cut frames, wheels, brackets and stands.",
    )],
    refused: None,
    // Mild steel under a scale: it takes the aim of bright mild steel.
    group: Group::MildSteelAndPhosphorBronze,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(410.0, 560.0), "S275JR, 3 to 100 mm", READLE_EN_10025),
        Property::proof(at_least(275.0), "S275JR, to 16 mm", READLE_EN_10025),
        Property::proof(at_least(265.0), "S275JR, 16 to 40 mm", READLE_EN_10025),
        Property::tensile(between(360.0, 510.0), "S235JR, 3 to 100 mm", READLE_EN_10025),
        Property::proof(at_least(235.0), "S235JR, to 16 mm", READLE_EN_10025),
        Property::tensile(
            at_least(430.0),
            "070M20 black bar, normalised, to 150 mm",
            MACSTEEL_070M20,
        ),
        Property::hardness(
            Brinell,
            between(126.0, 179.0),
            "070M20 black bar, normalised, to 150 mm",
            MACSTEEL_070M20,
        ),
        Property::machinability(
            Steel1212,
            exactly(78.0),
            "AISI 1018, the nearest rated",
            CHICAGO_TUBE,
        ),
    ],
    drilling: &[
        drilling::NAVY_LOW_CARBON,
        drilling::JET_MILD,
        drilling::PROTO_LOW_CARBON_SOFT,
        drilling::PROTO_LOW_CARBON,
    ],
    tapping: &[
        tapping::CLARKSON_STRUCTURAL,
        tapping::CHART_LOW_CARBON,
        tapping::MH_1020,
        tapping::SUPPLIER_MILD_STEEL,
        tapping::CATALOGUE_LOW_CARBON,
        tapping::LATHE_STEEL,
    ],
    reaming: &[reaming::LOW_CARBON, reaming::LOW_CARBON_SOFT],
    feeds: &feeds::MILD_STEEL,
    drilling_lubricant: SOLUBLE_OR_CUTTING_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: HALF_TURN,
    drill_advice: &[
        STANDARD_POINT,
        practice(
            "Grind or pickle the scale off where the hole comes: scale takes the corners off a drill.",
        ),
    ],
    tap_advice: &[
        practice(
            "A hole cut by the laser is hard round its rim and tapered: drill or bore it out before you tap or ream it, with the laser hole well under size.",
        ),
        SPIRAL_POINT,
        MACHINE_OIL,
    ],
    forming_tap: FormingTap::Suits,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        practice("Under the scale it is soft and gummy: a dry or blunt tap tears the thread."),
        practice(
            "A laser-cut, flame-cut or sheared edge can be hard enough to skid a file: grind it back before you drill, tap or file there.",
        ),
        practice(
            "It has little stress in it: it stays flatter than bright bar when one side is cut away.",
        ),
        read(
            "A page on laser cutting calls the change of hardness at the cut edge minor and shallow.",
            LASER_EDGE,
        ),
        STRINGS,
    ],
    not_for: &[
        PRESSURE_BY_CODE,
        practice(
            "Not for sliding fits or fine finish as it comes: the skin is rough and not to size.",
        ),
    ],
    salvage: &[practice(
        "Angle from beds and racking passes for it, and some of that is high-carbon or spring steel: try it with a file and a bend before you trust it.",
    )],
    cautions: &[practice("Scale hides the lines: clean to bright metal before marking out.")],
    dangers: &[dangers::SCALE, dangers::LONG_SWARF, dangers::FLUID],
};
