//! Reaming speeds in a machine as the sources print them, for high-speed steel reamers, one row a line.
//!
//! A reamer turned by hand needs none of these. The first a material lists is the one the
//! calculator uses.

use super::SpeedRange;
use super::sources::{
    PROTO_CAST_REAMING, PROTO_REAM_LIGHT, PROTO_STEEL_REAMING, PROTO_TOOL_REAMING,
};
use crate::tables::source::Source;

// Iron and steel.
pub(super) const GREY_IRON_SOFT: SpeedRange = SpeedRange::feet(65.0, 65.0, "grey iron, class 20, 120 to 150 HB", PROTO_CAST_REAMING);
pub(super) const GREY_IRON: SpeedRange = SpeedRange::feet(55.0, 55.0, "grey iron, class 30, 35 and 40, 190 to 220 HB", PROTO_CAST_REAMING);
pub(super) const GREY_IRON_HARD: SpeedRange = SpeedRange::feet(40.0, 40.0, "grey iron, class 45 and 50, 220 to 260 HB", PROTO_CAST_REAMING);
pub(super) const MALLEABLE_FERRITIC: SpeedRange = SpeedRange::feet(75.0, 75.0, "malleable iron, ferritic, 110 to 160 HB", PROTO_CAST_REAMING);
pub(super) const MALLEABLE_PEARLITIC: SpeedRange = SpeedRange::feet(55.0, 55.0, "malleable iron, pearlitic, 160 to 200 HB", PROTO_CAST_REAMING);
pub(super) const NODULAR_FERRITIC: SpeedRange = SpeedRange::feet(65.0, 65.0, "nodular iron, ferritic 60-40-18, 140 to 190 HB", PROTO_CAST_REAMING);
pub(super) const NODULAR_PEARLITIC: SpeedRange = SpeedRange::feet(45.0, 45.0, "nodular iron, ferritic-pearlitic 80-55-06, 190 to 225 HB", PROTO_CAST_REAMING);
pub(super) const CAST_STEEL_LOW: SpeedRange = SpeedRange::feet(65.0, 65.0, "cast steel 1010 and 1020, 100 to 150 HB", PROTO_CAST_REAMING);
pub(super) const CAST_STEEL_MEDIUM: SpeedRange = SpeedRange::feet(60.0, 60.0, "cast steel 1030 to 1050, 125 to 175 HB", PROTO_CAST_REAMING);
pub(super) const CAST_STEEL_HARD: SpeedRange = SpeedRange::feet(45.0, 45.0, "cast steel 1030 to 1050, 175 to 225 HB", PROTO_CAST_REAMING);

pub(super) const RESULPHURISED_ROLLED: SpeedRange = SpeedRange::feet(80.0, 80.0, "1212 to 1214, hot rolled or annealed, 100 to 150 HB", PROTO_STEEL_REAMING);
pub(super) const RESULPHURISED: SpeedRange = SpeedRange::feet(80.0, 80.0, "1212 to 1214, cold drawn, 150 to 200 HB", PROTO_STEEL_REAMING);
pub(super) const LEADED_SOFT: SpeedRange = SpeedRange::feet(85.0, 85.0, "12L14 leaded, 100 to 150 HB", PROTO_STEEL_REAMING);
pub(super) const LEADED: SpeedRange = SpeedRange::feet(80.0, 80.0, "12L14 leaded, 150 to 200 HB", PROTO_STEEL_REAMING);
pub(super) const LEADED_HARD: SpeedRange = SpeedRange::feet(60.0, 60.0, "12L14 leaded, 200 to 250 HB", PROTO_STEEL_REAMING);
pub(super) const LOW_CARBON_SOFT: SpeedRange = SpeedRange::feet(65.0, 65.0, "1006 to 1026, 100 to 125 HB", PROTO_STEEL_REAMING);
pub(super) const LOW_CARBON: SpeedRange = SpeedRange::feet(60.0, 60.0, "1006 to 1026, 125 to 175 HB", PROTO_STEEL_REAMING);
pub(super) const LOW_CARBON_HARD: SpeedRange = SpeedRange::feet(45.0, 45.0, "1006 to 1026, 175 to 225 HB", PROTO_STEEL_REAMING);
pub(super) const MEDIUM_CARBON_SOFT: SpeedRange = SpeedRange::feet(60.0, 60.0, "1027 to 1050, 125 to 175 HB", PROTO_STEEL_REAMING);
pub(super) const MEDIUM_CARBON: SpeedRange = SpeedRange::feet(50.0, 50.0, "1027 to 1050, 175 to 225 HB", PROTO_STEEL_REAMING);
pub(super) const MEDIUM_CARBON_HARD: SpeedRange = SpeedRange::feet(40.0, 40.0, "1027 to 1050, 225 to 275 HB", PROTO_STEEL_REAMING);
pub(super) const MEDIUM_CARBON_TEMPERED: SpeedRange = SpeedRange::feet(30.0, 30.0, "1027 to 1050, hardened and tempered, 275 to 325 HB", PROTO_STEEL_REAMING);
pub(super) const MEDIUM_CARBON_TEMPERED_HARD: SpeedRange = SpeedRange::feet(20.0, 20.0, "1027 to 1050, hardened and tempered, 325 to 375 HB", PROTO_STEEL_REAMING);
pub(super) const HIGH_CARBON_SOFT: SpeedRange = SpeedRange::feet(55.0, 55.0, "1055 to 1095, 125 to 175 HB", PROTO_STEEL_REAMING);
pub(super) const HIGH_CARBON: SpeedRange = SpeedRange::feet(45.0, 45.0, "1055 to 1095, 175 to 225 HB", PROTO_STEEL_REAMING);
pub(super) const HIGH_CARBON_HARD: SpeedRange = SpeedRange::feet(30.0, 30.0, "1055 to 1095, 225 to 275 HB", PROTO_STEEL_REAMING);
pub(super) const HIGH_CARBON_TEMPERED: SpeedRange = SpeedRange::feet(20.0, 20.0, "1055 to 1095, hardened and tempered, 325 to 375 HB", PROTO_STEEL_REAMING);
pub(super) const FREE_ALLOY_ANNEALED: SpeedRange = SpeedRange::feet(60.0, 60.0, "4140 resulphurised, 175 to 200 HB", PROTO_STEEL_REAMING);
pub(super) const FREE_ALLOY_MEDIUM: SpeedRange = SpeedRange::feet(50.0, 50.0, "4140 resulphurised, 200 to 250 HB", PROTO_STEEL_REAMING);
pub(super) const FREE_ALLOY_TEMPERED: SpeedRange = SpeedRange::feet(30.0, 30.0, "4140 resulphurised, hardened and tempered, 250 to 300 HB", PROTO_STEEL_REAMING);
pub(super) const FREE_ALLOY_HARD: SpeedRange = SpeedRange::feet(25.0, 25.0, "4140 resulphurised, hardened and tempered, 300 to 375 HB", PROTO_STEEL_REAMING);

