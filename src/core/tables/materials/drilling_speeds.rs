//! Drilling speeds as the sources print them, for high-speed steel drills, one row a line.
//!
//! Sources differ two- to threefold, so a material lists several. The first is the one the plan
//! uses: never the fastest, because makers' figures assume a stiff machine, a power feed and flood
//! cooling, and the reader has none of them. Left out: the teaching table's 195 to 390 m/min for
//! aluminium, two to four times above every other source.

use super::SpeedRange;
use super::sources::{
    EL_HOFY, JET, NAVY, NOMINAL, NORSEMAN, PROTO_CAST, PROTO_LIGHT, PROTO_STEEL, PROTO_TOOL,
    QUIZ_COPPER, SPEEDS_LIST,
};
use crate::tables::source::Source;

pub(super) const NAVY_LOW_CARBON: SpeedRange = SpeedRange::feet(80.0, 110.0, "low carbon steel", NAVY);
pub(super) const NAVY_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(70.0, 80.0, "medium carbon steel", NAVY);
pub(super) const NAVY_STAINLESS: SpeedRange = SpeedRange::feet(30.0, 40.0, "stainless steel", NAVY);
pub(super) const NAVY_BRASS: SpeedRange = SpeedRange::feet(200.0, 300.0, "brass", NAVY);
pub(super) const NAVY_BRONZE: SpeedRange = SpeedRange::feet(200.0, 300.0, "bronze", NAVY);

pub(super) const JET_IRON: SpeedRange = SpeedRange::feet(70.0, 100.0, "medium hard cast iron", JET);
pub(super) const JET_MILD: SpeedRange = SpeedRange::feet(80.0, 110.0, "mild steel, 0.2 to 0.3 % carbon", JET);
pub(super) const JET_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(70.0, 80.0, "steel, 0.4 to 0.5 % carbon", JET);
pub(super) const JET_TOOL_STEEL: SpeedRange = SpeedRange::feet(50.0, 60.0, "tool steel, 1.2 % carbon", JET);
pub(super) const JET_HIGH_TENSILE_BRONZE: SpeedRange = SpeedRange::feet(70.0, 150.0, "high tensile bronze", JET);
pub(super) const JET_ALUMINIUM: SpeedRange = SpeedRange::feet(200.0, 300.0, "aluminium and alloys", JET);

pub(super) const NORSEMAN_SOFT_IRON: SpeedRange = SpeedRange::feet(75.0, 125.0, "cast iron, soft", NORSEMAN);
pub(super) const NORSEMAN_MEDIUM_IRON: SpeedRange = SpeedRange::feet(50.0, 100.0, "cast iron, medium hard", NORSEMAN);
pub(super) const NORSEMAN_BRASS_BRONZE: SpeedRange = SpeedRange::feet(150.0, 300.0, "brass and bronze, ordinary", NORSEMAN);
pub(super) const NORSEMAN_HIGH_TENSILE_BRONZE: SpeedRange = SpeedRange::feet(70.0, 150.0, "bronze, high tensile", NORSEMAN);
pub(super) const NORSEMAN_STAINLESS: SpeedRange = SpeedRange::feet(30.0, 50.0, "high-nickel steel and stainless", NORSEMAN);
pub(super) const NORSEMAN_ALUMINIUM: SpeedRange = SpeedRange::feet(200.0, 300.0, "aluminium and alloys", NORSEMAN);
pub(super) const NORSEMAN_PLASTICS: SpeedRange = SpeedRange::feet(100.0, 300.0, "plastics", NORSEMAN);

pub(super) const NOMINAL_IRON: SpeedRange = SpeedRange::metres(25.0, 35.0, "cast iron", NOMINAL);
pub(super) const NOMINAL_BRASS: SpeedRange = SpeedRange::metres(60.0, 75.0, "brass", NOMINAL);
pub(super) const NOMINAL_STAINLESS: SpeedRange = SpeedRange::metres(6.0, 15.0, "stainless steel", NOMINAL);
pub(super) const NOMINAL_PLASTICS: SpeedRange = SpeedRange::metres(20.0, 75.0, "plastics", NOMINAL);

