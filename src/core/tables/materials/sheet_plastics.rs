//! Acrylic, polycarbonate and PVC, and laminated phenolic board. Trade names are not used.

use super::HardnessScale::RockwellM;
use super::caution::{Fluid, Work};
use super::plastics::{
    BACK_OFF, BACKED, CLEAN_TAP, CLOSES_IN, DRILLING, MEASURE_COLD, POINT, TAPPING,
};
use super::property::{Property, exactly};
use super::sources::{
    ACRYLIC_BRIEF, ACRYLIC_MANUAL, AERO_PLASTICS, BORSODCHEM, CCT_ACRYLIC, HIGHLINE, JAIN_PVC,
    NORVA, QUIZ_PHENOLIC, STERLING_PVC, TRIDENT_CE, TRIDENT_PC, US_PLASTIC_ACRYLIC, practice, read,
    recalled, recalled_mark,
};
use super::tapping_speeds as tapping;
use super::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers, feeds,
};

const SOAPY_TAP: Advice = practice("Tap it with plain or soapy water; oil and spirit craze it.");
const ROUND_CORNERS: Advice = practice(
    "Break the edges of the hole, and do no screw up tight: a sharp corner or a strained screw starts a crack.",
);
const MARKED_SHEET: Advice = practice(
    "Clear offcuts look alike: acrylic rings and snaps, polycarbonate thuds and bends; ask before you trust one as a guard.",
);