pub(super) const WATER_HARDENING: SpeedRange = SpeedRange::feet(35.0, 35.0, "W1 water-hardening tool steel, annealed, 150 to 209 HB", PROTO_TOOL_REAMING);
pub(super) const OIL_HARDENING: SpeedRange = SpeedRange::feet(30.0, 30.0, "O1 oil-hardening tool steel, annealed, 175 to 225 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_303_ANNEALED: SpeedRange = SpeedRange::feet(55.0, 55.0, "303, annealed, 135 to 185 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_303_DRAWN: SpeedRange = SpeedRange::feet(45.0, 45.0, "303, cold drawn, 225 to 275 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_304_ANNEALED: SpeedRange = SpeedRange::feet(35.0, 35.0, "304, annealed, 135 to 185 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_304_DRAWN: SpeedRange = SpeedRange::feet(30.0, 30.0, "304, cold drawn, 225 to 275 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_316: SpeedRange = SpeedRange::feet(30.0, 30.0, "316, annealed, 135 to 185 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_416_ANNEALED: SpeedRange = SpeedRange::feet(60.0, 60.0, "416, annealed, 135 to 185 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_416_DRAWN: SpeedRange = SpeedRange::feet(45.0, 45.0, "416, cold drawn, 185 to 240 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_416_TEMPERED: SpeedRange = SpeedRange::feet(25.0, 25.0, "416, hardened and tempered, 275 to 325 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_410_SOFT: SpeedRange = SpeedRange::feet(50.0, 50.0, "410 and 420, 135 to 175 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_410_MEDIUM: SpeedRange = SpeedRange::feet(45.0, 45.0, "410 and 420, 175 to 225 HB", PROTO_TOOL_REAMING);
pub(super) const STAINLESS_410_TEMPERED: SpeedRange = SpeedRange::feet(25.0, 25.0, "410 and 420, hardened and tempered, 275 to 325 HB", PROTO_TOOL_REAMING);

// Copper and its alloys. No reaming table for them was found to read: these are recalled, the two
// first from drill makers' charts, the last from the rule of a third to a half of drilling speed.
pub(super) const RECALLED_BRASS_BRONZE: SpeedRange = SpeedRange::feet(130.0, 200.0, "brass and bronze, ordinary", RECALLED_CHART);
pub(super) const RECALLED_STRONG_BRONZE: SpeedRange = SpeedRange::feet(50.0, 70.0, "bronze, high tensile", RECALLED_CHART);
pub(super) const RECALLED_COPPER: SpeedRange = SpeedRange::metres(8.0, 20.0, "copper, a third to a half of its drilling speed", RECALLED_RULE);

const RECALLED_CHART: Source = Source::memory("recalled reaming chart, no source read");
const RECALLED_RULE: Source = Source::memory("recalled rule for reamers, no source read");

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const PROTO_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(350.0, 500.0, "aluminium sand and permanent-mould castings", PROTO_REAM_LIGHT);
pub(super) const PROTO_DIE_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(300.0, 300.0, "aluminium die castings, as cast", PROTO_REAM_LIGHT);
pub(super) const PROTO_WROUGHT_MAGNESIUM: SpeedRange = SpeedRange::feet(500.0, 500.0, "wrought magnesium", PROTO_REAM_LIGHT);
pub(super) const PROTO_CAST_MAGNESIUM: SpeedRange = SpeedRange::feet(450.0, 450.0, "cast magnesium", PROTO_REAM_LIGHT);