pub(super) const PROTO_GREY_IRON: SpeedRange = SpeedRange::feet(80.0, 90.0, "grey iron, class 25 to 40, 160 to 220 HB", PROTO_CAST);
pub(super) const PROTO_RESULPHURISED: SpeedRange = SpeedRange::feet(125.0, 125.0, "1212 to 1214, cold drawn, 150 to 200 HB", PROTO_STEEL);
pub(super) const PROTO_LEADED: SpeedRange = SpeedRange::feet(120.0, 120.0, "12L14 leaded, 150 to 200 HB", PROTO_STEEL);
pub(super) const PROTO_LOW_CARBON: SpeedRange = SpeedRange::feet(90.0, 90.0, "1006 to 1026, 125 to 175 HB", PROTO_STEEL);
pub(super) const PROTO_LOW_CARBON_HARD: SpeedRange = SpeedRange::feet(70.0, 70.0, "1006 to 1026, 175 to 225 HB", PROTO_STEEL);
pub(super) const PROTO_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(75.0, 75.0, "1027 to 1050, 175 to 225 HB", PROTO_STEEL);
pub(super) const PROTO_MEDIUM_CARBON_HARD: SpeedRange = SpeedRange::feet(60.0, 60.0, "1027 to 1050, 225 to 275 HB", PROTO_STEEL);
pub(super) const PROTO_HIGH_CARBON: SpeedRange = SpeedRange::feet(50.0, 50.0, "1055 to 1095, 225 to 275 HB", PROTO_STEEL);
pub(super) const PROTO_WATER_HARDENING: SpeedRange = SpeedRange::feet(85.0, 85.0, "W1 water-hardening tool steel, annealed, 150 to 209 HB", PROTO_TOOL);
pub(super) const PROTO_OIL_HARDENING: SpeedRange = SpeedRange::feet(45.0, 45.0, "O1 oil-hardening tool steel, annealed, 175 to 225 HB", PROTO_TOOL);
pub(super) const PROTO_303_ANNEALED: SpeedRange = SpeedRange::feet(85.0, 85.0, "303, annealed, 135 to 185 HB", PROTO_TOOL);
pub(super) const PROTO_303_DRAWN: SpeedRange = SpeedRange::feet(70.0, 70.0, "303, cold drawn, 225 to 275 HB", PROTO_TOOL);
pub(super) const PROTO_304_DRAWN: SpeedRange = SpeedRange::feet(50.0, 50.0, "304, cold drawn, 225 to 275 HB", PROTO_TOOL);
pub(super) const PROTO_ALUMINIUM: SpeedRange = SpeedRange::feet(350.0, 350.0, "wrought aluminium, solution treated and aged", PROTO_LIGHT);
pub(super) const PROTO_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(350.0, 500.0, "aluminium sand and permanent-mould castings", PROTO_LIGHT);

pub(super) const EL_HOFY_TOOL_STEEL: SpeedRange = SpeedRange::metres(15.0, 15.0, "tool steel, 241 HB", EL_HOFY);
pub(super) const LIST_COPPER: SpeedRange = SpeedRange::feet(70.0, 70.0, "copper", SPEEDS_LIST);
pub(super) const QUIZ_COPPER_RANGE: SpeedRange = SpeedRange::metres(24.0, 45.0, "copper", QUIZ_COPPER);

// Iron and steel.
use super::sources::METAL_DRILLING;

pub(super) const JET_CHILLED_IRON: SpeedRange = SpeedRange::feet(30.0, 40.0, "hard chilled cast iron", JET);
pub(super) const NORSEMAN_CHILLED_IRON: SpeedRange = SpeedRange::feet(10.0, 20.0, "cast iron, hard chilled", NORSEMAN);
pub(super) const PROTO_GREY_IRON_SOFT: SpeedRange = SpeedRange::feet(100.0, 100.0, "grey iron, class 20, 120 to 150 HB", PROTO_CAST);
pub(super) const PROTO_GREY_IRON_HARD: SpeedRange = SpeedRange::feet(60.0, 60.0, "grey iron, class 45 and 50, 220 to 260 HB", PROTO_CAST);
pub(super) const JET_MALLEABLE: SpeedRange = SpeedRange::feet(80.0, 90.0, "malleable iron", JET);
pub(super) const NORSEMAN_MALLEABLE: SpeedRange = SpeedRange::feet(80.0, 90.0, "malleable iron", NORSEMAN);
pub(super) const PROTO_MALLEABLE_FERRITIC: SpeedRange = SpeedRange::feet(110.0, 110.0, "malleable iron, ferritic, 110 to 160 HB", PROTO_CAST);
pub(super) const PROTO_MALLEABLE_PEARLITIC: SpeedRange = SpeedRange::feet(80.0, 80.0, "malleable iron, pearlitic, 160 to 200 HB", PROTO_CAST);
pub(super) const PROTO_NODULAR_FERRITIC: SpeedRange = SpeedRange::feet(100.0, 100.0, "nodular iron, ferritic 60-40-18, 140 to 190 HB", PROTO_CAST);
pub(super) const PROTO_NODULAR_PEARLITIC: SpeedRange = SpeedRange::feet(70.0, 70.0, "nodular iron, ferritic-pearlitic 80-55-06, 190 to 225 HB", PROTO_CAST);
pub(super) const PROTO_NODULAR_HARD: SpeedRange = SpeedRange::feet(50.0, 50.0, "nodular iron, ferritic-pearlitic 80-55-06, 225 to 260 HB", PROTO_CAST);