pub(super) const ACRYLIC: Material = Material {
    slug: "acrylic",
    name: "acrylic",
    aliases: &[],
    known_as: &["acrylic sheet", "cast acrylic", "methacrylate", "polymethyl methacrylate"],
    designations: &[recalled_mark("PMMA")],
    met_in: &[practice("Windows, covers, display cases, light guides and drilling jigs.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: true,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.19), "", CCT_ACRYLIC),
        Property::tensile_ksi(exactly(8.8), "", CCT_ACRYLIC),
        Property::tensile(exactly(69.0), "extruded sheet", US_PLASTIC_ACRYLIC),
        Property::elongation(exactly(4.5), "extruded sheet", US_PLASTIC_ACRYLIC),
        Property::hardness(RockwellM, exactly(86.0), "", CCT_ACRYLIC),
        Property::hardness(RockwellM, exactly(93.0), "extruded sheet", US_PLASTIC_ACRYLIC),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: read(
        "Small holes need no coolant; in a large deep one plain water gives a better surface.",
        ACRYLIC_MANUAL,
    ),
    tapping_lubricant: SOAPY_TAP,
    back_off: BACK_OFF,
    drill_advice: &[
        read(
            "Grind the point to 60 to 90 degrees and the edge flat, to 0 to 4 degrees of rake: it must scrape, not dig.",
            ACRYLIC_BRIEF,
        ),
        read("A 60° point comes through the far face without breaking it.", ACRYLIC_MANUAL),
        BACKED,
    ],
    tap_advice: &[
        CLEAN_TAP,
        practice(
            "Use a coarse thread with rounded crests and a large hole; better, drill through and clamp.",
        ),
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It is brittle: a drill that grabs at break-through cracks or stars the sheet."),
        practice("Overheated, it softens, grips the drill and crazes afterwards."),
        CLOSES_IN,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a gauge glass, a guard that may be struck, or anything hot."),
    ],
    salvage: &[MARKED_SHEET],
    cautions: &[
        Work::Shuns(Fluid::Oil).says(read(
            "Chlorinated or aromatic solvents, esters and ketones attack it: keep them off.",
            AERO_PLASTICS,
        )),
        Work::Shuns(Fluid::Oil).says(practice(
            "Oils, spirit and thread-locking fluid craze it, sometimes days later.",
        )),
        Work::Edges.says(ROUND_CORNERS),
        Work::Drilling.says(MEASURE_COLD),
    ],
    dangers: &[dangers::GRAB, dangers::SPLINTERS, dangers::PLASTIC_FUME],
};

pub(super) const POLYCARBONATE: Material = Material {
    slug: "polycarbonate",
    name: "polycarbonate",
    aliases: &[],
    known_as: &["polycarbonate sheet", "polycarb"],
    designations: &[],
    met_in: &[practice("Machine guards, splash screens, windows and clear covers.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: true,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.20), "rod", TRIDENT_PC),
        Property::tensile_ksi(exactly(9.5), "rod", TRIDENT_PC),
        Property::proof_ksi(exactly(9.0), "rod, at yield", TRIDENT_PC),
        Property::elongation(exactly(110.0), "rod", TRIDENT_PC),
        Property::hardness(RockwellM, exactly(70.0), "rod", TRIDENT_PC),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: read(
        "Cool it with water or air, and use no cutting oil: it may craze round the hole.",
        HIGHLINE,
    ),
    tapping_lubricant: SOAPY_TAP,
    back_off: BACK_OFF,
    drill_advice: &[
        read(
            "A sharp 118° drill serves with 10 degrees of clearance and the lips dubbed to 0 degrees of rake, so that it scrapes.",
            HIGHLINE,
        ),
        read(
            "One maker prints 1750 rev/min and 0.001 in a revolution for 1/8 in, 1500 and 0.002 for 1/4 in, 500 and 0.004 for 1/2 in.",
            HIGHLINE,
        ),
        read("Back it with scrap, clamp it, and peck.", HIGHLINE),
    ],
    tap_advice: &[
        CLEAN_TAP,
        practice("Drill through and clamp where you can: a tight thread cracks in time."),
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "It is tough and stringy, gums on a warm drill, and does not shatter as acrylic does.",
        ),
        read("Heat from the drill leaves a stress that cracks it later.", HIGHLINE),
        CLOSES_IN,
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for a gauge glass, nor where petrol, solvent or strong cleaner touches it."),
    ],
    salvage: &[MARKED_SHEET],
    cautions: &[
        Work::MarkingOut
            .says(read("Keep a hole one and a half to two diameters from the edge.", HIGHLINE)),
        Work::Clearing
            .says(read("Make the clearance hole a good deal larger than the screw: the sheet grows and shrinks.", HIGHLINE)),
        Work::Shuns(Fluid::Oil)
            .says(practice("Oil, solvent and thread-locking fluid craze it under load.")),
        Work::Edges.says(ROUND_CORNERS),
        Work::Drilling.says(MEASURE_COLD),
    ],
    dangers: &[dangers::GRAB, dangers::PLASTIC_FUME, dangers::LONG_SWARF],
};

pub(super) const PVC: Material = Material {
    slug: "pvc",
    name: "PVC",
    aliases: &[],
    known_as: &["rigid PVC", "polyvinyl chloride", "uPVC"],
    designations: &[recalled_mark("PVC-U"), recalled_mark("BS 3757").old()],
    met_in: &[practice("Grey sheet and rod, pipe, tanks, covers and cold-water fittings.")],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        Property::density(exactly(1.41), "rigid, type I", STERLING_PVC),
        Property::density(exactly(1.38), "resin", BORSODCHEM),
        Property::tensile_ksi(exactly(7.5), "rigid, type I", STERLING_PVC),
    ],
    drilling: DRILLING,
    tapping: TAPPING,
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: read(
        "Sharp drills need no coolant if the shavings are cleared; air or water will do.",
        JAIN_PVC,
    ),
    tapping_lubricant: practice("Tap it dry, or with soapy water."),
    back_off: BACK_OFF,
    drill_advice: &[
        read("Keep the lips sharp, or the hole is rough and undersize.", JAIN_PVC),
        read("The thicker the sheet, the lower the speed.", JAIN_PVC),
        POINT,
    ],
    tap_advice: &[
        CLEAN_TAP,
        practice("A coarse thread holds best; a tight taper thread splits a fitting."),
    ],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[practice("It cuts easily, and smears as soon as the drill is warm."), CLOSES_IN],
    not_for: &[
        dangers::PRESSURE,
        practice(
            "Not for compressed air: pipe of it bursts into splinters. Not for hot water or steam.",
        ),
    ],
    salvage: &[practice(
        "Grey or white pipe and window section; old pipe may hold lead in its stabiliser, so make no dust of it.",
    )],
    cautions: &[
        Work::OtherCuts.says(read(
            "Avoid sharp inside corners and deep notches: breakage starts there.",
            JAIN_PVC,
        )),
        Work::Shuns(Fluid::Oil).says(practice("Solvents and some oils soften it.")),
        Work::Drilling.says(MEASURE_COLD),
    ],
    dangers: &[dangers::PVC_FUME, dangers::PVC_HEAT, dangers::LONG_SWARF],
};

pub(super) const LAMINATED_PHENOLIC: Material = Material {
    slug: "laminated-phenolic",
    name: "laminated phenolic",
    aliases: &[],
    known_as: &[
        "phenolic laminate",
        "phenolic",
        "fabric laminate",
        "canvas phenolic",
        "paper phenolic",
        "resin bonded fabric",
        "resin bonded paper",
    ],
    designations: &[
        recalled_mark("SRBF"),
        recalled_mark("SRBP"),
        recalled_mark("NEMA CE").abroad(),
    ],
    met_in: &[practice(
        "Insulating boards, switch panels, gears, washers, tool handles, water-run bushes.",
    )],
    refused: None,
    group: Group::EasyCutting,
    family: Family::Plastic,
    chips: Chips::Short,
    grabs: false,
    work_hardens: false,
    closes_in: true,
    properties: &[
        // The sheet prints 0.050 with the unit g/cm³; in lb/in³, which it must be, that is 1.38 g/cm³.
        Property::density(exactly(1.38), "canvas, grade CE", TRIDENT_CE),
        Property::tensile_ksi(exactly(11.0), "canvas, grade CE, lengthwise", TRIDENT_CE),
        Property::tensile_ksi(exactly(9.0), "canvas, grade CE, crosswise", TRIDENT_CE),
        Property::hardness(RockwellM, exactly(100.0), "canvas, grade CE", TRIDENT_CE),
    ],
    drilling: DRILLING,
    tapping: &[
        tapping::CHART_THERMOSETTING,
        tapping::LAVALLEE_THERMOSETTING,
        tapping::SUPPLIER_PLASTICS,
    ],
    reaming: &[],
    feeds: &feeds::PLASTICS,
    drilling_lubricant: read(
        "Drill it dry: it needs no cutting compound, and liquid is hard to get out again.",
        NORVA,
    ),
    tapping_lubricant: practice("Tap it dry, or with a touch of wax."),
    back_off: practice("Turn back every turn, and clear the dust from a blind hole."),
    drill_advice: &[
        read("A point of 90° is asked for, against cracking and parted layers.", QUIZ_PHENOLIC),
        read("High-speed steel serves if it is kept extremely sharp; carbide lasts longer.", NORVA),
        BACKED,
    ],
    tap_advice: &[practice(
        "Tap through the layers, not into the edge: a thread between them splits the board.",
    )],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NoNeed,
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice("It cuts to dust and short chips; the far face flakes if it is not backed."),
        practice("Drilled along its layers it splits: clamp it between blocks and ease the feed."),
        practice("Holes in it come out a little small: try one in scrap and measure."),
    ],
    not_for: &[
        dangers::PRESSURE,
        practice("Not for mains insulation unless the grade is known to be made for it."),
    ],
    salvage: &[
        practice("The edge shows cloth or paper in layers, and the dust smells of carbolic."),
        dangers::OLD_LAMINATE.advice,
    ],
    cautions: &[
        Work::Drilling.says(recalled("High-speed steel blunts quickly in it.")),
        Work::Drilling.says(read("Keep the work below 150 °C, or it distorts.", NORVA)),
    ],
    dangers: &[
        dangers::PHENOLIC_DUST,
        Work::Background.says(recalled("The dust is abrasive: draw it off and wear a mask.")),
        dangers::OLD_LAMINATE,
    ],
};
