//! The tool steels of the workshop: silver steel and gauge plate.

use super::HardnessScale::{Brinell, RockwellC};
use super::MachinabilityBasis::Steel1212;
use super::ferrous::{
    BEFORE_HARDENING, CUTTING_OIL, PRESSURE_BY_CODE, QUARTER_TURN, RECALLED, SHARP_TAP,
    SOLUBLE_OIL, SOLUBLE_OR_CUTTING_OIL, STANDARD_POINT, TEMPER_ALWAYS,
};
use super::property::{Property, at_most, between, exactly};
use super::sources::{
    BIOLOGY_INSIGHTS, BUFFALO_O1, COLT_O1, ENGINEERING_TOOLBOX, GLUE_IT, GROUND_FLAT_STOCK, PAKDEN,
    SHEFFIELD_GAUGE, mark, practice, read, recalled_mark,
};
use super::{BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, dangers};
use super::{drilling_speeds as drilling, reaming_speeds as reaming, tapping_speeds as tapping};

pub(super) const SILVER_STEEL: Material = Material {
    slug: "silver-steel",
    name: "silver steel",
    aliases: &[],
    known_as: &["drill rod", "water hardening drill rod"],
    designations: &[
        mark("BS 1407", BIOLOGY_INSIGHTS),
        recalled_mark("1.2210"),
        recalled_mark("115CrV3"),
        recalled_mark("W1").abroad(),
    ],
    met_in: &[practice(
        "Ground round rod, true to size: axles, pins, dowels, valve spindles, and home-made cutters, punches, D-bits and taps.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.85), "", RECALLED),
        Property::tensile(between(700.0, 900.0), "annealed, as bought", RECALLED),
        Property::hardness(RockwellC, exactly(27.0), "annealed, as bought", PAKDEN),
        Property::hardness(RockwellC, exactly(64.0), "quenched, the most", BIOLOGY_INSIGHTS),
        Property::machinability(
            Steel1212,
            exactly(42.0),
            "AISI 1095, the nearest rated",
            ENGINEERING_TOOLBOX,
        ),
    ],
    drilling: &[
        drilling::JET_TOOL_STEEL,
        drilling::PROTO_HIGH_CARBON,
        drilling::PROTO_WATER_HARDENING,
    ],
    tapping: &[
        tapping::CHART_HIGH_CARBON,
        tapping::SUPPLIER_HIGH_CARBON,
        tapping::SUPPLIER_TOOL_STEEL,
    ],
    reaming: &[reaming::WATER_HARDENING, reaming::HIGH_CARBON_HARD],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OR_CUTTING_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[
        STANDARD_POINT,
        practice(
            "Keep it cutting: the moment the drill squeals or the chips turn blue, stop and sharpen.",
        ),
    ],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    pressure_work: PressureWork::Plausible,
    behaviour: &[
        read(
            "It holds 0.95 to 1.25 % carbon and 0.35 to 0.45 % chromium, and no silver.",
            BIOLOGY_INSIGHTS,
        ),
        practice("As bought it is annealed and cuts cleanly but hard: slow speed, firm feed, oil."),
        practice(
            "A drill that rubs and heats it can leave a hard skin: sharpen, and keep it cutting.",
        ),
        read(
            "Harden it from 770 to 780 °C in water; up to 8 mm from 800 to 810 °C in oil.",
            GLUE_IT,
        ),
        practice(
            "At hardening heat a magnet lets go of it; temper straw for cutters, blue for springs and spindles.",
        ),
    ],
    not_for: &[
        practice(
            "Not for valve spindles and pins left wet: it rusts, and stainless steel does better there.",
        ),
        practice("Not for shafts that bend or are struck while it is hard and not tempered."),
        PRESSURE_BY_CODE,
    ],
    salvage: &[practice(
        "Ejector pins, old drills and dowels pass for it and are hard already: a file that skids says no; some are another steel and harden otherwise.",
    )],
    cautions: &[
        BEFORE_HARDENING,
        TEMPER_ALWAYS,
        practice(
            "Sharp inside corners and cross holes crack in the quench: round them, and plug the holes.",
        ),
    ],
    dangers: &[dangers::LONG_SWARF, dangers::QUENCH, dangers::HARD_PIECES, dangers::FLUID],
};

pub(super) const GAUGE_PLATE: Material = Material {
    slug: "gauge-plate",
    name: "gauge plate",
    aliases: &["ground-flat-stock"],
    known_as: &[
        "gage plate",
        "ground flat steel",
        "GFS",
        "oil hardening tool steel",
        "O1 tool steel",
        "01",
    ],
    designations: &[
        mark("O1", SHEFFIELD_GAUGE).abroad(),
        mark("BO1", SHEFFIELD_GAUGE).old(),
        mark("1.2510", SHEFFIELD_GAUGE),
    ],
    met_in: &[practice(
        "Ground flat bar for templates, expansion links, die blocks, form tools, clicks and cutters.",
    )],
    refused: None,
    group: Group::Tough,
    family: Family::Steel,
    chips: Chips::Long,
    grabs: false,
    work_hardens: false,
    closes_in: false,
    properties: &[
        Property::density(exactly(7.81), "hardened to 62 HRC", COLT_O1),
        Property::tensile(between(700.0, 780.0), "annealed, as bought", RECALLED),
        Property::hardness(Brinell, exactly(229.0), "annealed, about", GROUND_FLAT_STOCK),
        Property::hardness(Brinell, at_most(221.0), "annealed", BUFFALO_O1),
        Property::hardness(RockwellC, between(64.0, 65.0), "as quenched", BUFFALO_O1),
        Property::machinability(Steel1212, exactly(42.0), "", ENGINEERING_TOOLBOX),
    ],
    drilling: &[drilling::PROTO_OIL_HARDENING, drilling::EL_HOFY_TOOL_STEEL],
    tapping: &[
        tapping::CHART_HIGH_CARBON,
        tapping::CLARKSON_ALLOY_STEEL,
        tapping::SUPPLIER_TOOL_STEEL,
        tapping::CATALOGUE_TOOL_STEEL,
    ],
    reaming: &[reaming::OIL_HARDENING],
    feeds: &[],
    drilling_lubricant: SOLUBLE_OIL,
    tapping_lubricant: CUTTING_OIL,
    back_off: QUARTER_TURN,
    drill_advice: &[
        STANDARD_POINT,
        practice(
            "Back thin plate with scrap and clamp both: the far edge tears and bends as the drill comes through.",
        ),
    ],
    tap_advice: &[SHARP_TAP],
    forming_tap: FormingTap::Refuse,
    broken_tap: BrokenTap::NeverAlum,
    // Gauges, links and cutters; not cylinders or fittings.
    pressure_work: PressureWork::Unlikely,
    behaviour: &[
        practice(
            "As bought it is annealed but tough: slow speed, firm feed, and lift the drill to clear it.",
        ),
        read(
            "A maker rates how well it cuts at 90, with plain steel of 1 % carbon at 100.",
            BUFFALO_O1,
        ),
        read(
            "Harden it from 780 to 820 °C in oil, soaked half an hour for each inch of thickness.",
            GROUND_FLAT_STOCK,
        ),
    ],
    not_for: &[
        practice("Not for parts that are struck hard: it chips, even tempered."),
        PRESSURE_BY_CODE,
    ],
    salvage: &[practice(
        "Old feeler gauges, rules and machine knives pass for it and are hardened: soften them at red heat in ashes overnight before drilling.",
    )],
    cautions: &[
        BEFORE_HARDENING,
        practice(
            "It may move in hardening: leave fitted holes to be lapped, or finish them after.",
        ),
        TEMPER_ALWAYS,
    ],
    dangers: &[dangers::LONG_SWARF, dangers::QUENCH, dangers::HARD_PIECES, dangers::FLUID],
};