pub(super) const LIST_CAST_STEEL: SpeedRange = SpeedRange::feet(50.0, 50.0, "cast steel", SPEEDS_LIST);
pub(super) const PROTO_CAST_STEEL_LOW: SpeedRange = SpeedRange::feet(100.0, 100.0, "cast steel 1010 and 1020, 100 to 150 HB", PROTO_CAST);
pub(super) const PROTO_CAST_STEEL_MEDIUM: SpeedRange = SpeedRange::feet(90.0, 90.0, "cast steel 1030 to 1050, 125 to 175 HB", PROTO_CAST);
pub(super) const PROTO_CAST_STEEL_HARD: SpeedRange = SpeedRange::feet(70.0, 70.0, "cast steel 1030 to 1050, 175 to 225 HB", PROTO_CAST);

pub(super) const PROTO_RESULPHURISED_ROLLED: SpeedRange = SpeedRange::feet(120.0, 120.0, "1212 to 1214, hot rolled or annealed, 100 to 150 HB", PROTO_STEEL);
pub(super) const PROTO_LEADED_SOFT: SpeedRange = SpeedRange::feet(130.0, 130.0, "12L14 leaded, 100 to 150 HB", PROTO_STEEL);
pub(super) const PROTO_LEADED_HARD: SpeedRange = SpeedRange::feet(90.0, 90.0, "12L14 leaded, 200 to 250 HB", PROTO_STEEL);
pub(super) const PROTO_LOW_CARBON_SOFT: SpeedRange = SpeedRange::feet(100.0, 100.0, "1006 to 1026, 100 to 125 HB", PROTO_STEEL);
pub(super) const PROTO_LOW_CARBON_DRAWN: SpeedRange = SpeedRange::feet(60.0, 60.0, "1006 to 1026, cold drawn, 225 to 275 HB", PROTO_STEEL);
pub(super) const PROTO_MEDIUM_CARBON_SOFT: SpeedRange = SpeedRange::feet(90.0, 90.0, "1027 to 1050, 125 to 175 HB", PROTO_STEEL);
pub(super) const PROTO_MEDIUM_CARBON_TEMPERED: SpeedRange = SpeedRange::feet(50.0, 50.0, "1027 to 1050, hardened and tempered, 275 to 325 HB", PROTO_STEEL);
pub(super) const PROTO_HIGH_CARBON_SOFT: SpeedRange = SpeedRange::feet(85.0, 85.0, "1055 to 1095, 125 to 175 HB", PROTO_STEEL);
pub(super) const PROTO_HIGH_CARBON_MEDIUM: SpeedRange = SpeedRange::feet(70.0, 70.0, "1055 to 1095, 175 to 225 HB", PROTO_STEEL);
pub(super) const PROTO_HIGH_CARBON_TEMPERED: SpeedRange = SpeedRange::feet(40.0, 40.0, "1055 to 1095, hardened and tempered, 275 to 325 HB", PROTO_STEEL);

pub(super) const NAVY_ALLOY: SpeedRange = SpeedRange::feet(50.0, 70.0, "alloy steel", NAVY);
pub(super) const JET_ALLOY_HARD: SpeedRange = SpeedRange::feet(20.0, 30.0, "alloy steel, 300–400 HB", JET);
pub(super) const PROTO_FREE_ALLOY_ANNEALED: SpeedRange = SpeedRange::feet(90.0, 90.0, "4140 resulphurised, 175 to 200 HB", PROTO_STEEL);
pub(super) const PROTO_FREE_ALLOY_MEDIUM: SpeedRange = SpeedRange::feet(80.0, 80.0, "4140 resulphurised, 200 to 250 HB", PROTO_STEEL);
pub(super) const PROTO_FREE_ALLOY_TEMPERED: SpeedRange = SpeedRange::feet(55.0, 55.0, "4140 resulphurised, hardened and tempered, 250 to 300 HB", PROTO_STEEL);
pub(super) const PROTO_FREE_ALLOY_HARD: SpeedRange = SpeedRange::feet(40.0, 40.0, "4140 resulphurised, hardened and tempered, 300 to 375 HB", PROTO_STEEL);

