//! Tapping speeds under power as the sources print them, for high-speed steel taps, one row a line.
//!
//! A tap turned by hand needs none of these. The first a material lists is the one the plan uses.

use super::SpeedRange;
use super::sources::{CLARKSON, LAVALLEE, MH_TAP_303, MH_TAP_1020, TAP_CHART};
use crate::tables::source::Source;

pub(super) const LAVALLEE_ALUMINIUM: SpeedRange = SpeedRange::feet(50.0, 150.0, "aluminium", LAVALLEE);
pub(super) const LAVALLEE_BRASS: SpeedRange = SpeedRange::feet(50.0, 200.0, "brass", LAVALLEE);
pub(super) const LAVALLEE_BRONZE: SpeedRange = SpeedRange::feet(50.0, 100.0, "bronze", LAVALLEE);
pub(super) const LAVALLEE_IRON: SpeedRange = SpeedRange::feet(50.0, 100.0, "cast iron", LAVALLEE);
pub(super) const LAVALLEE_COPPER: SpeedRange = SpeedRange::feet(30.0, 60.0, "copper", LAVALLEE);
pub(super) const LAVALLEE_THERMOPLASTIC: SpeedRange = SpeedRange::feet(50.0, 100.0, "plastic, thermoplastic", LAVALLEE);
pub(super) const LAVALLEE_FREE_STEEL: SpeedRange = SpeedRange::feet(40.0, 80.0, "steel, free machining", LAVALLEE);
pub(super) const LAVALLEE_STAINLESS: SpeedRange = SpeedRange::feet(5.0, 35.0, "stainless steel", LAVALLEE);

pub(super) const CHART_IRON: SpeedRange = SpeedRange::feet(70.0, 70.0, "grey cast iron", TAP_CHART);
pub(super) const CHART_CAST_BRONZE: SpeedRange = SpeedRange::feet(50.0, 50.0, "cast bronze", TAP_CHART);
pub(super) const CHART_BRASS: SpeedRange = SpeedRange::feet(60.0, 60.0, "brass, free machining", TAP_CHART);
pub(super) const CHART_LOW_CARBON: SpeedRange = SpeedRange::feet(55.0, 55.0, "low carbon steel", TAP_CHART);
pub(super) const CHART_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(35.0, 35.0, "medium carbon steel", TAP_CHART);
pub(super) const CHART_HIGH_CARBON: SpeedRange = SpeedRange::feet(10.0, 10.0, "high carbon steel", TAP_CHART);
pub(super) const CHART_300_STAINLESS: SpeedRange = SpeedRange::feet(20.0, 20.0, "300 series stainless steel", TAP_CHART);
pub(super) const CHART_ALUMINIUM: SpeedRange = SpeedRange::feet(80.0, 80.0, "aluminium, wrought", TAP_CHART);
pub(super) const CHART_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(60.0, 60.0, "aluminium, cast alloys", TAP_CHART);
pub(super) const CHART_COPPER: SpeedRange = SpeedRange::feet(60.0, 60.0, "copper", TAP_CHART);
pub(super) const CHART_THERMOPLASTIC: SpeedRange = SpeedRange::feet(80.0, 80.0, "plastic, thermoplastic", TAP_CHART);

pub(super) const CLARKSON_IRON: SpeedRange = SpeedRange::feet(30.0, 40.0, "cast iron, lamellar graphite, 150 to 300 HB", CLARKSON);
pub(super) const CLARKSON_CARBON_STEEL: SpeedRange = SpeedRange::feet(50.0, 60.0, "plain carbon steel, under 250 HB", CLARKSON);
pub(super) const CLARKSON_ALLOY_STEEL: SpeedRange = SpeedRange::feet(32.0, 50.0, "alloyed steel, under 250 HB", CLARKSON);
pub(super) const CLARKSON_FREE_STAINLESS: SpeedRange = SpeedRange::feet(22.0, 32.0, "stainless steel, free machining, under 250 HB", CLARKSON);
pub(super) const CLARKSON_AUSTENITIC: SpeedRange = SpeedRange::feet(16.0, 22.0, "stainless steel, austenitic, under 250 HB", CLARKSON);
pub(super) const CLARKSON_COPPER: SpeedRange = SpeedRange::feet(22.0, 40.0, "copper, unalloyed, under 100 HB", CLARKSON);
pub(super) const CLARKSON_THERMOPLASTIC: SpeedRange = SpeedRange::feet(60.0, 105.0, "plastic, thermoplastic", CLARKSON);