pub(super) const JET_STAINLESS: SpeedRange = SpeedRange::feet(30.0, 40.0, "stainless steel", JET);
pub(super) const GUIDE_FREE_STAINLESS: SpeedRange = SpeedRange::feet(30.0, 80.0, "stainless steel, free machining grades", METAL_DRILLING);
pub(super) const GUIDE_HARDENING_STAINLESS: SpeedRange = SpeedRange::feet(15.0, 50.0, "stainless steel, work hardening grades", METAL_DRILLING);
pub(super) const PROTO_304_ANNEALED: SpeedRange = SpeedRange::feet(55.0, 55.0, "304, annealed, 135 to 185 HB", PROTO_TOOL);
pub(super) const PROTO_316: SpeedRange = SpeedRange::feet(50.0, 50.0, "316, annealed, 135 to 185 HB", PROTO_TOOL);
pub(super) const PROTO_416_ANNEALED: SpeedRange = SpeedRange::feet(90.0, 90.0, "416, annealed, 135 to 185 HB", PROTO_TOOL);
pub(super) const PROTO_416_DRAWN: SpeedRange = SpeedRange::feet(70.0, 70.0, "416, cold drawn, 185 to 240 HB", PROTO_TOOL);
pub(super) const PROTO_416_TEMPERED: SpeedRange = SpeedRange::feet(40.0, 40.0, "416, hardened and tempered, 275 to 325 HB", PROTO_TOOL);
pub(super) const PROTO_410_MEDIUM: SpeedRange = SpeedRange::feet(65.0, 65.0, "410 and 420, 175 to 225 HB", PROTO_TOOL);
pub(super) const PROTO_410_TEMPERED: SpeedRange = SpeedRange::feet(40.0, 40.0, "410 and 420, hardened and tempered, 275 to 325 HB", PROTO_TOOL);

// Copper and its alloys.
pub(super) const JET_BRASS_BRONZE: SpeedRange = SpeedRange::feet(200.0, 300.0, "ordinary brass and bronze", JET);

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const PROTO_2011: SpeedRange = SpeedRange::feet(400.0, 400.0, "2011 aluminium, cold drawn", PROTO_LIGHT);
pub(super) const PROTO_DIE_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(300.0, 300.0, "aluminium die castings, as cast", PROTO_LIGHT);
pub(super) const PROTO_WROUGHT_MAGNESIUM: SpeedRange = SpeedRange::feet(500.0, 500.0, "wrought magnesium", PROTO_LIGHT);
pub(super) const PROTO_CAST_MAGNESIUM: SpeedRange = SpeedRange::feet(450.0, 450.0, "cast magnesium", PROTO_LIGHT);
pub(super) const NORSEMAN_MAGNESIUM: SpeedRange = SpeedRange::feet(250.0, 400.0, "magnesium alloys", NORSEMAN);
pub(super) const LIST_MAGNESIUM: SpeedRange = SpeedRange::feet(300.0, 300.0, "magnesium", SPEEDS_LIST);
pub(super) const NORSEMAN_ZINC: SpeedRange = SpeedRange::feet(300.0, 400.0, "die casting (zinc)", NORSEMAN);
pub(super) const EL_HOFY_ZINC: SpeedRange = SpeedRange::metres(76.0, 76.0, "zinc alloys, 80 to 100 HB", EL_HOFY);
pub(super) const NAVY_NICKEL_COPPER: SpeedRange = SpeedRange::feet(40.0, 50.0, "Monel", NAVY);
pub(super) const NORSEMAN_NICKEL_COPPER: SpeedRange = SpeedRange::feet(30.0, 50.0, "Monel, high-nickel steel, stainless", NORSEMAN);
pub(super) const LIST_TITANIUM: SpeedRange = SpeedRange::feet(30.0, 30.0, "titanium", SPEEDS_LIST);
pub(super) const EL_HOFY_TITANIUM_PURE: SpeedRange = SpeedRange::metres(30.0, 30.0, "titanium, pure, 110 to 200 HB", EL_HOFY);
pub(super) const EL_HOFY_TITANIUM_ALLOY: SpeedRange = SpeedRange::metres(12.0, 12.0, "titanium, alpha and alpha-beta, 300 to 360 HB, cobalt drill", EL_HOFY);
pub(super) const RECALLED_WHITE_METAL: SpeedRange = SpeedRange::metres(30.0, 60.0, "white metal", Source::memory("recalled, no source read"));