pub(super) const MH_1020: SpeedRange = SpeedRange::feet(45.0, 60.0, "1020 steel", MH_TAP_1020);
pub(super) const MH_303: SpeedRange = SpeedRange::feet(35.0, 45.0, "303 stainless, coated HSS tap, 12 and 50 tpi", MH_TAP_303);

// Iron and steel.
pub(super) const CLARKSON_SOFT_IRON: SpeedRange = SpeedRange::feet(50.0, 80.0, "cast iron, lamellar graphite, under 150 HB", CLARKSON);
pub(super) const CLARKSON_NODULAR: SpeedRange = SpeedRange::feet(30.0, 40.0, "cast iron, nodular graphite or malleable, under 200 HB", CLARKSON);
pub(super) const CLARKSON_NODULAR_HARD: SpeedRange = SpeedRange::feet(20.0, 30.0, "cast iron, nodular graphite or malleable, 200 to 300 HB", CLARKSON);
pub(super) const CLARKSON_STRUCTURAL: SpeedRange = SpeedRange::feet(50.0, 60.0, "structural steel, under 200 HB", CLARKSON);
pub(super) const CLARKSON_TEMPERED_ALLOY: SpeedRange = SpeedRange::feet(22.0, 32.0, "alloyed steel, hardened and tempered, 250 to 350 HB", CLARKSON);
pub(super) const LAVALLEE_MALLEABLE: SpeedRange = SpeedRange::feet(35.0, 60.0, "malleable iron", LAVALLEE);
pub(super) const CHART_DUCTILE_IRON: SpeedRange = SpeedRange::feet(50.0, 50.0, "ductile cast iron", TAP_CHART);
pub(super) const CHART_CAST_STEEL: SpeedRange = SpeedRange::feet(25.0, 25.0, "cast steel", TAP_CHART);
pub(super) const CHART_400_STAINLESS: SpeedRange = SpeedRange::feet(15.0, 15.0, "400 series stainless steel", TAP_CHART);

// Copper and its alloys.
pub(super) const LAVALLEE_ALUMINIUM_BRONZE: SpeedRange = SpeedRange::feet(20.0, 80.0, "aluminum bronze", LAVALLEE);
pub(super) const CLARKSON_BRASS_BRONZE: SpeedRange = SpeedRange::feet(82.0, 115.0, "brass and bronze, under 200 HB", CLARKSON);
pub(super) const CLARKSON_BRASS: SpeedRange = SpeedRange::feet(50.0, 65.0, "brass, under 200 HB", CLARKSON);
pub(super) const CLARKSON_STRONG_BRONZE: SpeedRange = SpeedRange::feet(10.0, 16.0, "bronze, high strength, under 470 HB", CLARKSON);

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const LAVALLEE_MAGNESIUM: SpeedRange = SpeedRange::feet(75.0, 200.0, "magnesium", LAVALLEE);
pub(super) const LAVALLEE_NICKEL_COPPER: SpeedRange = SpeedRange::feet(20.0, 40.0, "Monel", LAVALLEE);
pub(super) const LAVALLEE_TITANIUM: SpeedRange = SpeedRange::feet(10.0, 40.0, "titanium alloys", LAVALLEE);
pub(super) const LAVALLEE_THERMOSETTING: SpeedRange = SpeedRange::feet(50.0, 100.0, "plastic, thermosetting", LAVALLEE);
pub(super) const CHART_THERMOSETTING: SpeedRange = SpeedRange::feet(40.0, 40.0, "plastic, thermosetting", TAP_CHART);
pub(super) const CHART_ZINC: SpeedRange = SpeedRange::feet(80.0, 80.0, "zinc diecastings", TAP_CHART);
pub(super) const RECALLED_WHITE_METAL: SpeedRange = SpeedRange::metres(10.0, 20.0, "white metal", Source::memory("recalled, no source read"));
